using System.Collections.Immutable;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>The sentences of a report, for a page that lays them out in its own way.</summary>
public static class QuarterSentences
{
    /// <summary>What was made, for how many hours, and what that is an hour.</summary>
    /// <param name="report">The report.</param>
    public static string Headline(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        decimal net = report.Profit.Net;
        string when = When(report);
        string made = $"{(net < 0 ? "lost" : "made")} {Rough(report, decimal.Abs(net))}";
        if (report.Profit.Pieces == 0)
        {
            string nothing = report.Undated.FirstOrDefault(facts => facts.What == QuarterUndated.Sold) is { } undated
                ? Invariant($"{when} no sale is dated, but {Counted(undated.Count, "piece")} sold for {Rough(report, undated.Amount)} on days not written down: fill in sold_on")
                : $"{when} you sold nothing";
            if (report.Profit.Contribution != 0)
                return $"{nothing}, gave {Rough(report, report.Profit.Returns)} back for returns, and {made}.";
            return report.Profit.OtherCosts == 0
                ? $"{nothing}. No costs fell into it."
                : $"{nothing}. Costs of {Rough(report, report.Profit.OtherCosts)} fell into it.";
        }

        if (report.Hours.Wage is not { } wage)
            return $"{when} you {made}. The hours of the pieces sold are not written down, so there is no figure for an hour.";
        string hourly = MoneyText.Exact(wage.PerHour, report.Workshop);
        if (wage.Pieces == wage.OfPieces)
            return $"{when} you {made} for {QuarterWords.Hours(wage.Hours)} hours: {hourly} an hour ({SpanWage(report)}).";
        return Invariant(
            $"{when} you {made}. Hours and prices are known for {wage.Pieces} of the {wage.OfPieces} pieces sold: these {(wage.Profit < 0 ? "lost" : "made")} {Rough(report, decimal.Abs(wage.Profit))} for {QuarterWords.Hours(wage.Hours)} hours, {hourly} an hour ({SpanWage(report)}).");
    }

