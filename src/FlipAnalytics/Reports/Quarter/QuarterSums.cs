using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A term of a sum.</summary>
/// <param name="What">What it is.</param>
/// <param name="Amount">Amount with its sign.</param>
public sealed record QuarterTerm(string What, decimal Amount);

/// <summary>A sum that must come out, and does.</summary>
/// <param name="Name">What is reconciled.</param>
/// <param name="Terms">Terms that add up.</param>
/// <param name="Result">What they must add up to.</param>
/// <param name="Total">The same, found another way.</param>
public sealed record QuarterSum(string Name, ImmutableArray<QuarterTerm> Terms, string Result, decimal Total)
{
    /// <summary>Terms less total: always 0.</summary>
    public decimal Difference => Terms.Sum(term => term.Amount) - Total;
}

/// <summary>The reconciliations of a span. Stock is counted piece by piece on two evenings, flows are added up between.</summary>
internal static class QuarterSums
{
    public const string ProfitToCashName = "from profit to cash";
    public const string PiecesName = "pieces in stock";
    public const string CashName = "cash";

    public static ImmutableArray<QuarterSum> Of(
        QuarterBooks books, ReportPeriod period, QuarterStock opening, QuarterStock closing, QuarterMovement moved,
        ImmutableArray<QuarterHeld> held, QuarterProfit profit, QuarterCash cash, ImmutableArray<QuarterSale> sales) =>
    [
        Sum(PiecesName, "stock at the end", closing.Cost,
            ("stock at the start", opening.Cost),
            ("bought", moved.Bought),
            ("supplies used", moved.FromCans),
            ("supplies stated", moved.Stated),
            ("outings", moved.Outings),
            ("came back", moved.CameBack),
            ("cost of pieces sold", -moved.Sold),
            ("written off", -moved.WrittenOff),
            ("kept", -moved.Kept),
            ("sold, day unknown", -moved.SoldUndated),
            ("gone, day unknown", -moved.LeftUndated)),
        Sum("supplies in cans", "in cans at the end", closing.InCans,
            ("in cans at the start", opening.InCans), ("bought", moved.SuppliesBought), ("used", -moved.OutOfCans),
            ("wasted, or missing at a count", -moved.SuppliesLost),
            ("missing at a count, as pieces.csv states", -moved.StatedByCounts)),
        Sum("tools at book value", "tools at the end", closing.Tools,
            ("tools at the start", opening.Tools), ("bought", moved.ToolsBought), ("wear", -moved.ToolWear)),
        Sum("net profit, piece by piece", "net profit", profit.Net,
            ("left by the pieces sold", sales.Sum(sale => sale.Contribution)),
            ("left by returns", books.ReturnsIn(period).Sum(back => back.Return.LeftByReturn)),
            ("written off", -moved.WrittenOff),
            ("wear of tools", -moved.ToolWear),
            ("overheads", -profit.Overheads),
            ("supplies lost", -profit.SuppliesLost)),
        Sum(CashName, "change in cash",
            books.Costs.Cash.Where(movement => !movement.IsReckoned && period.Contains(movement.Date))
                .Sum(movement => movement.Amount),
            ("money in", cash.In), ("money out", -cash.Out)),
        ProfitToCash(opening, closing, moved, held, profit, cash),
        Sum("cost of stock by days since bought", "stock at the end", closing.ByState.Sum(group => group.Cost),
            [.. closing.ByAge.Select(group => (group.Name, group.Cost))]),
        Log(books),
    ];

    /// <summary>Why net profit is not the change in cash, to the smallest unit.</summary>
    private static QuarterSum ProfitToCash(
        QuarterStock opening, QuarterStock closing, QuarterMovement moved, ImmutableArray<QuarterHeld> held,
        QuarterProfit profit, QuarterCash cash)
    {
        return Sum(ProfitToCashName, "change in cash", cash.Change,
            ("net profit", profit.Net),
            (Tied("pieces", opening.Cost, closing.Cost), opening.Cost - closing.Cost),
            (Tied("cans", opening.InCans, closing.InCans), opening.InCans - closing.InCans),
            (Tied("tools", opening.Tools, closing.Tools), opening.Tools - closing.Tools),
            ("driving, reckoned but not paid", cash.DrivingReckoned),
            ("supplies stated beyond the cans", moved.Stated - moved.StatedByCounts),
            ("pieces you kept", -moved.Kept),
            ("pieces sold on an unknown day", -moved.SoldUndated),
            ("pieces gone on an unknown day", -moved.LeftUndated),
            ("paid on another day than counted", moved.OtherDay),
            ("sales tax taken and not paid over", More(MoneyOf.TaxOffice)),
            ("paid by buyers before the sale, or still owed", More(MoneyOf.Buyers)),
            ("owed to owners of pieces sold for them", More(MoneyOf.OwnersOfPieces)),
            ("put in or taken out by you", More(MoneyOf.Owner)));

        decimal More(MoneyOf of) => held.Where(line => line.Of == of).Sum(line => line.More);
    }

    private static string Tied(string where, decimal opening, decimal closing) =>
        $"{(closing > opening ? "more" : "less")} tied up in {where}";

    /// <summary>Every known cost and sale of the whole log is in one place: sold, gone, still here or in no piece.</summary>
    private static QuarterSum Log(QuarterBooks books)
    {
        CostBook costs = books.Costs;
        decimal stated = costs.Totals.Sum(total => total.Stated);
        return Sum("the whole log: money in and out", "money in less money out, driving reckoned",
            costs.Cash.Sum(movement => movement.Amount),
            ("sold pieces, all costs off", costs.Pieces.Where(cost => cost.Piece.IsSold).Sum(cost =>
                (cost.SalePrice ?? 0) + (cost.Piece.DeliveryCharged ?? 0) - cost.Total)),
            ("kept of sales that were undone, less what else was given back", costs.Pieces.Sum(cost => cost.KeptOfReturns)),
            ("pieces gone without a sale", -costs.Pieces.Where(cost => cost.Piece.IsGone).Sum(cost => cost.Total)),
            ("pieces still here", -costs.Pieces.Where(cost => cost.Piece is { IsSold: false, IsGone: false }).Sum(cost => cost.Total)),
            ("in cans and tools", -costs.Totals.Sum(total => total.Left)),
            ("on no piece", -costs.Totals.Sum(total => total.Unassigned)),
            ("supplies stated beyond the cans", stated),
            ("of others, and your own put in or taken out", costs.Held.Sum(line => line.Amount)));
    }

    private static QuarterSum Sum(string name, string result, decimal total, params (string What, decimal Amount)[] terms) => new(
        name,
        [
            .. terms.Where((term, i) => i == 0 || term.Amount != 0).Select(term => new QuarterTerm(term.What, term.Amount)),
        ],
        result,
        total);
}
