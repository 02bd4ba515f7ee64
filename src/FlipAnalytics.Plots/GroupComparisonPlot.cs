using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>Colors (types, finishes, sources, channels) ranked by days on sale and by sale price, under what stands out.</summary>
public static class GroupComparisonPlot
{
    private const float PanelGap = 14;

    /// <summary>The plot; a sentence where nothing is known of either.</summary>
    /// <param name="report">The comparison.</param>
    public static Figure Of(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        EffectIntervals[] drawn =
        [
            .. new[] { EffectIntervals.Of(report, ModelName.Days), EffectIntervals.Of(report, ModelName.Price) }
                .Where(effects => !effects.Rows.IsEmpty),
        ];
        string title = new GroupComparisonSentences(report).Findings();
        if (drawn.Length == 0)
            return Sheet.Sentence(title, "No piece tells yet how fast it sells or what it brings: fill in listed_on, sold_on and sold_price.");
        var sheet = new Sheet(title, string.Create(CultureInfo.InvariantCulture,
            $"{IntervalPlot.Explanation(drawn[0])} Days: of pieces listed in the year to {report.AsOf:yyyy-MM-dd}, earlier ones as far as they still hold."));
        var words = new List<string>();
        foreach (EffectIntervals effects in drawn)
        {
            words.Add($"{effects.Response}: {IntervalPlot.AddTo(sheet, effects, Heading(effects))}");
            sheet.Top += PanelGap;
        }

        return sheet.Finish(string.Join(' ', words));
    }

    private static string Heading(EffectIntervals effects) =>
        $"{char.ToUpperInvariant(effects.Response[0])}{effects.Response[1..]}: {(effects.Rows.Any(row => row.StandsOut) ? "filled marks stand out" : "cannot be told apart")}";
}
