using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>A Cox regression of R: the model of a reference case, ready to fit, beside its answers.</summary>
internal sealed class CoxReference
{
    private readonly ReferenceCase reference;

    public CoxReference(string name, string model, string[] terms, string? stratum = null, string? weight = null)
    {
        reference = new(name);
        Answer = model.Length == 0 ? reference.Answer : reference.At(model);
        Terms = terms;
        Columns = [.. terms.SelectMany(Design)];
        Times = SurvivalInput.Times(reference);
        Strata = stratum is null ? null : reference.Text(stratum);
        Weights = weight is null ? [] : reference.Numbers(weight);
    }

    public JsonElement Answer { get; }

    public string[] Terms { get; }

    public Regressor[] Columns { get; }

    public SurvivalTime[] Times { get; }

    public string[]? Strata { get; }

    public double[] Weights { get; }

    /// <summary>The models of R, by the name a test gives them.</summary>
    public static CoxReference Of(string name) => name switch
    {
        "lung" => new("survival/01_lung", "cox", ["age", "sex", "ecog", "loss"]),
        "ovarian" => new("survival/02_ovarian", "cox", ["age", "rx", "ecog"]),
        "rats" => new("survival/03_rats_ties", "cox", ["treated", "sex"]),
        "rats by sex" => new("survival/03_rats_ties", "cox_stratified", ["treated"], "sex"),
        "relistings" => new("survival/04_relistings_left_truncated", "cox", ["colour", "log_ratio"]),
        "price cuts" => new("survival/05_price_cuts_split_rows", "cox", ["log_ratio"]),
        _ => new("cox/01_weights_strata_late_entry", "", ["size", "sage"], "place", "weight"),
    };

    public CoxFit Fit(string ties) => CoxRegression.Fit(
        Columns, Times, Strata, Weights, ties == "efron" ? TieMethod.Efron : TieMethod.Breslow);

    /// <summary>The columns of each term of R's formula, so that a factor is tested as one.</summary>
    public CoxTerm[] CoxTerms() => [.. Terms.Select(term => new CoxTerm(term, [.. Design(term).Select(column => column.Name)]))];

    /// <summary>The rows to predict.</summary>
    public double[][] NewRows()
    {
        JsonElement rows = Answer.GetProperty("new_rows");
        int count = rows.GetProperty(Terms[0]).GetArrayLength();
        return
        [
            .. Enumerable.Range(0, count).Select(i => Columns.Select(column =>
            {
                string term = Terms.First(name => column.Name.StartsWith(name, StringComparison.Ordinal));
                JsonElement cell = rows.GetProperty(term)[i];
                return cell.ValueKind == JsonValueKind.Number ? cell.GetDouble() : term + cell.GetString() == column.Name ? 1 : 0;
            }).ToArray()),
        ];
    }

    private IEnumerable<Regressor> Design(string term)
    {
        string[] cells = reference.Text(term);
        if (double.TryParse(cells[0], System.Globalization.CultureInfo.InvariantCulture, out _))
            return [new(term, reference.Numbers(term))];
        return cells.Distinct().Order(StringComparer.Ordinal).Skip(1)
            .Select(level => new Regressor(term + level, cells.Select(cell => cell == level ? 1.0 : 0).ToArray()));
    }
}
