using System.Collections.Immutable;
using System.Text;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>The wages report as text of at most 100 columns, a screen or two.</summary>
public static class WagesText
{
    private const int GroupsShown = 8;
    private const int LosersShown = 5;
    private const int QuartersShown = 8;
    private const int AroundShown = 3;
    private const int FewestForATelling = 3;

    // Groups and losers shown unasked: as many as leave the answer on one screen.
    private static readonly (int Groups, int Losers)[] Lengths = [(4, 2), (3, 1), (2, 1), (0, 1), (0, 0)];

    /// <summary>The answer first, then the two wages, groups, losers; with all of it the look back, hours and sums too.</summary>
    /// <param name="report">The report.</param>
    /// <param name="by">The one grouping to show in full; null shows the most telling ones in short.</param>
    /// <param name="all">Whether to tell all that the report holds.</param>
    public static string Render(WagesReport report, WageGroupBy? by = null, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (all)
            return Written(report, by, all, GroupsShown, LosersShown);
        return Lengths.Select(length => Written(report, by, all, length.Groups, length.Losers))
            .FirstOrDefault(text => TextLines.LineCount(text) <= TextLines.ScreenLines)
            // One grouping in full is as long as it is.
            ?? Written(report, by, all, Lengths[^1].Groups, Lengths[^1].Losers);
    }

    private static string Written(WagesReport report, WageGroupBy? by, bool all, int groups, int losers)
    {
        StringBuilder text = new();
        text.AppendWrapped("", "", WagesSentences.Answer(report));
        if (SetAsideText.Sentence(report.SetAside, report.Workshop) is { } without)
            text.AppendWrapped("  ", "  ", without);
        if (report.WorthALook is { } doubt)
            text.AppendWrapped("  ", "  ", doubt);
        foreach (string sentence in WagesSentences.Around(report, all).Take(all ? int.MaxValue : AroundShown)
            .Concat(WagesSentences.Missing(report, all)))
            text.AppendWrapped("  ", "  ", sentence);
        if (report.Total.Flips == 0)
            return text.ToString();
        WageBridgeText.Append(text, report.Bridge, report.Period, report.Workshop);
        if (by is { } one)
        {
            AppendGroups(text, report, one, int.MaxValue);
        }
        else if (groups > 0)
        {
            AppendGroups(text, report, WageGroupBy.Type, groups);
        }

        if (by is null && all)
        {
            AppendGroups(text, report, WageGroupBy.Quarter, QuartersShown);
            AppendExtremes(text, report, WageGroupBy.Color);
            AppendExtremes(text, report, WageGroupBy.Source);
        }

        AppendLosers(text, report, losers);
        if (all)
            AppendHindsight(text, report);
        // Where nothing outside the bench is written down the wage looks too good: that is never left out.
        if ((all || report.Hours.Outside == 0) && WagesSentences.Hours(report) is { } hours)
            text.Append('\n').AppendWrapped("", "  ", hours);
        AppendReconciliation(text, report, all);
        if (all)
            AppendNotes(text, report);
        return text.ToString();
    }

    private static void AppendHindsight(StringBuilder text, WagesReport report)
    {
        if (WagesSentences.Hindsight(report) is not { } hindsight)
            return;
        text.Append('\n').AppendWrapped("", "  ", hindsight);
        foreach (HindsightRefusal refusal in report.Hindsight!.Refused.Take(FewestForATelling))
        {
            text.AppendWrapped("  ", "    ", Invariant(
                $"{refusal.Id} {refusal.Type}: paid {Money(refusal.Paid)}, {(refusal.MostToHavePaid < 0 ? "too dear even as a gift" : "could have cost " + Money(refusal.MostToHavePaid))}; {WageFigures.Hours(refusal.Hours)} h at {Money(refusal.Earned ?? 0)} an hour"));
        }

        string Money(decimal amount) => WagesSentences.Money(amount, report);
    }

