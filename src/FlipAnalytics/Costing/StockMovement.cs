using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>How the cost of the pieces in stock moved over a period.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Opening">Cost of the pieces in stock on the evening before the first day.</param>
/// <param name="Added">Costs that arose in the period on pieces in stock.</param>
/// <param name="CameBack">Cost of the pieces that came back in the period.</param>
/// <param name="Sold">Cost of the pieces sold in the period: the cost of goods sold.</param>
/// <param name="WrittenOff">Cost of pieces given away, scrapped, broken, taken apart or stolen in the period.</param>
/// <param name="Kept">Cost of pieces that the owner kept: a withdrawal, no loss.</param>
/// <param name="Closing">Cost of the pieces in stock on the evening of the last day.</param>
public sealed record StockMovement(
    DateOnly From,
    DateOnly To,
    decimal Opening,
    decimal Added,
    decimal CameBack,
    decimal Sold,
    decimal WrittenOff,
    decimal Kept,
    decimal Closing)
{
    /// <summary>
    /// Purchase, supplies and trip: what it took to bring the piece to its place and condition (IAS 2, paragraph 10,
    /// from memory). Tools and overhead count for the period.
    /// </summary>
    public static ImmutableArray<CostKind> UsualKinds { get; } = [CostKind.Purchase, CostKind.Supplies, CostKind.Trip];

    /// <summary>Opening, added and what came back less all that left and closing: always 0.</summary>
    public decimal Difference => Opening + Added + CameBack - Sold - WrittenOff - Kept - Closing;

    internal static StockMovement Of(CostBook book, DateOnly from, DateOnly to, ImmutableArray<CostKind> kinds)
    {
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, $"The last day must be {from:yyyy-MM-dd} or later.");
        var counts = new bool[Enum.GetValues<CostKind>().Length];
        foreach (CostKind kind in kinds)
            counts[(int)kind] = true;
        decimal opening = 0, added = 0, cameBack = 0, sold = 0, writtenOff = 0, kept = 0, closing = 0;
        foreach (PieceCost cost in book.Pieces)
        {
            StockStays stays = cost.Stays;
            foreach (CostLine line in cost.Lines.Where(line => counts[(int)line.Kind]))
            {
                foreach (StockStay stay in stays.Of(line.Date))
                {
                    // Still here at the date of the books means still here at any later day asked for.
                    DateOnly left = stay.Left ?? DateOnly.MaxValue;
                    bool hasLeft = stay.Left is not null;
                    bool leftInPeriod = hasLeft && left >= from && left <= to;
                    if (stay.From < from && (!hasLeft || left >= from))
                        opening += line.Amount;
                    if (stay.From >= from && stay.From <= to)
                        (added, cameBack) = stay.IsBack ? (added, cameBack + line.Amount) : (added + line.Amount, cameBack);
                    if (stay.From <= to && (!hasLeft || left > to))
                        closing += line.Amount;
                    if (leftInPeriod && stay.End is (StockEnd.Sold or StockEnd.SoldUndated))
                        sold += line.Amount;
                    else if (leftInPeriod && cost.Piece.LeftAs == LeftAs.Kept)
                        kept += line.Amount;
                    else if (leftInPeriod)
                        writtenOff += line.Amount;
                }
            }
        }

        return new(from, to, opening, added, cameBack, sold, writtenOff, kept, closing);
    }
}
