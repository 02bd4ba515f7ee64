namespace FlipAnalytics;

/// <summary>
/// How the cost of pieces, of supplies in cans and of tools moved in a span; all flows, so the movement of a span is the sum of
/// those of its parts.
/// </summary>
/// <param name="Bought">Pieces bought.</param>
/// <param name="FromCans">Supplies that went from cans into pieces.</param>
/// <param name="Stated">Supplies that <c>pieces.csv</c> states beyond what cans were charged for; below zero where less.</param>
/// <param name="Outings">Outings that brought pieces home.</param>
/// <param name="CameBack">Cost of pieces that came back from their buyers.</param>
/// <param name="Sold">Cost of pieces sold on a day of the span (cost of goods sold).</param>
/// <param name="SoldUndated">
/// Cost of pieces whose day of sale is not written down; the stock gives them up on the last earlier day on record.
/// </param>
/// <param name="WrittenOff">Cost of pieces given away, scrapped, broken, taken apart or stolen.</param>
/// <param name="Kept">Cost of pieces the owner kept (a withdrawal).</param>
/// <param name="LeftUndated">Cost of pieces gone without a sale on a day that is not written down, as <paramref name="SoldUndated"/>.</param>
/// <param name="SuppliesBought">Supplies bought.</param>
/// <param name="ToolsBought">Tools bought.</param>
/// <param name="ToolWear">Wear of tools.</param>
/// <param name="OtherDay">
/// What counts on another day than the money went out: pieces and outings dated after the piece had left, supplies used on a
/// piece that had left before the can was bought, drives to buyers on another day than the sale, and overheads, which count over
/// the days of their month but are taken as paid on its first.
/// </param>
/// <param name="OutOfCans">
/// What pieces took from cans, on the day it left them: never before the can was bought, though a piece may have left earlier.
/// </param>
/// <param name="SuppliesLost">Supplies wasted, or missing at a count, that no piece carries; below zero for what was found.</param>
/// <param name="StatedByCounts">What counts found missing and pieces had stated to have used.</param>
public sealed record QuarterMovement(
    decimal Bought,
    decimal FromCans,
    decimal Stated,
    decimal Outings,
    decimal CameBack,
    decimal Sold,
    decimal SoldUndated,
    decimal WrittenOff,
    decimal Kept,
    decimal LeftUndated,
    decimal SuppliesBought,
    decimal ToolsBought,
    decimal ToolWear,
    decimal OtherDay,
    decimal OutOfCans,
    decimal SuppliesLost,
    decimal StatedByCounts)
{
    /// <summary>Change of the cost of pieces in stock.</summary>
    public decimal ChangeOfPieces =>
        Bought + FromCans + Stated + Outings + CameBack - Sold - SoldUndated - WrittenOff - Kept - LeftUndated;

    /// <summary>Change of the supplies in cans.</summary>
    public decimal ChangeInCans => SuppliesBought - OutOfCans - SuppliesLost - StatedByCounts;

    /// <summary>Change of the book value of tools.</summary>
    public decimal ChangeOfTools => ToolsBought - ToolWear;

    internal static QuarterMovement Of(QuarterBooks books, ReportPeriod period)
    {
        decimal bought = 0, fromCans = 0, stated = 0, outings = 0, cameBack = 0, otherDay = 0;
        decimal[] left = new decimal[Enum.GetValues<StockEnd>().Length];
        foreach (StockLine line in books.Lines)
        {
            decimal amount = line.Line.Amount;
            bool arose = period.Contains(line.Arose);
            if (line.IsBack)
            {
                cameBack += arose ? amount : 0;
            }
            else
            {
                if (line.Line.Kind is CostKind.Purchase or CostKind.Trip)
                    otherDay += (arose ? amount : 0) - (period.Contains(line.Line.Date) ? amount : 0);
                if (arose && line.Line.Kind == CostKind.Purchase)
                    bought += amount;
                else if (arose && line.Line.Kind == CostKind.Trip)
                    outings += amount;
                else if (arose && line.IsStated)
                    stated += amount;
                else if (arose)
                    fromCans += amount;
            }

            if (period.Contains(line.Left))
                left[(int)line.End] += amount;
        }

        foreach (var (_, drive, counted) in books.Selling.Where(line => line.IsDrive))
            otherDay += (period.Contains(counted) ? drive.Amount : 0) - (period.Contains(drive.Date) ? drive.Amount : 0);
        decimal outOfCans = books.Costs.Shelf.UsedOn(day => period.Contains(day));
        otherDay += fromCans - outOfCans;
        return new(
            bought, fromCans, stated, outings, cameBack,
            left[(int)StockEnd.Sold], left[(int)StockEnd.SoldUndated], left[(int)StockEnd.WrittenOff], left[(int)StockEnd.Kept],
            left[(int)StockEnd.LeftUndated],
            Paid(books, CostKind.Supplies, day => period.Contains(day)),
            Paid(books, CostKind.Tools, day => period.Contains(day)),
            books.WearIn(period),
            otherDay + books.OverheadsIn(period)
                - books.Costs.Overheads.Where(line => period.Contains(line.Date)).Sum(line => line.Amount),
            outOfCans,
            books.SuppliesLostIn(period),
            books.Costs.StatedByCounts.Where(piece => period.Contains(piece.Date)).Sum(piece => piece.Amount));
    }

    internal static decimal Paid(QuarterBooks books, CostKind kind, Func<DateOnly?, bool> when) =>
        -books.Costs.Cash.Where(movement => movement.Kind == kind && when(movement.Date)).Sum(movement => movement.Amount);
}
