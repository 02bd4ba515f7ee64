using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The rows that have a value in every column a model needs.</summary>
internal sealed record CompleteCases(int[] Rows, ImmutableArray<LeftOutRow> LeftOut)
{
    public static CompleteCases Of(DataColumns data, IReadOnlyList<string> columns)
    {
        List<int> rows = new(data.RowCount);
        var leftOut = ImmutableArray.CreateBuilder<LeftOutRow>();
        for (int row = 0; row < data.RowCount; row++)
        {
            if (columns.Any(column => data.IsMissing(column, row)))
            {
                leftOut.Add(new(row, [.. columns.Where(column => data.IsMissing(column, row))]));
            }
            else
            {
                rows.Add(row);
            }
        }

        return new([.. rows], leftOut.ToImmutable());
    }

    /// <summary>Refuses data without a complete row.</summary>
    public void RefuseNone(DataColumns data, IReadOnlyList<string> columns)
    {
        if (Rows.Length > 0)
        {
            return;
        }

        IEnumerable<string> counts = columns
            .Select(column => (column, Count: LeftOut.Count(row => row.MissingColumns.Contains(column))))
            .Where(pair => pair.Count > 0)
            .Select(pair => $"'{pair.column}' is missing in {pair.Count}");
        throw new ArgumentException(data.RowCount == 0
            ? "The data have no rows; a fit needs more rows than coefficients."
            : $"None of the {data.RowCount} rows is complete: {Listing.Joined([.. counts])}. "
                + "Leave such a column out of the model or fill its gaps.");
    }
}
