using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>What each flip paid by the hour, by its day of sale, with quarters, the total and the wage wanted.</summary>
public static class WagePlot
{
    private const int MostNamed = 4;

    // Fewer flips have no quartiles that tell which wages are out of line.
    private const int EnoughToCut = 20;

    // Beyond the outer fences a value is far out: Tukey, Exploratory Data Analysis (1977), chapter 2.
    private const decimal OuterFence = 3;

    private static readonly Series Gained = new(Style.Standing, MarkerShape.OpenCircle);
    private static readonly Series Lost = new(Style.TakenAway, MarkerShape.FilledTriangleDown);
    private static readonly Series Above = new(Style.Standing, MarkerShape.FilledTriangleUp);
    private static readonly Series Quarter = new(Style.Added, MarkerShape.None);
    private static readonly Series Total = new(Style.Ink, MarkerShape.None);
    private static readonly Series Wanted = new(Style.Ink, MarkerShape.None) { Dashes = [7, 5] };

    /// <summary>The plot; a sentence where no flip has both a wage and a day of sale.</summary>
    /// <param name="report">The wages.</param>
    public static Figure Of(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        FlipWage[] flips = [.. report.Flips.Where(flip => flip is { FullWage: not null, SoldOn: not null })];
        if (report.Total.FullWage is not { } wage || flips.Length == 0)
        {
            string answer = WagesSentences.Answer(report);
            return Sheet.Sentence(
                "What each flip paid by the hour",
                report.Total.FullWage is null ? answer : $"{answer} No flip with a wage has its day of sale written down: fill in sold_on.");
        }

        WageGroup[] quarters =
            [.. report.By(WageGroupBy.Quarter).Groups.Where(quarter => quarter is { Name: not null, Sum.FullWage: not null })];
        Scale wages = Wages(report, flips, quarters);
        FlipWage[] beyond = [.. flips.Where(flip => Y(flip) > wages.High || Y(flip) < wages.Low)];
        var sheet = new Sheet(Title(report, wage), Explanation(report, flips, beyond));
        Panel panel = sheet.AddPanel(new(
            Scale.Days([.. flips.Select(flip => flip.SoldOn!.Value)]), "day of sale", wages,
            $"{report.Workshop.Currency.Code} an hour, all costs and work that a flip carries (full wage)", 340)
        {
            Gutter = 165,
        });
        if (report.Total.Range is { } range)
            panel.Band([(panel.X.Low, (double)range.Low, (double)range.High), (panel.X.High, (double)range.Low, (double)range.High)], Style.Ink, 0.12);
        panel.Line([(panel.X.Low, 0), (panel.X.High, 0)], new(Style.Ink));
        var names = new List<(string, double, Series)>();
        AddLevel($"all {MoneyText.Exact(wage, report.Workshop)}", wage, Total);
        if (report.Workshop.TargetWage is { } target)
            AddLevel($"wanted {MoneyText.Exact(target, report.Workshop)}", target, Wanted);
        AddQuarters(panel, quarters);
        if (quarters.Length > 0)
            names.Add(("each quarter", (double)quarters[^1].Sum.FullWage!.Value, Quarter));
        AddFlips(panel, flips, beyond);
        panel.NameAtRight(names);
        return sheet.Finish(InWords(report, quarters));

        void AddLevel(string name, decimal level, Series look)
        {
            panel.Line([(panel.X.Low, (double)level), (panel.X.High, (double)level)], look.Line());
            names.Add((name, (double)level, look));
        }
    }

    private static void AddQuarters(Panel panel, WageGroup[] quarters)
    {
        foreach (WageGroup quarter in quarters)
        {
            ReportPeriod span = ReportPeriod.Parse(quarter.Name!)!;
            double level = (double)quarter.Sum.FullWage!.Value;
            panel.Line(
                [(Math.Max(panel.X.Low, span.From.DayNumber), level), (Math.Min(panel.X.High, span.To.DayNumber), level)],
                Quarter.Line(4));
        }
    }

    private static void AddFlips(Panel panel, FlipWage[] flips, FlipWage[] beyond)
    {
        var within = flips.Except(beyond).ToLookup(flip => flip.FullProfit < 0);
        panel.Marks(within[false].Select(flip => (X(flip), Y(flip))), Gained, 8);
        panel.Marks(within[true].Select(flip => (X(flip), Y(flip))), Lost, 9);
        panel.Marks(beyond.Where(flip => flip.FullWage > 0).Select(flip => (X(flip), panel.Y.High)), Above, 10);
        panel.Marks(beyond.Where(flip => flip.FullWage <= 0).Select(flip => (X(flip), panel.Y.Low)), Lost, 10);
        foreach (FlipWage flip in within[true].OrderBy(flip => flip.FullWage).Take(MostNamed))
            panel.TryName(flip.Id, X(flip), Y(flip));
    }

