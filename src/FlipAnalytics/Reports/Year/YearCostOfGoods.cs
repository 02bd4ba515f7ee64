using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What left the stock otherwise than by a dated sale, and so is in no cost of goods sold.</summary>
/// <param name="Why">Written off, kept, or gone on an unknown day.</param>
/// <param name="Purchase">What had been paid for it.</param>
/// <param name="Other">Supplies and outings on it.</param>
public sealed record YearTakenOut(string Why, decimal Purchase, decimal Other)
{
    /// <summary>All of it.</summary>
    public decimal Cost => Purchase + Other;
}

/// <summary>
/// Cost of goods sold in the five lines of the periodic method: opening stock, purchases, other costs, closing stock, and the
/// cost that follows.
/// </summary>
/// <remarks>
/// The layout is that of Weygandt, Kimmel and Kieso, Accounting Principles, chapter 5 (cost of goods sold, periodic system:
/// beginning inventory, net purchases, freight-in, ending inventory), and of the US Schedule C (Form 1040), Part III, lines 35
/// to 42, where purchases are less what is withdrawn for personal use (line 36) and nothing is paid to oneself (line 37); IRS
/// Publication 334, chapter 6. Stock is what the pieces have cost so far and the supplies left in cans, at cost.
/// </remarks>
/// <param name="OpeningPieces">Cost of the pieces in stock on the evening before.</param>
/// <param name="OpeningInCans">Supplies in cans then.</param>
/// <param name="PiecesBought">Pieces bought.</param>
/// <param name="SuppliesBought">Supplies bought.</param>
/// <param name="SuppliesStated">
/// Supplies that <c>pieces.csv</c> states beyond what cans were charged for, less what counts have found missing of them; below
/// zero where less.
/// </param>
/// <param name="SuppliesLost">Supplies wasted, or missing at a count: an expense by itself.</param>
/// <param name="SuppliesOfOtherDay">
/// Supplies that a piece took from a can bought after it had left, which count on another day in its cost than in the can.
/// </param>
/// <param name="Outings">Outings that brought pieces home: driving at the rate, and what else was paid.</param>
/// <param name="TakenOut">What left the stock otherwise than by a dated sale.</param>
/// <param name="ClosingPieces">Cost of the pieces in stock on the last evening.</param>
/// <param name="ClosingInCans">Supplies in cans then.</param>
/// <param name="OutingsInClosing">Of <paramref name="ClosingPieces"/>, what is outings.</param>
public sealed record YearCostOfGoods(
    decimal OpeningPieces,
    decimal OpeningInCans,
    decimal PiecesBought,
    decimal SuppliesBought,
    decimal SuppliesStated,
    decimal SuppliesLost,
    decimal SuppliesOfOtherDay,
    decimal Outings,
    ImmutableArray<YearTakenOut> TakenOut,
    decimal ClosingPieces,
    decimal ClosingInCans,
    decimal OutingsInClosing)
{
    /// <summary>Opening stock.</summary>
    public decimal Opening => OpeningPieces + OpeningInCans;

    /// <summary>Pieces bought, less what had been paid for pieces that left unsold; below zero where these had cost more.</summary>
    public decimal Purchases => PiecesBought - TakenOut.Sum(taken => taken.Purchase);

    /// <summary>Supplies and outings, less supplies lost and those of pieces that left unsold.</summary>
    public decimal OtherCosts => SuppliesBought + SuppliesStated + SuppliesOfOtherDay + Outings - SuppliesLost - TakenOut.Sum(taken => taken.Other);

    /// <summary>Closing stock.</summary>
    public decimal Closing => ClosingPieces + ClosingInCans;

    /// <summary>Cost of goods sold: opening stock, purchases and other costs less closing stock.</summary>
    public decimal CostOfGoodsSold => Opening + Purchases + OtherCosts - Closing;

    internal static YearCostOfGoods Of(
        QuarterBooks books, ReportPeriod period, QuarterStock opening, QuarterStock closing, QuarterMovement moved) => new(
        opening.Cost,
        opening.InCans,
        moved.Bought,
        moved.SuppliesBought,
        moved.Stated - moved.StatedByCounts,
        moved.SuppliesLost,
        moved.FromCans - moved.OutOfCans,
        moved.Outings,
        [
            .. books.Lines.Where(line => period.Contains(line.Left))
                .GroupBy(line => Why(line.End))
                .Where(why => why.Key is not null)
                .Select(why => new YearTakenOut(
                    why.Key!,
                    why.Where(line => line.Line.Kind == CostKind.Purchase).Sum(line => line.Line.Amount),
                    why.Where(line => line.Line.Kind != CostKind.Purchase).Sum(line => line.Line.Amount)))
                .OrderBy(taken => taken.Why, StringComparer.Ordinal),
        ],
        closing.Cost,
        closing.InCans,
        books.Lines.Where(line => line.Line.Kind == CostKind.Trip && line.IsHeldOn(period.To)).Sum(line => line.Line.Amount));

    // Null for a sale on a known day, which is what the cost of goods sold is about.
    private static string? Why(StockEnd end) => end switch
    {
        StockEnd.SoldUndated => "sold, day unknown",
        StockEnd.LeftUndated => "gone, day unknown",
        StockEnd.Kept => "kept for yourself",
        StockEnd.WrittenOff => "written off",
        _ => null,
    };
}