    private static void AppendGroups(StringBuilder text, WagesReport report, WageGroupBy by, int most)
    {
        WageGrouping grouping = report.By(by);
        if (report.Total.FullWage is null || (by == WageGroupBy.Quarter && grouping.Groups.Length < 2 && most != int.MaxValue))
            return;
        ImmutableArray<WageGroup> shown = grouping.Groups;
        if (shown.Length > most)
        {
            HashSet<WageGroup> largest =
            [
                .. by == WageGroupBy.Quarter
                    ? shown.Where(group => group.Name is not null).TakeLast(most)
                    : shown.OrderByDescending(group => group.Sum.Flips).Take(most),
            ];
            shown = [.. shown.Where(largest.Contains)];
        }

        string heading = by == WageGroupBy.Quarter ? "By quarter of sale" : $"By {by.ToString().ToLowerInvariant()}";
        text.Append(Invariant($"\n{heading,-22}{"flips",6}{"hours",8}{"left over",12}{"at the bench",14}{"an hour",10}{"in the long run",22}\n"));
        foreach (WageGroup group in shown)
        {
            WageSum sum = group.Sum;
            string name = group.Name ?? "not written down";
            name = name.Length > 20 ? name[..19] + "…" : name;
            string flips = sum.Counted == sum.Flips ? Invariant($"{sum.Flips}") : Invariant($"{sum.Counted}/{sum.Flips}");
            string range = sum.Range is { } r ? $"{Plain(r.Low)} to {Plain(r.High)}" : "too few";
            text.Append(Invariant(
                $"  {name,-20}{flips,6}{WageFigures.Hours(sum.AllHours),8}{Plain(sum.FullProfit),12}{Wage(sum.CashWage),14}{Wage(sum.FullWage),10}{range,22}").TrimEnd()).Append('\n');
        }

        int hidden = grouping.Groups.Length - shown.Length;
        if (hidden > 0)
            text.Append(Invariant($"  and {hidden} more: --by {by.ToString().ToLowerInvariant()} shows all\n"));

        string Plain(decimal amount) => MoneyText.PlainExact(amount, report.Workshop);
        string Wage(decimal? wage) => wage is { } known ? Plain(known) : "-";
    }

    private static void AppendExtremes(StringBuilder text, WagesReport report, WageGroupBy by)
    {
        WageGroup[] telling =
        [
            .. report.By(by).Groups.Where(
                group => group is { Name: not null, Sum: { Counted: >= FewestForATelling, FullWage: not null } }),
        ];
        if (telling.Length < 2)
            return;
        WageGroup best = telling[0];
        WageGroup worst = telling[^1];
        bool isApart = best.Sum.Range is { } high && worst.Sum.Range is { } low && high.Low > low.High;
        string luck = isApart ? "" : "; that may be luck";
        text.AppendWrapped(by == WageGroupBy.Color ? "\n" : "", "  ", Invariant(
            $"By {by.ToString().ToLowerInvariant()}: best {Named(best)}, worst {Named(worst)}{luck}. --by {by.ToString().ToLowerInvariant()} shows all."));

        string Named(WageGroup group) => Invariant(
            $"{group.Name} {WagesSentences.Money(group.Sum.FullWage!.Value, report)} an hour ({TextLines.Counted(group.Sum.Counted, "flip")})");
    }

    private static void AppendLosers(StringBuilder text, WagesReport report, int most)
    {
        if (report.Losers.IsEmpty && report.WrittenOff.Ids.IsEmpty)
            return;
        decimal lost = -report.Losers.Sum(loser => loser.FullProfit);
        string shown = most >= report.Losers.Length ? ", and what cost most:"
            : most == 0 ? ": --all lists them."
            : Invariant($", and what cost most; {most} here, {(most == LosersShown ? "--json and --tables list all" : "--all lists more")}:");
        text.Append('\n').AppendWrapped("", "  ", report.Losers.IsEmpty ? "No flip lost money." : Invariant(
            $"{TextLines.Counted(report.Losers.Length, "flip")} lost money, {WagesSentences.Money(lost, report)} together{shown}"));
        foreach (LosingFlip loser in report.Losers.Take(most))
        {
            text.AppendWrapped("  ", "    ",
                $"{loser.Id} {loser.Type} {WagesSentences.Money(loser.FullProfit, report)}: {loser.MainReason}");
        }

        if (WagesSentences.WrittenOff(report) is { } writtenOff)
            text.AppendWrapped("  ", "    ", writtenOff);
    }

