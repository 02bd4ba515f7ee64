using System.Collections.Immutable;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>The sentences of a year's sheet, for its page and its document.</summary>
public static class YearSentences
{
    /// <summary>The profit, and on how many pieces.</summary>
    /// <param name="report">The report.</param>
    public static string Headline(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        decimal net = report.Profit.Net;
        string name = report.Period.Name;
        string when = !report.IsPart ? name
            : report.IsOver ? Invariant($"{name}, as known on {report.AsOf:yyyy-MM-dd}")
            : Invariant($"{name} so far, up to {report.AsOf:yyyy-MM-dd}");
        if (report.Profit.Pieces > 0)
            return $"{when}: you {(net < 0 ? "lost" : "made")} {Money(report, decimal.Abs(net))} on {Counted(report.Profit.Pieces, "piece")}.";
        return net == 0 ? $"{when}: no sale and no cost is dated in it."
            : $"{when}: no sale is dated in it; you {(net < 0 ? "lost" : "made")} {Money(report, decimal.Abs(net))}.";
    }

    /// <summary>Why a year was taken where none was named, of a log that was left alone.</summary>
    /// <param name="log">The log, as of its last entry.</param>
    /// <param name="period">The year.</param>
    public static string Chosen(SalesLog log, ReportPeriod period)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(period);
        return period.To > log.Date
            ? Invariant($"No year was named: this is the one year your log tells of, up to {log.Date:yyyy-MM-dd}.")
            : $"No year was named: {period.Name} is the last year that your log tells to its end.";
    }

    /// <summary>What is missing in the profit; null where nothing is known to be.</summary>
    /// <param name="report">The report.</param>
    public static string? AtMost(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return QuarterSentences.AtMost(report.Sales);
    }

    /// <summary>Driving: how far, at which rate, how much, and that it is in other lines already; null without an outing.</summary>
    /// <param name="report">The report.</param>
    public static string? Driving(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        YearDriving driving = report.Driving;
        if (driving.Outings.IsEmpty)
            return null;
        string unit = report.Workshop.DistanceUnit == DistanceUnit.Mile ? "miles" : "km";
        string unknown = driving.Unknown == 0 ? "" : Invariant($" {Counted(driving.Unknown, "outing")} could not be reckoned.");
        decimal[] rates = [.. driving.Outings.Select(outing => outing.Rate).OfType<decimal>().Distinct().Order()];
        string at = rates.Length switch
        {
            0 => "",
            1 => Invariant($" at {report.Workshop.Symbol}{rates[0]:0.00##} {(unit == "km" ? "a km" : "a mile")}"),
            _ => Invariant($" at {report.Workshop.Symbol}{rates[0]:0.00##} to {report.Workshop.Symbol}{rates[^1]:0.00##} {(unit == "km" ? "a km" : "a mile")}"),
        };
        string where = driving.Amount == 0 ? ""
            : $", already included above: {Money(report, driving.InPieces)} in the cost of pieces, {Money(report, driving.InFruitless)} in outings that brought nothing home{(driving.InOtherDrives == 0 ? "" : $", {Money(report, driving.InOtherDrives)} in supply runs and other drives")}{(driving.InDelivery == 0 ? "" : $", {Money(report, driving.InDelivery)} in delivery")}";
        return Invariant($"Driving: {driving.Distance:#,0.##} {unit} on {Counted(driving.Outings.Length, "outing")}{at} = {Money(report, driving.Amount)}{where}.{unknown}");
    }

    /// <summary>Tools bought, with date and price; null where none was.</summary>
    /// <param name="report">The report.</param>
    /// <param name="shown">How many to name.</param>
    public static string? ToolsBought(YearReport report, int shown = int.MaxValue)
    {
        ArgumentNullException.ThrowIfNull(report);
        YearTool[] bought = [.. report.Tools.Where(tool => tool.IsBoughtInYear)];
        if (bought.Length == 0)
            return null;
        string[] named = [.. bought.OrderByDescending(tool => tool.Price).Take(shown)
            .Select(tool => Invariant($"{tool.Item} {Money(report, tool.Price)} on {tool.BoughtOn:yyyy-MM-dd}"))];
        string more = bought.Length > named.Length ? Invariant($" and {bought.Length - named.Length} more") : "";
        return $"Tools bought: {Money(report, bought.Sum(tool => tool.Price))} ({string.Join(", ", named)}{more}); of this only the wear is in the profit.";
    }

    /// <summary>What was there on the last day, at cost.</summary>
    /// <param name="report">The report.</param>
    public static string ThereAtTheEnd(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Invariant($"On {report.Reckoned.To:yyyy-MM-dd}, at cost: {Counted(report.Stock.Length, "piece")} {Money(report, report.CostOfGoods.ClosingPieces)}, in cans {Money(report, report.CostOfGoods.ClosingInCans)}; tools at book value {Money(report, report.Tools.Sum(tool => tool.Value))}.");
    }

    /// <summary>Money in and out.</summary>
    /// <param name="report">The report.</param>
    public static string Cash(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return $"Money: {Money(report, report.Cash.In)} came in, {Money(report, report.Cash.Out)} went out, driving not in it; a sale counts as paid on its day unless its payment is dated.";
    }

    /// <summary>What the files hold that is in no year, for want of a day or a sale; null where there is nothing.</summary>
    /// <param name="report">The report.</param>
    public static string? NotCounted(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        YearTally[] undated = [.. report.Tally.Where(row => row.WithoutDay != 0)];
        return undated.Length == 0 ? null
            : $"Not counted in {report.Period.Name}, for want of a day or a sale: {string.Join(", ", undated.Select(row => $"{row.What} {Money(report, row.WithoutDay)}"))}.";
    }

    /// <summary>What this sheet is not.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<string> Limits(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            "This profit is not taxable income: tax counts tools, driving, a home workshop and stock by rules of its own; your hours are no cost here.",
            .. report.Driving.InPieces == 0 && report.CostOfGoods.OutingsInClosing == 0 ? Array.Empty<string>()
                : [$"Outings are in the cost of pieces, and {Money(report, report.CostOfGoods.OutingsInClosing)} of them is in the closing stock: whoever claims driving by itself takes it out of the cost and out of both stocks, or it counts twice."],
        ];
    }

    internal static string Money(YearReport report, decimal amount) => MoneyText.Exact(amount, report.Workshop);
}
