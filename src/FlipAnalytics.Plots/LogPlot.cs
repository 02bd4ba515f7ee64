using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>How much of each column of <c>pieces.csv</c> is written down: a row a column, the widest gap first.</summary>
public static class LogPlot
{
    private const int MostNamed = 3;
    private const float PanelGap = 10;

    /// <summary>The plot.</summary>
    /// <param name="check">The check of a log.</param>
    public static Figure Of(LogCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Pieces == 0)
        {
            return Sheet.Sentence(
                "How much of pieces.csv is written down",
                check.HasLog
                    ? "No piece is written down yet: add a row to pieces.csv for each piece you bought."
                    : "No log could be read, so there is nothing to draw: flip check says why.");
        }

        ColumnFilling[] rows =
        [
            .. check.Filling.Where(column => column.ShareKnown is not null)
                .OrderBy(column => column.ShareKnown).ThenBy(column => column.ShareWritten),
        ];
        ColumnFilling[] asked = [.. rows.Where(row => !row.IsExtra)], extra = [.. rows.Where(row => row.IsExtra)];
        var sheet = new Sheet(
            Title(asked),
            "A bar: share of the pieces that can have it; offered are those on sale or sold. Paler: told elsewhere in the log.");
        AddRows(sheet, asked, "What the answers ask for");
        sheet.Top += PanelGap;
        AddRows(sheet, extra, "Often empty by right");
        return sheet.Finish(string.Join("; ", asked.Concat(extra).Select(row => $"{row.Column} {Label(row)}")) + ".");
    }

    private static void AddRows(Sheet sheet, ColumnFilling[] rows, string heading)
    {
        if (rows.Length == 0)
            return;
        BarRows.AddTo(
            sheet,
            [
                .. rows.Select(row => new BarRow(row.Column, row.ShareWritten!.Value, Label(row))
                {
                    Color = row.IsExtra ? Style.QuietInk : Style.Standing,
                    Paler = row.Elsewhere > 0 ? row.ShareKnown : null,
                }),
            ],
            new(Scale.Fixed(0, 1, [0, 0.25, 0.5, 0.75, 1], Scale.Percent), "of the pieces, in percent")
            {
                Heading = heading,
                RowHeight = 21,
                Thickness = 13,
                NameColumn = 140,
                Gutter = 265,
            });
    }

    private static string Title(ColumnFilling[] rows)
    {
        ColumnFilling[] gaps = [.. rows.Where(row => row.Missing > 0).Take(MostNamed)];
        if (gaps.Length == 0)
            return "Everything that the answers ask for is written down in your log";
        return "Most often missing: " + string.Join(", ", gaps.Select(gap => string.Create(
            CultureInfo.InvariantCulture, $"{gap.Column} ({gap.Missing} of {gap.Of})")));
    }

    private static string Label(ColumnFilling row)
    {
        string written = string.Create(CultureInfo.InvariantCulture, $"{row.Written} of {row.Of}{Which(row)}");
        return row.Elsewhere == 0
            ? written : string.Create(CultureInfo.InvariantCulture, $"{written}, {row.Elsewhere} in {row.ElsewhereIn}");
    }

    private static string Which(ColumnFilling row) => row.Pieces == "all" ? "" : " " + row.Pieces;
}
