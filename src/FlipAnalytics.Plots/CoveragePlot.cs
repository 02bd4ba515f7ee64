using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>Whether ranges hold as often as they promise.</summary>
public static class CoveragePlot
{
    // Of fewer, even ranges that never fail say nothing.
    private const int FewestRanges = 5;

    /// <summary>The plot.</summary>
    /// <param name="check">A model checked against the log.</param>
    public static Figure Of(ModelCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Coverage.IsEmpty || check.Coverage[0].Count < FewestRanges)
        {
            return Sheet.Sentence(
                $"How often ranges of {check.Response} hold",
                $"There are too few logged pieces to predict the {check.Response} of one from the others.");
        }

        LevelHeld main = check.Coverage.MinBy(at => Math.Abs(at.Level - check.Level))!;
        var sheet = new Sheet(Title(check, main), string.Create(CultureInfo.InvariantCulture,
            $"Dots: share of {main.Count} ranges, each made without its own piece, that held the actual {check.Response}. Upright lines: where the true share may be (95 %). On the slanted line ranges keep their promise."));
        double[] ticks = [0, 0.2, 0.4, 0.6, 0.8, 1];
        Panel panel = sheet.AddPanel(new(
            Scale.Fixed(0, 1, ticks, Scale.Percent), "what the range promises to hold",
            Scale.Fixed(0, 1, ticks, Scale.Percent), "what it held", 360)
        {
            Gutter = 28,
            LinesUp = true,
        });
        panel.Line([(0, 0), (1, 1)], LineLook.Reference);
        foreach (LevelHeld at in check.Coverage)
            panel.Line([(at.Level, at.Uncertainty.Low), (at.Level, at.Uncertainty.High)], new(Style.Standing, 2));
        panel.Marks(
            check.Coverage.Select(at => (at.Level, at.Share)), new(Style.Standing, MarkerShape.FilledCircle), 8);
        panel.Marks([(main.Level, main.Share)], new(Style.TakenAway, MarkerShape.FilledDiamond), 13);
        return sheet.Finish(string.Join(", ", check.Coverage.Select(at =>
            $"{Scale.Percent(at.Level)} ranges held {Whole(at.Share)}")) + ".");
    }

    private static string Title(ModelCheck check, LevelHeld main)
    {
        string counts = string.Create(CultureInfo.InvariantCulture,
            $"{Scale.Percent(main.Level)} ranges of {check.Response} held {main.Held} of {main.Count} times, {Whole(main.Share)}");
        return main.Uncertainty.Contains(main.Level) ? counts
            : counts + (main.Share < main.Level ? ": they are too narrow" : ": they are too wide");
    }

    private static string Whole(double share) => (100 * share).ToString("0", CultureInfo.InvariantCulture) + " %";
}
