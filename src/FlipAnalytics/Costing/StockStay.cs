using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>How a cost left the stock.</summary>
internal enum StockEnd
{
    /// <summary>It is here.</summary>
    Here,

    /// <summary>Sold on a day.</summary>
    Sold,

    /// <summary>Sold on a day that is not written down.</summary>
    SoldUndated,

    /// <summary>Given away, scrapped, broken, taken apart or stolen.</summary>
    WrittenOff,

    /// <summary>Kept by the owner.</summary>
    Kept,

    /// <summary>Gone without a sale on a day that is not written down.</summary>
    LeftUndated,
}

/// <summary>A time for which the stock holds a cost: from when it arose, or the piece came back, until the piece left.</summary>
/// <param name="From">First day.</param>
/// <param name="IsBack">Whether the piece came back on that day, so that the cost is no new one.</param>
/// <param name="Left">Day on whose evening it was gone; null where it is here.</param>
/// <param name="End">How it left.</param>
internal readonly record struct StockStay(DateOnly From, bool IsBack, DateOnly? Left, StockEnd End);

/// <summary>
/// When a piece is in stock: until it is sold or leaves otherwise, and where a sale was undone, again from the day it came back.
/// </summary>
/// <param name="piece">The piece.</param>
/// <param name="undone">The rows of <c>returns.csv</c> with which it came back, by day; empty for nearly every piece.</param>
internal readonly struct StockStays(Piece piece, ImmutableArray<SaleReturn> undone)
{
    /// <summary>
    /// Day it left for good, sold or not; null while it is here, the first of all days where the log tells none though it has left.
    /// </summary>
    public DateOnly? Left { get; } = LeftForGood(piece, undone);

    /// <summary>How it left for good.</summary>
    public StockEnd End { get; } = piece switch
    {
        { IsSold: true, SoldOn: not null } => StockEnd.Sold,
        { IsSold: true } => StockEnd.SoldUndated,
        { IsGone: false } => StockEnd.Here,
        { LeftOn: null } => StockEnd.LeftUndated,
        { LeftAs: LeftAs.Kept } => StockEnd.Kept,
        _ => StockEnd.WrittenOff,
    };

    /// <summary>
    /// Day from which the stock holds a cost: its own, at the latest the day the piece left; without one, when the piece was
    /// bought, or where that is unknown when it left, or before everything. What is dated while the piece was with a buyer counts
    /// on the day it was sold to them.
    /// </summary>
    /// <param name="date">The day of the cost; null where unknown.</param>
    public DateOnly AroseOn(DateOnly? date)
    {
        DateOnly? day = date ?? piece.BoughtOn;
        foreach (SaleReturn back in undone)
        {
            DateOnly sold = back.SoldOn!.Value;
            if (day is null || day < back.ReturnedOn)
                return day < sold ? day.Value : sold;
        }

        DateOnly arose = day ?? Left ?? DateOnly.MinValue;
        return arose > Left ? Left.Value : arose;
    }

    /// <summary>The times for which the stock holds a cost, in their order; nearly always one.</summary>
    /// <param name="date">The day of the cost; null where unknown.</param>
    public IEnumerable<StockStay> Of(DateOnly? date)
    {
        DateOnly from = AroseOn(date);
        bool isBack = false;
        foreach (SaleReturn back in undone)
        {
            if (from > back.SoldOn)
                continue;
            yield return new(from, isBack, back.SoldOn, StockEnd.Sold);
            (from, isBack) = (back.ReturnedOn, true);
        }

        yield return new(from, isBack, Left, End);
    }

    /// <summary>Whether it is not in stock on the evening of a day, though it had been bought.</summary>
    /// <param name="day">The day.</param>
    public bool IsOutOn(DateOnly day)
    {
        foreach (SaleReturn back in undone)
        {
            if (back.SoldOn <= day && back.ReturnedOn > day)
                return true;
        }

        return Left <= day;
    }

    /// <summary>
    /// The sale that a drive belongs to: a place among those that were undone, or their number for the sale that stands. A drive
    /// after a return and before the next sale took the piece back.
    /// </summary>
    /// <param name="day">The day of the drive; null where unknown.</param>
    public (int Sale, bool IsTakingBack) DriveOf(DateOnly? day)
    {
        int place = 0;
        while (place < undone.Length && day >= undone[place].ReturnedOn)
            place++;
        bool isStanding = piece.IsSold && (day is null || (place == undone.Length && !(day < piece.SoldOn)));
        if (isStanding || undone.IsEmpty)
            return (undone.Length, false);
        return place == undone.Length || (place > 0 && day < undone[place].SoldOn) ? (place - 1, true) : (place, false);
    }

    private static DateOnly? LeftForGood(Piece piece, ImmutableArray<SaleReturn> undone)
    {
        if (!piece.IsSold && !piece.IsGone)
            return null;
        DateOnly left = PieceCost.EndOf(piece) ?? DateOnly.MinValue;
        return undone.IsEmpty || left > undone[^1].ReturnedOn ? left : undone[^1].ReturnedOn;
    }
}
