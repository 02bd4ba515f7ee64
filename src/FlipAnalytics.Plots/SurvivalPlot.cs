using System.Globalization;
using FlipAnalytics.Statistics;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>How long groups of pieces stay on the market: survival curves with their ranges and the counts at risk.</summary>
public static class SurvivalPlot
{
    private const int MostShown = 6;
    private const int MostTogether = 2;
    private const float RowHeight = 19;
    private const float NameColumn = 110;
    private const float PanelGap = 22;

    // Fewer sales than this make no headline.
    private const int FewSales = 5;

    // The usual line between a difference and chance.
    private const double Clear = 0.05;

    private static readonly Scale Share = Scale.Fixed(0, 1, [0, 0.5, 1], Scale.Percent);

    /// <summary>The plot; of many groups those with the most pieces are drawn.</summary>
    /// <param name="curves">The curves.</param>
    public static Figure Of(MarketCurves curves)
    {
        ArgumentNullException.ThrowIfNull(curves);
        return Draw(curves, Title);
    }

    /// <summary>The plot of a comparison, under what the comparison claims of days.</summary>
    /// <param name="report">The comparison.</param>
    public static Figure Of(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Draw(report.Market, (_, shown) => Title(report, shown));
    }

    private static Figure Draw(MarketCurves curves, Func<MarketCurves, MarketCurve[], string> title)
    {
        string trait = curves.By;
        if (curves.Curves.IsEmpty)
        {
            return Sheet.Sentence(
                $"Days on market by {trait}",
                $"No piece with a {trait} has a listing date yet. Fill in listed_on, and {trait} where it is empty.");
        }

        MarketCurve[] shown = [.. curves.Curves.Take(MostShown)];
        int left = curves.Curves.Length - shown.Length;
        bool together = shown.Length <= MostTogether;
        var sheet = new Sheet(title(curves, shown), string.Create(CultureInfo.InvariantCulture,
            $"Share still on sale, with its {Scale.Percent(curves.All!.Level)} range, as of {curves.AsOf:yyyy-MM-dd}.{(together ? " Behind each name: the day by which half are sold." : " Thin grey: all together.")} Ticks on a line: last seen still on sale. Below the days: pieces followed that long.{(left > 0 ? $" {left} more, with fewer pieces, are not drawn." : "")}"));
        Scale days = Scale.Of(shown.Select(c => c.Curve.LastFollowUp).Append(0), about: together ? 6 : 4);
        if (together)
            DrawTogether(sheet, shown, days);
        else
            DrawApart(sheet, shown, days, curves.All);
        return sheet.Finish(string.Join("; ", shown.Select(c => string.Create(CultureInfo.InvariantCulture,
            $"{c.Name}: {c.Curve.Ended} of {c.Curve.Count} sold, {(c.Curve.Median().Time is null ? "half not yet" : $"half by {Days(c)}")}"))) + ".");
    }

    private static void DrawTogether(Sheet sheet, MarketCurve[] shown, Scale days)
    {
        Panel panel = sheet.AddPanel(new(days, "days since first listed", Share, "still on sale", 290)
        {
            NameColumn = NameColumn,
            Gutter = 165,
        });
        for (int i = shown.Length - 1; i >= 0; i--)
            Draw(panel, shown[i], Style.Several[i]);
        panel.NameAtRight(
        [
            .. shown.Select((curve, i) => (Curve: curve, Look: Style.Several[i]))
                .OrderByDescending(c => c.Curve.Curve.Median().Time ?? double.MaxValue)
                .Select(c => (
                    c.Curve.Curve.Median().Time is null ? c.Curve.Name : $"{c.Curve.Name}, {Days(c.Curve)}",
                    c.Curve.Curve.Steps[^1].Survival, c.Look with { Marker = MarkerShape.None })),
        ]);
        foreach (MarketCurve curve in shown)
        {
            float middle = sheet.Top + RowHeight / 2;
            sheet.Add(new Words(
                TextFitting.Shorten(curve.Name, NameColumn - 24, Lettering.Small), Sheet.Left, middle, Alignment.MiddleLeft,
                Lettering.Small));
            WriteCounts(sheet, panel, curve, middle);
            sheet.Top += RowHeight;
        }
    }

