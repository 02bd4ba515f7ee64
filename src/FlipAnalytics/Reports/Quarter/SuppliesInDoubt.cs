using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// What pieces state for supplies without a use was taken from some can, but from which is not written down. Until the can is
/// counted, that much of it may be gone; a count of the item after the work on the piece ends the doubt.
/// </summary>
internal static class SuppliesInDoubt
{
    /// <summary>How much of what is in cans may be gone on an evening; 0 where nothing is in doubt.</summary>
    /// <param name="books">The books.</param>
    /// <param name="day">The evening.</param>
    /// <param name="cans">The cans on that evening.</param>
    public static decimal Of(QuarterBooks books, DateOnly day, ImmutableArray<SupplyCan> cans)
    {
        // From the day a can was bought, or after it was last counted, it may have served a piece that does not say so.
        (DateOnly From, decimal Value)[] open =
        [
            .. cans.Where(can => can.ValueLeft > 0).Select(can => (Later(
                can.BoughtOn ?? DateOnly.MinValue, books.Costs.Shelf.LastCount(can.Item, day)?.AddDays(1) ?? DateOnly.MinValue), can.ValueLeft)),
        ];
        if (open.Length == 0)
            return 0;
        Dictionary<string, decimal> settled = new(StringComparer.OrdinalIgnoreCase);
        foreach (StatedByCount piece in books.Costs.StatedByCounts.Where(piece => piece.Date <= day))
            settled[piece.PieceId] = settled.GetValueOrDefault(piece.PieceId) + piece.Amount;
        DateOnly earliest = open.Min(can => can.From);
        DateOnly? last = null;
        decimal stated = 0;
        foreach (StockLine line in books.Lines)
        {
            if (line.IsBack || !line.IsStated || line.Arose > day || line.Arose < earliest)
                continue;
            decimal amount = line.Line.Amount - settled.GetValueOrDefault(line.Cost.Piece.Id);
            if (amount <= 0)
                continue;
            stated += amount;
            last = line.Arose > last ? line.Arose : last ?? line.Arose;
        }

        return Math.Min(stated, open.Where(can => can.From <= last).Sum(can => can.Value));
    }

    private static DateOnly Later(DateOnly one, DateOnly other) => one > other ? one : other;
}
