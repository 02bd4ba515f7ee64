using System.Globalization;
using Microsoft.Data.Analysis;

namespace FlipAnalytics.Notebooks;

/// <summary>A data frame as a table of a notebook.</summary>
public static class FrameHtml
{
    /// <summary>Rows shown of a longer frame.</summary>
    public const int RowsShown = 20;

    /// <summary>The first rows, without columns in which nothing is known.</summary>
    /// <param name="frame">The frame.</param>
    public static HtmlPart FirstRows(DataFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        DataFrameColumn[] columns = [.. frame.Columns.Where(column => column.NullCount < column.Length)];
        long shown = Math.Min(RowsShown, frame.Rows.Count);
        if (columns.Length == 0)
            return new Html().Paragraph("There are no rows to show.").Content();
        return new Html().Table(
            Html.Invariant($"{shown} of {frame.Rows.Count} rows"),
            [.. columns.Select(column => new HtmlColumn(column.Name, column.IsNumericColumn()))],
            Enumerable.Range(0, (int)shown).Select(row => columns.Select(column => Cell(column[row])).ToArray())).Content();
    }

    private static string Cell(object? value) => value switch
    {
        null => "",
        DateTime day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