    private static Scale Wages(WagesReport report, FlipWage[] flips, WageGroup[] quarters)
    {
        IEnumerable<decimal> shown = flips.Select(Wage).Concat(quarters.Select(quarter => quarter.Sum.FullWage!.Value));
        if (report.Spread is { } spread && spread.Flips >= EnoughToCut)
        {
            decimal far = OuterFence * (spread.UpperQuartile - spread.LowerQuartile);
            shown = shown.Where(wage => wage >= spread.LowerQuartile - far && wage <= spread.UpperQuartile + far);
        }

        return Scale.Of(
            shown.Concat(new[] { report.Total.FullWage, report.Workshop.TargetWage, report.Total.Range?.Low, report.Total.Range?.High, 0 }
                .OfType<decimal>()).Select(wage => (double)wage));
    }

    private static string Explanation(WagesReport report, FlipWage[] flips, FlipWage[] beyond)
    {
        string range = report.Total.Range is { } likely
            ? $" Grey band: what such flips likely pay in the long run, {MoneyText.Exact(likely.Low, report.Workshop)} to {MoneyText.Exact(likely.High, report.Workshop)} (19 times in 20)."
            : "";
        string edge = beyond.Length > 0
            ? string.Create(CultureInfo.InvariantCulture, $" At the edge: {beyond.Length} beyond it, farthest {Far(beyond.MaxBy(flip => Math.Abs(Wage(flip)))!)}.")
            : "";
        int left = report.Flips.Length - flips.Length;
        string without = left > 0 ? $" Without hours, price or day, so not drawn: {Style.Count(left, "flip")}." : "";
        return $"A mark a flip; a filled triangle pointing down lost money.{range}{edge}{without}";

        string Far(FlipWage flip) => $"{flip.Id} with {MoneyText.Exact(Wage(flip), report.Workshop)}";
    }

    private static string Title(WagesReport report, decimal wage)
    {
        WageSum total = report.Total;
        string span = report.Period is { } period ? $" of {period.Name}" : "";
        string who = total.Counted < total.Flips
            ? string.Create(CultureInfo.InvariantCulture, $"{total.Counted} of your {Style.Count(total.Flips, "flip")}{span}")
            : total.Flips == 1 ? $"Your one flip{span}" : $"Your {Style.Count(total.Flips, "flip")}{span}";
        string paid = $"{who} paid {(report.FullIsAtMost ? "at most " : "")}{MoneyText.Exact(wage, report.Workshop)} an hour ({WageBridgeText.FullWageName})";
        if (report.Workshop.TargetWage is not { } target)
            return paid;
        string wanted = $"the {MoneyText.Exact(target, report.Workshop)} you want";
        // A wage that lacks costs can be too high, so only that it is too low is certain.
        return total.Range switch
        {
            { High: var high } when high < target => $"{paid}, clearly less than {wanted}",
            _ when wage < target => $"{paid}, short of {wanted}, though luck may be why",
            { Low: var low } when low > target && report.FullIsAtMost => $"{paid}, more than {wanted}, unless the missing costs are high",
            _ when report.FullIsAtMost => $"{paid}; costs are missing, so it may not reach {wanted}",
            { Low: var low } when low > target => $"{paid}, clearly more than {wanted}",
            _ => $"{paid}; that reaches {wanted}, though luck may be why",
        };
    }

    private static string InWords(WagesReport report, WageGroup[] quarters)
    {
        string losers = report.Losers.IsEmpty
            ? "No flip lost money."
            : $"{Style.Count(report.Losers.Length, "flip")} lost money: {string.Join(", ", report.Losers.Take(MostNamed).Select(flip => flip.Id))}{(report.Losers.Length > MostNamed ? " and others" : "")}.";
        string range = report.Total.Range is { } likely
            ? $"In the long run such flips likely pay {MoneyText.Exact(likely.Low, report.Workshop)} to {MoneyText.Exact(likely.High, report.Workshop)} an hour. "
            : "";
        string each = quarters.Length == 0 ? "" : " By quarter: " + string.Join("; ", quarters.Select(quarter =>
            $"{quarter.Name} {MoneyText.Exact(quarter.Sum.FullWage!.Value, report.Workshop)} over {Style.Count(quarter.Sum.Counted, "flip")}")) + ".";
        return $"{range}{losers}{each}";
    }

    private static double X(FlipWage flip) => flip.SoldOn!.Value.DayNumber;

    private static double Y(FlipWage flip) => (double)Wage(flip);

    private static decimal Wage(FlipWage flip) => flip.FullWage!.Value;
}
