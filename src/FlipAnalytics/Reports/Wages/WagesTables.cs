using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The wages report as tables.</summary>
public static class WagesTables
{
    /// <summary>Flips, groups, losers, hours by task, the look back and the sums that agree: a table each.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<ReportTable> Tables(this WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            Flips(report), .. report.Groupings.Select(grouping => Groups(report, grouping.By)), Losers(report), HoursByTask(report), Hindsight(report),
            WageBridgeText.Table(report.Bridge, report.Period, report.Workshop),
            WageBridgeText.Table(report.Everywhere, report.Period),
            Reconciliation(report),
            .. report.SetAside.IsEmpty ? ImmutableArray<ReportTable>.Empty : [SetAsideText.Table(report.SetAside)],
        ];
    }

    /// <summary>Flips that lost money, a row for each difference from what is usual.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Losers(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "wages-losers", "Flips that lost money, and every difference from what is usual",
            report.Losers.SelectMany(loser => loser.Parts, (loser, part) => (Loser: loser, Part: part)),
            ("id", "piece", row => row.Loser.Id),
            ("type", "type", row => row.Loser.Type),
            ("full_profit", "left after all costs", row => row.Loser.FullProfit),
            ("usual_profit", "usually left", row => row.Loser.UsualProfit),
            ("item", "item", row => row.Part.Item),
            ("actual", "this piece", row => row.Part.Actual),
            ("usual", "usual", row => row.Part.Usual),
            ("difference", "effect on profit", row => row.Part.Difference),
            ("reason", "in words", row => row.Part.Reason));
    }

    /// <summary>What all hours of the log went into.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable HoursByTask(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "wages-hours-by-task", "What all hours went into", report.Hours.Tasks,
            ("task", "task", task => task.Task?.ToString().ToLowerInvariant()),
            ("on_pieces", "on pieces", task => task.OnPieces),
            ("at_the_bench", "at the bench", task => task.IsBench),
            ("hours", "hours", task => task.Hours),
            ("share", "share of all hours", task => decimal.Round(task.Hours / report.Hours.All, 4)));
    }

    /// <summary>What was bought above what the target wage allowed, with hindsight.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Hindsight(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "wages-hindsight", "With hindsight: bought above what the target wage allowed",
            report.Hindsight?.Refused ?? [],
            ("id", "piece", refusal => refusal.Id),
            ("type", "type", refusal => refusal.Type),
            ("paid", "paid", refusal => refusal.Paid),
            ("most_to_have_paid", "most it could have cost", refusal => Rounded(report, refusal.MostToHavePaid)),
            ("full_profit", "left after all costs", refusal => refusal.FullProfit),
            ("hours", "all hours", refusal => refusal.Hours),
            ("earned", "paid an hour", refusal => Rounded(report, refusal.Earned)),
            ("hours_worth", "hours at the target wage", refusal => Rounded(report, refusal.HoursWorth)),
            ("shortfall", "short", refusal => Rounded(report, refusal.Shortfall)));
    }

    /// <summary>What each flip paid by the hour, with all that it rests on.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Flips(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "wages-by-flip", "What each flip paid by the hour", report.Flips,
            ("id", "piece", flip => flip.Id),
            ("type", "type", flip => flip.Type),
            ("color", "color", flip => flip.Colour),
            ("source", "source", flip => flip.Source),
            ("sold_on", "sold on", flip => flip.SoldOn),
            ("takings", "takings", flip => flip.Takings),
            ("purchase", "paid for it", flip => flip.Purchase),
            ("supplies", "supplies", flip => flip.Supplies),
            ("fees", "fees", flip => flip.Fees),
            ("delivery", "delivery", flip => flip.Delivery),
            ("outings", "share of outings", flip => flip.Outings),
            ("tools", "share of tools", flip => flip.Tools),
            ("overhead", "share of overhead", flip => flip.Overhead),
            ("cash_profit", "left after its own costs", flip => flip.CashProfit),
            ("full_profit", "left after all costs", flip => flip.FullProfit),
            ("bench_hours", "hands-on hours", flip => flip.BenchHours),
            ("outside_hours", "share of other hours", flip => flip.OutsideHours),
            ("all_hours", "all hours", flip => flip.AllHours),
            ("cash_wage", "cash wage an hour", flip => Rounded(report, flip.CashWage)),
            ("full_wage", "full wage an hour", flip => Rounded(report, flip.FullWage)),
            ("at_most", "a cost is missing", flip => flip.FullIsAtMost),
            ("most_to_have_paid", "most it could have cost, with hindsight", flip => report.Workshop.TargetWage is { } wage
                ? Rounded(report, WagesHindsight.MostToHavePaid(flip, wage)) : null));
    }

    /// <summary>Wages by group: ratios of sums.</summary>
    /// <param name="report">The report.</param>
    /// <param name="groupBy">What to group by.</param>
    public static ReportTable Groups(WagesReport report, WageGroupBy groupBy)
    {
        ArgumentNullException.ThrowIfNull(report);
        WageGrouping grouping = report.By(groupBy);
        string by = groupBy.ToString().ToLowerInvariant();
        return ReportTable.Of(
            $"wages-by-{by}", $"Wages by {by}", grouping.Groups,
            (by, by, group => group.Name),
            ("flips", "flips", group => group.Sum.Flips),
            ("counted", "flips with profit and hours", group => group.Sum.Counted),
            ("cash_profit", "left after own costs", group => group.Sum.CashProfit),
            ("full_profit", "left after all costs", group => group.Sum.FullProfit),
            ("bench_hours", "hands-on hours", group => group.Sum.BenchHours),
            ("all_hours", "all hours", group => group.Sum.AllHours),
            ("cash_wage", "cash wage an hour", group => Rounded(report, group.Sum.CashWage)),
            ("full_wage", "full wage an hour", group => Rounded(report, group.Sum.FullWage)),
            ("low", "in the long run, from", group => Rounded(report, group.Sum.Range?.Low)),
            ("high", "in the long run, to", group => Rounded(report, group.Sum.Range?.High)),
            ("at_most", "a cost is missing", group => group.Sum.FullIsAtMost),
            ("without_hours", "flips without hours", group => group.Sum.WithoutHours),
            ("full_profit_without_hours", "left by flips without hours", group => group.Sum.FullProfitWithoutHours),
            ("without_profit", "flips without a known profit", group => group.Sum.WithoutProfit));
    }

    /// <summary>The sums that agree, line by line.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Reconciliation(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        ProfitReconciliation profit = report.Reconciliation.Profit;
        HoursReconciliation hours = report.Reconciliation.Hours;
        (string Sum, string Item, decimal Amount)[] rows =
        [
            ("profit", "takings", profit.Takings),
            ("profit", "purchases", -profit.Purchases),
            ("profit", "supplies", -profit.Supplies),
            ("profit", "fees", -profit.Fees),
            ("profit", "delivery", -profit.Delivery),
            ("profit", "outings", -profit.Outings),
            ("profit", "tools", -profit.Tools),
            ("profit", "overhead", -profit.Overhead),
            ("profit", "full profit of the flips", -profit.FullProfit),
            ("profit", "difference", profit.Difference),
            ("hours", "written down", hours.Written),
            ("hours", "flips with a wage", -hours.CountedFlips),
            ("hours", "other flips", -hours.OtherFlips),
            ("hours", "pieces not sold", -hours.UnsoldPieces),
            ("hours", "on no piece", -hours.NotShared),
            ("hours", "written twice", -hours.WrittenTwice),
            ("hours", "difference", hours.Difference),
            .. report.Reconciliation.Costs.SelectMany(cost => new[]
            {
                ("in the files", cost.InFiles),
                ("stated beyond them", cost.Stated),
                ("these flips", -cost.Flips),
                ("flips without a known profit", -cost.WithoutProfit),
                ("other pieces", -cost.OtherPieces),
                ("no piece, months without work", cost.IdleRent - cost.Idle),
                ($"no piece, {IdleWords.Rent}", -cost.IdleRent),
                ("no piece, wasted or missing at a count", -cost.Lost),
                ("no piece, rest of the month the log ends in", -cost.StillToArise),
                ("in cans and tools", -cost.StillHere),
                ("difference", cost.Difference),
            }.Select(row => ($"cost of {cost.Kind.ToString().ToLowerInvariant()}", row.Item1, row.Item2))),
            .. report.Reconciliation.Files.SelectMany(file => new[]
            {
                ("rows of the file", file.Written),
                ("reckoned from them by a rate", file.Reckoned),
                ("in the books", -file.InBooks),
                ("difference", file.Difference),
            }.Select(row => (file.Name, row.Item1, row.Item2))),
        ];
        return ReportTable.Of(
            "wages-reconciliation", "Sums that agree", rows,
            ("sum", "sum", row => row.Sum), ("item", "item", row => row.Item), ("amount", "amount or hours", row => row.Amount));
    }

    private static decimal? Rounded(WagesReport report, decimal? amount) =>
        amount is { } known ? report.Workshop.Currency.Round(known) : null;
}
