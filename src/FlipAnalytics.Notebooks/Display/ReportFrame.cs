using System.Collections.Immutable;
using System.Globalization;

using Microsoft.Data.Analysis;

namespace FlipAnalytics.Notebooks;

/// <summary>Tables of a report as data frames, and as tables of a notebook.</summary>
public static class ReportFrame
{
    // The first cell is the heading of its row, which must not be empty.
    private const string Unnamed = "not written down";

    /// <summary>
    /// A data frame of the same rows and columns: decimals stay decimal, what is unknown is null. For looking and sorting:
    /// the frame's own grouped means divide by unknown cells too.
    /// </summary>
    /// <param name="table">A table of a report.</param>
    public static DataFrame ToDataFrame(this ReportTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new(table.Columns.Select((column, i) => Column(column.Name, [.. table.Rows.Select(row => row[i])])));
    }

    /// <summary>A table of a notebook with the columns' meanings as headings.</summary>
    /// <param name="table">A table of a report.</param>
    public static HtmlPart Table(ReportTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        int[] digits = [.. table.Columns.Select((_, i) => Digits(table, i))];
        return table.Rows.IsEmpty
            ? new Html().Paragraph($"{table.Caption}: there is nothing to show yet.").Content()
            : new Html().Table(
                table.Caption,
                [
                    .. table.Columns.Select((column, i) =>
                        new HtmlColumn(column.Meaning, table.Rows.All(row => row[i] is null or decimal or int))),
                ],
                table.Rows.Select(row => row.Select((cell, i) => i == 0 && cell is null ? Unnamed : Shown(cell, digits[i])).ToArray())).Content();
    }

    // Amounts below each other have as many digits, so that their points stand below each other.
    private static int Digits(ReportTable table, int column) => table.Rows
        .Select(row => row[column]).OfType<decimal>()
        .Select(amount => (int)amount.Trimmed().Scale)
        .DefaultIfEmpty().Max();

    private static string Shown(object? cell, int digits) => cell is decimal amount
        ? amount.ToString($"N{digits}", CultureInfo.InvariantCulture)
        : ReportTable.TextOf(cell);

    private static DataFrameColumn Column(string name, ImmutableArray<object?> cells) =>
        cells.FirstOrDefault(cell => cell is not null) switch
        {
            decimal => new DecimalDataFrameColumn(name, cells.Select(cell => (decimal?)cell)),
            int => new Int32DataFrameColumn(name, cells.Select(cell => (int?)cell)),
            bool => new BooleanDataFrameColumn(name, cells.Select(cell => (bool?)cell)),
            DateOnly => new DateTimeDataFrameColumn(
                name, cells.Select(cell => ((DateOnly?)cell)?.ToDateTime(TimeOnly.MinValue))),
            _ => new StringDataFrameColumn(name, cells.Select(cell => (string?)cell)),
        };
}