    private static void AppendReconciliation(StringBuilder text, WagesReport report, bool all)
    {
        if (!all)
        {
            text.Append('\n').AppendWrapped("", "", Invariant(
                $"The sums are off by {WagesSentences.Money(report.Reconciliation.Difference, report)}. --all: quarters, best and worst, colors, the look back, where hours went, {TextLines.Counted(report.Notes.Length, "note")}."));
            return;
        }

        ProfitReconciliation profit = report.Reconciliation.Profit;
        HoursReconciliation hours = report.Reconciliation.Hours;
        if (profit.Flips > 0)
        {
            string costs = Parts(" - ", Plain,
                ("bought", profit.Purchases), ("supplies", profit.Supplies), ("fees", profit.Fees),
                ("delivery", profit.Delivery), ("outings", profit.Outings), ("tools", profit.Tools),
                ("rent and the like", profit.Overhead));
            text.Append('\n').AppendWrapped("", "  ", Invariant(
                $"It adds up ({TextLines.Counted(profit.Flips, "flip")}): takings {Plain(profit.Takings)}{costs} = {Plain(profit.FullProfit)}; off by {Plain(profit.Difference)}."));
        }

        decimal inFiles = report.Reconciliation.Costs.Sum(cost => cost.InFiles + cost.Stated);
        if (inFiles != 0)
        {
            string places = Parts(" + ", Plain,
                ("other pieces", report.Reconciliation.Costs.Sum(cost => cost.WithoutProfit + cost.OtherPieces)),
                ("in cans and tools", report.Reconciliation.Costs.Sum(cost => cost.StillHere)),
                ("idle months", report.Reconciliation.Costs.Sum(cost => cost.Idle - cost.IdleRent)),
                (IdleWords.Rent, report.Reconciliation.Costs.Sum(cost => cost.IdleRent)),
                ("supplies lost", report.Reconciliation.Costs.Sum(cost => cost.Lost)),
                ("rest of this month", report.Reconciliation.Costs.Sum(cost => cost.StillToArise)));
            text.AppendWrapped("", "  ",
                $"Costs: these flips {Plain(report.Reconciliation.Costs.Sum(cost => cost.Flips))}{places} = all in the files {Plain(inFiles)}; off by {Plain(report.Reconciliation.Costs.Sum(cost => Math.Abs(cost.Difference)))}.");
            string rows = string.Concat(
                report.Reconciliation.Files.Where(file => file.Written != 0).Select(file => (file.Name, Amount: file.Written))
                    .Append(("driving and fees by rates", report.Reconciliation.Files.Sum(file => file.Reckoned)))
                    .Append(("supplies stated beyond the cans", report.Reconciliation.Costs.Sum(cost => cost.Stated)))
                    .Where(row => row.Item2 != 0)
                    .Select((row, i) => $"{(i == 0 ? "" : " + ")}{row.Item1} {Plain(row.Item2)}"));
            text.AppendWrapped("", "  ",
                $"The files, row by row: {rows} = {Plain(inFiles)}; off by {Plain(report.Reconciliation.Files.Sum(file => Math.Abs(file.Difference)))}.");
        }

        if (hours.Written > 0)
        {
            string parts = Parts(" + ", amount => Invariant($"{amount:0.00}"),
                ("other flips", hours.OtherFlips), ("pieces not sold", hours.UnsoldPieces),
                ("on no piece", hours.NotShared), ("written twice", hours.WrittenTwice));
            text.AppendWrapped("", "  ", Invariant(
                $"Hours: these flips {hours.CountedFlips:0.00}{parts} = written down {hours.Written:0.00}; off by {hours.Difference:0.00}."));
        }

        if (WageBridgeText.Sentence(report.Everywhere, report.Period) is { } everywhere)
            text.AppendWrapped("", "  ", everywhere);

        string Plain(decimal amount) => MoneyText.PlainExact(amount, report.Workshop);
    }

    private static string Parts(string sign, Func<decimal, string> shown, params (string Name, decimal Amount)[] parts) =>
        string.Concat(parts.Where(part => part.Amount != 0).Select(part => $"{sign}{part.Name} {shown(part.Amount)}"));

    private static void AppendNotes(StringBuilder text, WagesReport report)
    {
        if (report.Notes.IsEmpty)
            return;
        text.Append(Invariant($"\nFrom the books, {TextLines.Counted(report.Notes.Length, "note")}:\n"));
        foreach (string note in report.Notes)
            text.AppendWrapped("  - ", "    ", note);
    }
}
