using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A model's terms worked out on data: labelled columns, base levels and random terms of the complete rows.</summary>
public sealed class DesignMatrix
{
    private readonly CodedColumn[] _coding;
    private readonly ImmutableArray<string> _required;

    internal DesignMatrix(ModelDescription description, DataColumns data, bool withResponse)
    {
        ArgumentNullException.ThrowIfNull(data);
        Description = description;
        string[] needed =
        [
            .. new[] { withResponse ? description.Response.Column : null, description.WeightColumn }
                .OfType<string>().Concat(description.Terms.SelectMany(term => term.Columns)).Distinct(StringComparer.Ordinal),
        ];
        var cases = CompleteCases.Of(data, needed);
        cases.RefuseNone(data, needed);
        DataColumns complete = data.Pick(needed, cases.Rows);
        Rows = [.. cases.Rows];
        LeftOut = cases.LeftOut;
        ResponseValues = withResponse ? [.. description.Response.Values(complete)] : [];
        Weights = description.WeightColumn is { } weight ? [.. complete.NumbersOf(weight)] : [];
        Term[] fixedTerms = [.. description.Terms.Where(term => !term.IsRandom)];
        var levels = fixedTerms.SelectMany(TermCoding.CategoriesOf).Distinct()
            .ToDictionary(category => category, category => CategoryLevels.Of(category, complete));
        Categories = [.. levels.Values];
        _coding = [.. fixedTerms.SelectMany(term => TermCoding.Code(term, levels))];
        _required =
        [
            .. description.Terms.Where(term => term is not Term.RandomIntercept)
                .SelectMany(term => term.Columns).Distinct(StringComparer.Ordinal),
        ];
        LeastSquaresChecks.RefuseRepeatedNames([.. _coding.Select(column => column.Name)]);
        Columns = [.. _coding.Select(column => new Regressor(column.Name, column.Values(complete)))];
        RandomColumns =
        [
            .. description.Terms.Where(term => term.IsRandom).Select(term => term is Term.RandomWalk walk
                ? RandomColumn.Of(walk, complete)
                : RandomColumn.Of((Term.RandomIntercept)term, complete)),
        ];
    }

    /// <summary>The description that was worked out.</summary>
    public ModelDescription Description { get; }

    /// <summary>The fixed columns in the order of the terms.</summary>
    public ImmutableArray<Regressor> Columns { get; }

    /// <summary>Their names.</summary>
    public ImmutableArray<string> ColumnNames => [.. Columns.Select(column => column.Name)];

    /// <summary>The response after its transformation; empty for durations.</summary>
    public ImmutableArray<double> ResponseValues { get; }

    /// <summary>The weights; empty for equal ones.</summary>
    public ImmutableArray<double> Weights { get; }

    /// <summary>The random terms, in the order of the description.</summary>
    public ImmutableArray<RandomColumn> RandomColumns { get; }

    /// <summary>Base and other levels of every category.</summary>
    public ImmutableArray<CategoryLevels> Categories { get; }

    /// <summary>The places in the data of the rows used, counting from 0.</summary>
    public ImmutableArray<int> Rows { get; }

    /// <summary>The rows left out because a column the model needs is missing in them.</summary>
    public ImmutableArray<LeftOutRow> LeftOut { get; }

    /// <summary>The fixed columns by rows.</summary>
    internal double[][] FixedRows => ByRows([.. Columns.Select(column => column.Values.ToArray())], Rows.Length);

    /// <summary>The fixed columns of new rows.</summary>
    /// <exception cref="ArgumentException">A column is missing, a value is missing, or a level was never fitted.</exception>
    internal Regressor[] ColumnsOf(DataColumns newRows)
    {
        ArgumentNullException.ThrowIfNull(newRows);
        LeftOutRow? gap = CompleteCases.Of(newRows, _required).LeftOut.FirstOrDefault();
        return gap is null
            ? [.. _coding.Select(column => new Regressor(column.Name, column.Values(newRows)))]
            : throw new ArgumentException(
                $"A row to predict has a gap: {gap} (counting from 0). Fill it, or use a model without that column.");
    }

    internal double[][] FixedRowsOf(DataColumns newRows) =>
        ByRows([.. ColumnsOf(newRows).Select(column => column.Values.ToArray())], newRows.RowCount);

    private static double[][] ByRows(double[][] columns, int rows) =>
        [.. Enumerable.Range(0, rows).Select(i => columns.Select(column => column[i]).ToArray())];
}