    /// <summary>Why a span was taken where none was named, of a log that was left alone.</summary>
    /// <param name="log">The log, as of its last entry.</param>
    /// <param name="period">The span.</param>
    public static string Chosen(SalesLog log, ReportPeriod period)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(period);
        if (period.To > log.Date)
            return Invariant($"No span was named: this is the one quarter your log tells of, up to {log.Date:yyyy-MM-dd}.");
        var last = ReportPeriod.QuarterOf(log.Date);
        return last == period ? $"No span was named: {period.Name} is the last quarter in your log."
            : Invariant($"No span was named: {period.Name} is the last quarter that your log tells to its end. flip quarter {last.Name} tells the rest, up to {log.Date:yyyy-MM-dd}.");
    }

    /// <summary>How that compares with the wage wanted, which hours these are, and what is missing in it.</summary>
    /// <param name="report">The report.</param>
    /// <param name="all">Whether to say too which hours these are.</param>
    public static ImmutableArray<string> Beneath(QuarterReport report, bool all = true)
    {
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            .. new[]
            {
                AgainstTarget(report), FullWage(report), all ? HoursMeant(report) : null, AtMost(report.Sales),
                WageBridgeText.StillToArise(report.StillToArise, report.AsOf, report.Workshop),
            }.OfType<string>(),
        ];
    }

    /// <summary>Why the money in hand is not the profit; null where it is.</summary>
    /// <param name="report">The report.</param>
    /// <param name="isAfterTheMoney">Whether the money in hand was said just before.</param>
    public static string? ProfitToCash(QuarterReport report, bool isAfterTheMoney = false)
    {
        ArgumentNullException.ThrowIfNull(report);
        QuarterSum sum = report.Sums.First(sum => sum.Name == QuarterSums.ProfitToCashName);
        string parts = string.Join(", ", sum.Terms.Skip(1).Select(term => $"{term.What} {Signed(report, term.Amount)}"));
        return parts.Length == 0 ? null
            : $"Why {(isAfterTheMoney ? "" : $"{Signed(report, sum.Total)} in hand and ")}not {Signed(report, sum.Terms[0].Amount)} as made: {parts}.";
    }

    /// <summary>What of the money is held for others or owed by buyers on the last evening; null where nothing is.</summary>
    /// <param name="report">The report.</param>
    public static string? Held(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        string[] parts =
        [
            .. report.Held.Where(held => held.Of != MoneyOf.Owner && held.Closing != 0)
                .Select(held => $"{MoneyText.Exact(decimal.Abs(held.Closing), report.Workshop)} {held.What}"),
        ];
        return parts.Length == 0 ? null : Invariant($"No profit, on {report.Reckoned.To:yyyy-MM-dd}: {string.Join(", ", parts)}.");
    }

    /// <summary>What may be missing in the cans, and what settles it, in a sentence; null where nothing is in doubt.</summary>
    /// <param name="report">The report.</param>
    /// <param name="isInShort">Whether to leave out why.</param>
    public static string? CansInDoubt(QuarterReport report, bool isInShort = false)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Closing.StatedBeyondCans <= 0 ? null
            : $"Of what is in cans {MoneyText.Exact(report.Closing.StatedBeyondCans, report.Workshop)} may be gone{(isInShort ? "; a" : ": pieces state supplies that no can was charged for. A")} count (counts.csv) settles it.";
    }

    /// <summary>Facts without a day, a sentence each.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<string> Undated(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            .. report.Undated.Select(facts => Undated(facts, report.Workshop)),
        ];
    }

    internal static string Undated(QuarterUndated facts, Workshop workshop) => Invariant(
        $"{facts.What}: {facts.Count}, {(facts.Unit == "hours" ? QuarterWords.Hours(facts.Amount) + " hours" : MoneyText.Exact(facts.Amount, workshop))} ({facts.Column})");

    /// <summary>Each ratio with its definition, or why there is none.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<string> Ratios(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        Currency currency = report.Workshop.Currency;
        SellThrough through = report.Ratios.SellThrough;
        StockRatios stock = report.Ratios.Stock;
        string sold = through.Share is { } share
            ? Invariant($"share sold {QuarterWords.Percent(share)}: {through.Sold} sold of the {through.OnSaleBefore} on sale at the start and {through.Listed} listed since.")
            : "share sold: nothing was on offer, so there is none.";
        if (report.Profit.Pieces == 0)
            return [sold, "Nothing was sold, so there is no turnover, no days of stock, no return on stock and no break-even."];
        string average = MoneyText.Exact(currency.Round(stock.AverageStock), report.Workshop);
        return
        [
            sold,
            stock.Turnover is { } turnover
                ? $"stock turnover {QuarterWords.Ratio(turnover)} ({QuarterWords.Ratio(stock.TurnoverAYear!.Value)} a year at this pace): cost of pieces sold over average stock, {average}."
                : "stock turnover: no stock at cost, so there is none.",
            stock.DaysOfStock is { } days
                ? Invariant($"days of stock {decimal.Round(days, MidpointRounding.AwayFromZero)}: how long the average stock lasts at the pace it was sold.")
                : "days of stock: the pieces sold or held had no cost, so there are none.",
            stock.ReturnOnStock is { } profit
                ? $"return on stock {QuarterWords.Ratio(profit)} ({QuarterWords.Ratio(stock.ReturnOnStockAYear!.Value)} a year): gross profit for each 1 of average stock."
                : "return on stock: no stock at cost, so there is none.",
            report.Ratios.BreakEven switch
            {
                null or { FixedCosts: 0 } => "break-even: no overheads and no wear of tools fell into it, so there is nothing to pay off.",
                { WholeFlips: { } flips } even => Invariant(
                    $"break-even {Counted(flips, "flip")}: overheads and tool wear, {MoneyText.Exact(even.FixedCosts, report.Workshop)}, over the {MoneyText.Exact(currency.Round(even.ContributionAFlip), report.Workshop)} a flip left; you sold {report.Profit.Pieces}."),
                _ => "break-even: the pieces sold left nothing, so no number of such flips pays the overheads.",
            },
        ];
    }

    /// <summary>What drove the change against an earlier span, in a sentence or two; null where there is nothing to compare with.</summary>
    /// <param name="report">The report.</param>
    /// <param name="change">One of its comparisons.</param>
    public static string? Change(QuarterReport report, QuarterChange? change)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (change is null || (change.Wage is null && change.Effects.All(effect => effect.Amount == 0)))
            return null;
        string with = change.With.Name;
        if (change.IsBeforeTheLog)
            return $"Against {with}: the log begins later.";
        string money = change.Net == 0 ? "the same net profit"
            : $"{MoneyText.Exact(decimal.Abs(change.Net), report.Workshop)} {(change.Net > 0 ? "more" : "less")} net profit";
        string effects = string.Join(", ", change.Effects.Where(effect => effect.Amount != 0)
            .OrderByDescending(effect => decimal.Abs(effect.Amount))
            .Select(effect => $"{effect.Name} {Signed(report, effect.Amount)}"));
        string types = (change.NewTypes.Length, change.GoneTypes.Length) switch
        {
            (0, 0) => "",
            (_, 0) => $" New: {string.Join(", ", change.NewTypes)}.",
            (0, _) => $" Not sold now: {string.Join(", ", change.GoneTypes)}.",
            _ => $" New: {string.Join(", ", change.NewTypes)}; not sold now: {string.Join(", ", change.GoneTypes)}.",
        };
        string wage = change.Wage is { } hourly
            ? $" An hour: {Signed(report, hourly)}, {Signed(report, change.WageByProfit!.Value)} of it from profit a piece, {Signed(report, change.WageByHours!.Value)} from hours a piece."
            : "";
        return $"Against {with}: {money}{(effects.Length > 0 ? ": " : "")}{effects}.{wage}{types}";
    }

    private static string When(QuarterReport report) => report.IsSoFar
        ? Invariant($"So far in {report.Period.Name}, up to {report.AsOf:yyyy-MM-dd},")
        : report.IsPart ? Invariant($"In {report.Period.Name}, as known on {report.AsOf:yyyy-MM-dd},")
        : $"In {report.Period.Name}";

    /// <summary>Whether it paid what is wanted for an hour; null without a target or a wage.</summary>
    /// <param name="report">The report.</param>
    public static string? AgainstTarget(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Hours.Wage is not { } wage || report.Workshop.TargetWage is not { } target)
            return null;
        decimal gap = wage.PerHour - target;
        string wanted = MoneyText.Exact(target, report.Workshop);
        string distance = MoneyText.Exact(decimal.Abs(gap), report.Workshop);
        return gap == 0 ? $"That is just the {wanted} you want."
            : gap > 0 ? $"It paid: {distance} above the {wanted} you want."
            : wage.PerHour > 0 ? $"It paid less than you want: {distance} below {wanted}."
            : $"It did not pay: {distance} below the {wanted} you want.";
    }

    private static string SpanWage(QuarterReport report) => WageBridgeText.SpanWageName(report.Period);

    private static string? FullWage(QuarterReport report)
    {
        if (report.Hours.Bridge is not { } bridge)
            return null;
        string idle = IdleWords.Sentence(bridge, report.Workshop, isInShort: true) is { Length: > 0 } words ? $" {words}." : "";
        return $"The pieces sold paid {MoneyText.Exact(bridge.FullWage, report.Workshop)} an hour ({WageBridgeText.FullWageName}: with all that they carry, of whatever month).{idle}";
    }

    private static string? HoursMeant(QuarterReport report)
    {
        QuarterHours hours = report.Hours;
        if (hours.Belonging == 0 && hours.Worked == 0)
            return null;
        string share = hours.Wage is { } wage && wage.Pieces < wage.OfPieces
            ? " Costs and hours of no piece count for the known ones by their number."
            : "";
        string lost = hours.OfWrittenOff == 0 ? "" : $", and {QuarterWords.Hours(hours.OfWrittenOff)} on pieces written off";
        return $"Hours: {QuarterWords.Hours(hours.BenchOfSold)} at the bench and {QuarterWords.Hours(hours.OutingsOfSold)} on outings for the pieces sold, whenever worked, {QuarterWords.Hours(hours.General)} general{lost}.{share} Worked in the {report.Period.Noun}, on anything: {QuarterWords.Hours(hours.Worked)}.";
    }

    /// <summary>What is not written down of the pieces sold, and what that does to the profit; null where nothing is missing.</summary>
    internal static string? AtMost(ImmutableArray<QuarterSale> sales)
    {
        string Missing(Func<string, bool> which) => string.Join(", ", sales
            .SelectMany(sale => sale.Missing).Where(which).GroupBy(word => word)
            .Select(word => Invariant($"{word.Key} of {word.Count()}")));
        string costs = Missing(word => word != QuarterSale.NoSalePrice);
        string prices = Missing(word => word == QuarterSale.NoSalePrice);
        return (costs.Length, prices.Length) switch
        {
            (0, 0) => null,
            (_, 0) => $"The true profit is this or lower; not written down of the pieces sold: {costs}.",
            (0, _) => $"The true profit is higher; not written down of the pieces sold: {prices}.",
            _ => $"The true profit may be higher or lower; not written down of the pieces sold: {prices}, {costs}.",
        };
    }

    internal static string Signed(QuarterReport report, decimal amount) =>
        (amount > 0 ? "+" : "") + MoneyText.Exact(amount, report.Workshop);

    private static string Rough(QuarterReport report, decimal amount) =>
        decimal.Abs(amount) >= 100 ? MoneyText.Whole(amount, report.Workshop) : MoneyText.Exact(amount, report.Workshop);
}
