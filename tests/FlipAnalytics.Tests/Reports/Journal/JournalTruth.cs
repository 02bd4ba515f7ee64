namespace FlipAnalytics.Tests;

/// <summary>What a journal's accounts must hold by the quarter's report of the same span; breaches as sentences.</summary>
internal static class JournalTruth
{
    /// <summary>Accounts, each with those below it, and what they hold by the report; credits are below zero.</summary>
    public static (string Account, decimal Amount)[] Of(QuarterReport report) =>
    [
        ("income:sales", -report.Profit.Sales),
        ("income:delivery charged", -report.Profit.DeliveryCharged),
        ("income:returns", report.Profit.Returns),
        ("income", report.Profit.Returns - report.Profit.Sales - report.Profit.DeliveryCharged),
        ("expenses:cost of pieces sold:purchase", report.Profit.Purchases),
        ("expenses:cost of pieces sold:supplies", report.Profit.Supplies),
        ("expenses:cost of pieces sold:outings", report.Profit.Outings),
        ("expenses:cost of pieces sold", report.Profit.CostOfPiecesSold),
        ("expenses:fees", report.Profit.Fees),
        ("expenses:delivery", report.Profit.Delivery),
        ("expenses:written off", report.Profit.WrittenOff),
        ("expenses:wear of tools", report.Profit.ToolWear),
        ("expenses:overhead", report.Profit.Overheads),
        ("expenses:supplies lost", report.Profit.SuppliesLost),
        ("expenses", report.Profit.Sales + report.Profit.DeliveryCharged - report.Profit.Returns - report.Profit.Net),
        ("assets:money", report.Cash.Change),
        ("assets:pieces", report.Closing.Cost),
        ("assets:supplies", report.Closing.InCans),
        ("assets:tools", report.Closing.Tools),
        ("assets", report.Cash.Change + report.Closing.Cost + report.Closing.InCans + report.Closing.Tools),
        ("equity:opening balances", -report.Opening.Cost - report.Opening.InCans - report.Opening.Tools
            + report.Held.Where(held => held.Of != MoneyOf.Owner).Sum(held => held.Opening)),
        ("liabilities:sales tax", -Held(report, MoneyOf.TaxOffice)),
        ("liabilities:paid by buyers", -Held(report, MoneyOf.Buyers)),
        ("liabilities:owners of pieces", -Held(report, MoneyOf.OwnersOfPieces)),
        ("equity:driving reckoned", -report.Cash.DrivingReckoned),
        ("equity:stated supplies", report.Moved.StatedByCounts - report.Moved.Stated),
        ("equity:owner", report.Moved.Kept - report.Held.Where(held => held.Of == MoneyOf.Owner).Sum(held => held.More)),
        ("equity:left on an unknown day", report.Moved.SoldUndated + report.Moved.LeftUndated),
        ("equity:paid on another day", -report.Moved.OtherDay),
        .. report.Closing.Pieces.Where(piece => IsPlain(piece.Id)).Select(piece => ($"assets:pieces:{piece.Id}", piece.Cost)),
    ];

    public static IEnumerable<string> Breaches(QuarterReport report, Func<string, decimal> balance) =>
        Of(report).Where(truth => balance(truth.Account) != truth.Amount).Select(truth => FormattableString.Invariant(
            $"{report.Reckoned.Name}: {truth.Account} holds {balance(truth.Account)}, the report says {truth.Amount}"));

    private static decimal Held(QuarterReport report, MoneyOf of) =>
        report.Held.Where(held => held.Of == of).Sum(held => held.Closing);

    private static bool IsPlain(string id) => id.All(char.IsAsciiLetterOrDigit);
}