    private static void DrawApart(Sheet sheet, MarketCurve[] shown, Scale days, KaplanMeier all)
    {
        for (int i = 0; i < shown.Length; i++)
        {
            bool isLeft = i % 2 == 0, isLast = i >= shown.Length - 2;
            Panel panel = sheet.AddPanel(new(days, "", Share, "", 105)
            {
                Heading = Heading(shown[i]),
                Left = isLeft ? Sheet.Left : (Style.Width + PanelGap) / 2f,
                Right = isLeft ? (Style.Width - PanelGap) / 2f : Sheet.Right,
                Gutter = 12,
                KeepsTop = isLeft,
            });
            panel.Steps(Corners(all), new(Style.QuietInk.WithAlpha(0.6), 1.2f));
            Draw(panel, shown[i], Style.Several[0]);
            float middle = panel.Outer.Bottom + RowHeight / 2;
            WriteCounts(sheet, panel, shown[i], middle);
            if (isLast)
            {
                sheet.Add(new Words(
                    "days since first listed", panel.Area.HorizontalCenter, middle + RowHeight, Alignment.MiddleCenter, Lettering.Quiet));
            }

            if (!isLeft || i == shown.Length - 1)
                sheet.Top = middle + (isLast ? 2 : 1) * RowHeight;
        }
    }

    private static string Heading(MarketCurve curve)
    {
        var median = curve.Curve.Median();
        string days = median.Time is null ? ": half not yet sold"
            : string.Create(CultureInfo.InvariantCulture, $": half by {median.Time:0.#} days");
        float room = (Style.Width - PanelGap) / 2f - Sheet.Left - Lettering.Heading.Measure(days).Width;
        return TextFitting.Shorten(curve.Name, room, Lettering.Heading) + days;
    }

    private static void Draw(Panel panel, MarketCurve curve, Series look)
    {
        var steps = curve.Curve.Steps;
        var corners = new List<(double X, double Low, double High)>();
        foreach (var step in steps.Where(s => s.LogLogLimits is not null))
        {
            if (corners.Count > 0)
                corners.Add((step.Time, corners[^1].Low, corners[^1].High));
            corners.Add((step.Time, step.LogLogLimits!.Value.Low, step.LogLogLimits.Value.High));
        }

        panel.Band(corners, look.Color);
        panel.Steps(Corners(curve.Curve), look.Line(2.5f));
        panel.Marks(
            steps.Where(s => s.Censored > 0).Select(s => (s.Time, s.Survival)), look with { Marker = MarkerShape.VerticalBar }, 9);
    }

    private static IEnumerable<(double, double)> Corners(KaplanMeier curve) =>
        [(0, 1), .. curve.Steps.Select(s => (s.Time, s.Survival))];

    private static void WriteCounts(Sheet sheet, Panel panel, MarketCurve curve, float middle)
    {
        foreach (var (value, _) in panel.X.Ticks)
        {
            string count = curve.AtRisk(value == 0 ? double.Epsilon : value).ToString(CultureInfo.InvariantCulture);
            sheet.TryAdd(new(count, panel.PixelX(value), middle, Alignment.MiddleCenter, Lettering.Quiet));
        }
    }

    private static string Title(MarketCurves curves, MarketCurve[] shown)
    {
        MarketCurve[] known = [.. shown.Where(c => c.Curve.Ended >= FewSales && c.Curve.Median().Time is not null)
            .OrderBy(c => c.Curve.Median().Time)];
        if (known.Length >= 2 && curves.DifferenceP < Clear)
            return $"Half of {known[0].Name} pieces sell within {Days(known[0])}, of {known[^1].Name} pieces within {Days(known[^1])}";
        if (shown.Length >= 2)
            return $"How fast pieces sell does not clearly differ by {curves.By}";
        return shown[0].Curve.Median().Time is null
            ? $"Fewer than half of the {shown[0].Name} pieces have sold"
            : $"Half of the {shown[0].Name} pieces sell within {Days(shown[0])}";
    }

    // The claim allows for type, size and price, which the curves do not: where they do not show it, the title says so.
    private static string Title(GroupComparisonReport report, MarketCurve[] shown)
    {
        if (report.ToldApart.Compared.Length < 2)
            return Title(report.Market with { DifferenceP = null }, shown);
        string finding = new GroupComparisonSentences(report).DaysFinding();
        GroupAdvice advice = report.Advice;
        double? all = report.Market.All?.Median().Time;
        bool IsSeen(string level, bool faster) => shown.FirstOrDefault(c => c.Name == level) is { } curve
            && (faster ? curve.Curve.Median().Time < all : !(curve.Curve.Median().Time <= all));
        return advice.Faster.All(level => IsSeen(level, faster: true)) && advice.Slower.All(level => IsSeen(level, faster: false))
            ? finding : $"{finding}, once everything else is alike";
    }

    private static string Days(MarketCurve curve) =>
        string.Create(CultureInfo.InvariantCulture, $"{curve.Curve.Median().Time:0.#} days");
}
