using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>Effects with their ranges, a row each; the picture grows with the rows.</summary>
public static class IntervalPlot
{
    private const float RowHeight = 25;

    // Of more rows, those at either end are drawn.
    private const int MostRows = 60;

    /// <summary>The plot.</summary>
    /// <param name="effects">The effects, in the order they are to be read.</param>
    public static Figure Of(EffectIntervals effects)
    {
        ArgumentNullException.ThrowIfNull(effects);
        if (effects.Rows.IsEmpty)
        {
            return Sheet.Sentence(
                $"What the {effects.Group} does to {effects.Response}",
                $"No logged piece tells yet what the {effects.Group} does to {effects.Response}.");
        }

        var sheet = new Sheet(Title(effects), Explanation(effects));
        return sheet.Finish(AddTo(sheet, effects, heading: null));
    }

    /// <summary>What is drawn.</summary>
    internal static string Explanation(EffectIntervals effects) => string.Create(CultureInfo.InvariantCulture,
        $"Against the average {effects.Group}, everything else being equal; {Scale.Percent(effects.Level)} ranges. Behind each name: pieces logged. Filled marks stand out beyond luck.");

    /// <summary>Adds the rows to a sheet.</summary>
    /// <returns>The effects in words.</returns>
    internal static string AddTo(Sheet sheet, EffectIntervals effects, string? heading)
    {
        EffectInterval?[] rows = effects.Rows.Length <= MostRows
            ? [.. effects.Rows]
            : [.. effects.Rows.Take(MostRows / 2), null, .. effects.Rows.TakeLast(MostRows / 2)];
        int count = rows.Length;
        Panel panel = sheet.AddPanel(new(
            Scale.Of(effects.Rows.SelectMany(row => new[] { row.Low, row.High }).Append(0), Scale.SignedPercent),
            $"{effects.Response}, percent above or below the average {effects.Group}",
            Scale.Fixed(-count + 0.5, 0.5, []), "", count * RowHeight)
        {
            Heading = heading,
            NameColumn = 230,
            Gutter = 75,
            LinesUp = true,
        });
        panel.Upright(0, new(Style.Ink));
        for (int i = 0; i < count; i++)
        {
            if (rows[i] is not { } row)
            {
                panel.NameRow(Style.Count(effects.Rows.Length - count + 1, "more", ""), -i, 1);
                continue;
            }

            bool clear = row.StandsOut;
            Series look = clear
                ? new(Style.Standing, MarkerShape.FilledCircle) : new(Style.QuietInk, MarkerShape.OpenCircle);
            panel.Line([(row.Low, -i), (row.High, -i)], look.Line(clear ? 2.5f : 1.5f));
            panel.Marks([(row.Estimate, -i)], look, 9);
            panel.NameRow(row.Name, -i, string.Create(CultureInfo.InvariantCulture, $" ({row.Count})"));
            panel.Write(Scale.SignedWholePercent(row.Estimate), panel.X.High, -i, gap: 12);
        }

        return string.Join("; ", effects.Rows.Select(row => string.Create(CultureInfo.InvariantCulture,
            $"{row.Name} {Scale.SignedWholePercent(row.Estimate)}, {Scale.SignedWholePercent(row.Low)} to {Scale.SignedWholePercent(row.High)}, {Style.Count(row.Count, "piece")}"))) + ".";
    }

    private static string Title(EffectIntervals effects)
    {
        if (effects.Finding is { } finding)
            return finding;
        if (effects.Rows.Where(row => row.StandsOut).MaxBy(row => Math.Abs(row.Estimate)) is not { } most)
            return $"No {effects.Group} clearly changes the {effects.Response}";
        return $"{char.ToUpperInvariant(effects.Response[0])}{effects.Response[1..]} with {most.Name}: {Scale.Percent(Math.Round(Math.Abs(most.Estimate)) / 100)} {(most.Estimate > 0 ? "above" : "below")} the average {effects.Group}";
    }
}
