using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// Profit and loss of a span on the accrual basis: what a piece cost counts when it is sold or given up, tools and overheads
/// count in the span they fall into. The owner's hours are no cost here.
/// </summary>
/// <param name="Pieces">Pieces sold.</param>
/// <param name="Sales">Sale prices; unknown ones are not in it.</param>
/// <param name="DeliveryCharged">What buyers paid for delivery.</param>
/// <param name="Returns">What was given back to buyers.</param>
/// <param name="Purchases">What the pieces sold had been bought for, less that of pieces that came back.</param>
/// <param name="Supplies">What had been used up on them, likewise.</param>
/// <param name="Outings">Their share of the outings that brought them home, likewise.</param>
/// <param name="Fees">What channels kept.</param>
/// <param name="Delivery">What delivery cost, and taking pieces back.</param>
/// <param name="WrittenOff">Cost of pieces given away, scrapped, broken, taken apart or stolen.</param>
/// <param name="ToolWear">Wear of tools in the span, by days, idle months included (depreciation).</param>
/// <param name="Overheads">Overheads of the span, those of a month by its days, fruitless outings on theirs.</param>
/// <param name="SuppliesLost">
/// Supplies wasted, or missing at a count, less what a count found again, as far as no piece states to have used them.
/// </param>
public sealed record QuarterProfit(
    int Pieces,
    decimal Sales,
    decimal DeliveryCharged,
    decimal Returns,
    decimal Purchases,
    decimal Supplies,
    decimal Outings,
    decimal Fees,
    decimal Delivery,
    decimal WrittenOff,
    decimal ToolWear,
    decimal Overheads,
    decimal SuppliesLost)
{
    /// <summary>What the pieces sold had cost (cost of goods sold).</summary>
    public decimal CostOfPiecesSold => Purchases + Supplies + Outings;

    /// <summary>Sales and delivery charged less what was given back and the cost of pieces sold.</summary>
    public decimal GrossProfit => Sales + DeliveryCharged - Returns - CostOfPiecesSold;

    /// <summary>Gross profit less fees and delivery: what the pieces sold left towards everything else.</summary>
    public decimal Contribution => GrossProfit - Fees - Delivery;

    /// <summary>Costs of no piece sold: written off, wear of tools, overheads and supplies lost.</summary>
    public decimal OtherCosts => WrittenOff + ToolWear + Overheads + SuppliesLost;

    /// <summary>Net profit; below zero for a loss.</summary>
    public decimal Net => Contribution - OtherCosts;

    /// <summary>
    /// From the sales to the net profit, step by step: what came in, what each kind of cost took, below zero, and what is
    /// left. Kinds without a cost are left out; the last is the sum of the others.
    /// </summary>
    public ImmutableArray<WaterfallStep> Waterfall()
    {
        WaterfallStep[] costs =
        [
            new("given back to buyers", -Returns),
            new("paid for the pieces sold", -Purchases),
            new("supplies", -Supplies),
            new("fees and delivery", -Fees - Delivery),
            new("outings", -Outings),
            new("given away or scrapped", -WrittenOff),
            new("wear of tools", -ToolWear),
            new("overheads", -Overheads),
            new("supplies lost", -SuppliesLost),
        ];
        return
        [
            new(DeliveryCharged == 0 ? "sales" : "sales and delivery charged", Sales + DeliveryCharged),
            .. costs.Where(cost => cost.Amount != 0),
            new(Net < 0 ? "what you lost" : "what you made", Net),
        ];
    }

    /// <summary>The net profit of a span alone, without the rest of a report.</summary>
    internal static decimal NetOf(SalesLog log, ReportPeriod reckoned)
    {
        var books = QuarterBooks.OfProfitAlone(log);
        return Of(books, reckoned, QuarterSale.In(books, reckoned)).Net;
    }

    internal static QuarterProfit Of(QuarterBooks books, ReportPeriod period, ImmutableArray<QuarterSale> sales)
    {
        PieceReturn[] returns = [.. books.ReturnsIn(period).Select(back => back.Return)];
        return new(
            sales.Length,
            sales.Sum(sale => sale.SalePrice ?? 0),
            sales.Sum(sale => sale.DeliveryCharged),
            returns.Sum(back => back.GivenBack),
            sales.Sum(sale => sale.Purchase) - returns.Sum(back => back.Purchase),
            sales.Sum(sale => sale.Supplies) - returns.Sum(back => back.Supplies),
            sales.Sum(sale => sale.Outing) - returns.Sum(back => back.Outing),
            sales.Sum(sale => sale.Fees),
            sales.Sum(sale => sale.Delivery) + returns.Sum(back => back.TakingBack),
            books.Costs.Pieces.Where(cost => cost.Piece.IsWrittenOff && period.Contains(cost.Piece.LeftOn))
                .Sum(cost => StockMovement.UsualKinds.Sum(cost.Of)),
            books.WearIn(period),
            books.OverheadsIn(period),
            books.SuppliesLostIn(period));
    }
}
