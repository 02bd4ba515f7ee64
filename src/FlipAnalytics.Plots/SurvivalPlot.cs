using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>How long groups of pieces stay on the market: survival curves with their ranges and the counts at risk.</summary>
public static class SurvivalPlot
{
    private const int MostShown = 6;
    private const int MostWithBands = 2;
    private const float AreaHeight = 290;
    private const float RowHeight = 19;
    private const float NameColumn = 110;
    private const float Gutter = 165;

    // Fewer sales than this make no headline.
    private const int FewSales = 5;

    // The usual line between a difference and chance.
    private const double Clear = 0.05;

    /// <summary>The plot; of many groups those with the most pieces are drawn.</summary>
    /// <param name="curves">The curves.</param>
    public static Figure Of(MarketCurves curves)
    {
        ArgumentNullException.ThrowIfNull(curves);
        string trait = curves.By.ToString().ToLowerInvariant();
        if (curves.Curves.IsEmpty)
        {
            return Sheet.Sentence(
                $"Days on market by {trait}",
                $"No piece with a {trait} has a listing date yet. Fill in listed_on, and {trait} where it is empty.");
        }

        MarketCurve[] shown = [.. curves.Curves.Take(MostShown)];
        int left = curves.Curves.Length - shown.Length;
        var sheet = new Sheet(Title(curves, shown, trait), string.Create(CultureInfo.InvariantCulture,
            $"Pieces still on sale by days since first listed, with 95 % ranges, as of {curves.AsOf:yyyy-MM-dd}. Behind each name: the day by which half are sold.{(left > 0 ? $" {left} more {trait}s with fewer pieces are not drawn." : "")}"));
        Panel panel = sheet.AddPanel(new(
            Scale.Of(shown.Select(c => c.Curve.LastFollowUp).Append(0)), "days since first listed",
            Scale.Fixed(0, 1, [0, 0.25, 0.5, 0.75, 1], Scale.Percent), "still on sale", AreaHeight)
        {
            NameColumn = NameColumn,
            Gutter = Gutter,
        });
        for (int i = shown.Length - 1; i >= 0; i--)
            Draw(panel, shown[i], Style.Several[i], withBand: shown.Length <= MostWithBands);
        if (shown.Length > MostWithBands)
            DrawWhiskers(panel, shown);
        panel.NameAtRight(
        [
            .. shown.Select((curve, i) => (Curve: curve, Look: Style.Several[i]))
                .OrderByDescending(c => c.Curve.Curve.Median().Time ?? double.MaxValue)
                .Select(c => ($"{c.Curve.Name}, {Days(c.Curve)}", c.Curve.Curve.Steps[^1].Survival, c.Look)),
        ]);
        DrawCounts(sheet, panel, shown);
        return sheet.Finish(string.Join("; ", shown.Select(c => string.Create(CultureInfo.InvariantCulture,
            $"{c.Name}: {c.Curve.Ended} of {c.Curve.Count} sold, half by {Days(c)}"))) + ".");
    }

    private static void Draw(Panel panel, MarketCurve curve, Series look, bool withBand)
    {
        var steps = curve.Curve.Steps;
        if (withBand)
        {
            var corners = new List<(double X, double Low, double High)>();
            foreach (var step in steps.Where(s => s.LogLogLimits is not null))
            {
                if (corners.Count > 0)
                    corners.Add((step.Time, corners[^1].Low, corners[^1].High));
                corners.Add((step.Time, step.LogLogLimits!.Value.Low, step.LogLogLimits.Value.High));
            }

            panel.Band(corners, look.Color);
        }

        panel.Steps([(0, 1), .. steps.Select(s => (s.Time, s.Survival))], look.Color, 2.5f, look.Pattern);
        panel.Marks(
            steps.Where(s => s.Censored > 0).Select(s => (s.Time, s.Survival)), look with { Marker = MarkerShape.VerticalBar }, 9);
    }

    // Many bands would hide each other: ranges stand at the marked days instead, side by side.
    private static void DrawWhiskers(Panel panel, MarketCurve[] shown)
    {
        foreach (var (value, _) in panel.X.Ticks.Skip(1).SkipLast(1))
        {
            for (int i = 0; i < shown.Length; i++)
            {
                if (shown[i].Curve.Steps.LastOrDefault(s => s.Time <= value) is not { LogLogLimits: { } limits } step
                    || shown[i].AtRisk(value) == 0)
                {
                    continue;
                }

                Series look = Style.Several[i];
                double x = panel.Beside(value, 5 * (i - (shown.Length - 1) / 2f));
                panel.Line([(x, limits.Low), (x, limits.High)], look.Color.WithAlpha(0.75), 1.2f);
                panel.Marks([(x, step.Survival)], look, 7);
            }
        }
    }

    private static void DrawCounts(Sheet sheet, Panel panel, MarketCurve[] shown)
    {
        sheet.AddLines("Pieces followed that long", Lettering.Quiet, 1);
        foreach (MarketCurve curve in shown)
        {
            float middle = sheet.Top + RowHeight / 2;
            sheet.Add(new Words(
                TextFitting.Shorten(curve.Name, NameColumn - 24, Lettering.Small), Sheet.Left, middle, Alignment.MiddleLeft,
                Lettering.Small));
            foreach (var (value, _) in panel.X.Ticks)
            {
                string count = curve.AtRisk(value == 0 ? double.Epsilon : value).ToString(CultureInfo.InvariantCulture);
                sheet.Add(new Words(count, panel.PixelX(value), middle, Alignment.MiddleCenter, Lettering.Small));
            }

            sheet.Top += RowHeight;
        }
    }

    private static string Title(MarketCurves curves, MarketCurve[] shown, string trait)
    {
        MarketCurve[] known = [.. shown.Where(c => c.Curve.Ended >= FewSales && c.Curve.Median().Time is not null)
            .OrderBy(c => c.Curve.Median().Time)];
        if (known.Length >= 2 && curves.DifferenceP < Clear)
            return $"Half of {known[0].Name} pieces sell within {Days(known[0])}, of {known[^1].Name} pieces within {Days(known[^1])}";
        if (shown.Length >= 2)
            return $"How fast pieces sell does not clearly differ by {trait}";
        return shown[0].Curve.Median().Time is null
            ? $"Fewer than half of the {shown[0].Name} pieces have sold"
            : $"Half of the {shown[0].Name} pieces sell within {Days(shown[0])}";
    }

    private static string Days(MarketCurve curve) => curve.Curve.Median().Time is { } days
        ? string.Create(CultureInfo.InvariantCulture, $"{days:0.#} days") : "not yet known";
}
