namespace FlipAnalytics.Statistics;

/// <summary>Proportional hazards: the rate of ending is h₀(t) exp(xᵀβ), h₀ left open; β maximises the partial likelihood of
/// Cox (1972), J. R. Stat. Soc. B 34, 187–220. Spells may come under observation late, be cut at changes of x, and fall
/// into strata with an h₀ each. A spell last seen at t is at risk at t. Checked against R's survival package.</summary>
public static class CoxRegression
{
    /// <summary>Fits the model.</summary>
    /// <param name="columns">The columns of x, a value a spell; no intercept, for h₀ holds it. A column that is constant
    /// among those at risk together, or given by columns before it, is dropped and named.</param>
    /// <param name="times">The spells, or episodes of spells between changes of x.</param>
    /// <param name="strata">The stratum of each spell; null for one.</param>
    /// <param name="weights">Case weights above 0, a weight a spell; empty for equal weights.</param>
    /// <param name="ties">How spells that end together count.</param>
    /// <exception cref="ArgumentException">No columns, lengths that differ, a value that is not finite, a weight not above 0,
    /// a name used twice, or a spell that does not stop after it starts. The message names the column and the row.</exception>
    /// <exception cref="NoEstimateException">No spell ended, no column varies among those at risk when one did, or a
    /// coefficient is infinite because its column separates those that ended first; the message names the column.</exception>
    public static CoxFit Fit(
        IReadOnlyList<Regressor> columns,
        IReadOnlyList<SurvivalTime> times,
        IReadOnlyList<string>? strata = null,
        ReadOnlySpan<double> weights = default,
        TieMethod ties = TieMethod.Efron)
    {
        ArgumentNullException.ThrowIfNull(columns);
        SurvivalTime.Refuse(times);
        string[] names = [.. columns.Select(column => column.Name)];
        double[][] values = [.. columns.Select(column => column.Values.ToArray())];
        double[] rowWeights = weights.ToArray();
        Refuse(names, values, times.Count, strata, rowWeights);
        if (!Enum.IsDefined(ties))
            throw new ArgumentException($"{ties} is not a way to treat ties; use Efron or Breslow.", nameof(ties));
        if (!times.Any(time => time.Ended))
            throw new NoEstimateException(
                $"None of the {times.Count} spells ended, so nothing is known of what makes them end sooner. Wait for endings.");

        CoxRows all = CoxRows.From(values, times, strata, rowWeights);
        CoxLikelihood start = CoxLikelihood.At(all, ties, new double[names.Length]);
        int[] kept = CoxSearch.Independent(all, start.Information);
        if (kept.Length == 0)
            throw new NoEstimateException(
                $"No column varies among spells at risk together when one ended: {string.Join(", ", names.Select(name => $"'{name}'"))}. Add a column that does, or more spells.");
        CoxRows rows = all;
        if (kept.Length < names.Length)
        {
            rows = all.Keep(kept);
            start = CoxLikelihood.At(rows, ties, new double[kept.Length]);
        }
        return new CoxFit(rows, ties, names, kept, CoxSearch.Run(rows, ties, [.. kept.Select(j => names[j])], start));
    }

    private static void Refuse(
        string[] names, double[][] values, int count, IReadOnlyList<string>? strata, double[] weights)
    {
        if (names.Length == 0)
            throw new ArgumentException("There are no columns; for a curve without any use KaplanMeier.");
        string? twice = names.GroupBy(name => name, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1)?.Key;
        if (twice is not null)
            throw new ArgumentException($"Two columns are named '{twice}'; give every column a name of its own.");
        if (strata is not null && strata.Count != count)
            throw new ArgumentException($"There are {count} spells and {strata.Count} strata; each spell needs one.");
        if (weights.Length != 0 && weights.Length != count)
            throw new ArgumentException($"There are {count} spells and {weights.Length} weights; each spell needs one.");
        for (int j = 0; j < names.Length; j++)
        {
            if (values[j].Length != count)
                throw new ArgumentException($"Column '{names[j]}' has {values[j].Length} values; there are {count} spells.");
            int bad = Array.FindIndex(values[j], value => !double.IsFinite(value));
            if (bad >= 0)
                throw new ArgumentException(
                    $"Column '{names[j]}', row {bad} (counting from 0): {values[j][bad]} is not a finite number; leave the row out or fill the cell.");
        }
        int without = Array.FindIndex(weights, weight => !(weight > 0 && double.IsFinite(weight)));
        if (without >= 0)
            throw new ArgumentException(
                $"Row {without} (counting from 0): weight {weights[without]} is not a finite number above 0; leave the row out instead.");
    }
}
