using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What a sold piece earned, for the business and for an hour of its owner.</summary>
/// <remarks>
/// Cash profit is what the sale left after what was paid for this piece alone: sale price and delivery charge less fees,
/// delivery, purchase price and supplies. Full profit takes off its share of outings, tools and overheads as well. Costs
/// that the log does not tell are in neither, and <see cref="Missing"/> names them: the true figure is then lower. Without
/// a sale price or a purchase price there is no profit, and without hours no wage.
/// </remarks>
/// <param name="Cost">Its costs, with their trail.</param>
/// <param name="Hours">Its hours.</param>
public sealed record FlipResult(PieceCost Cost, PieceHours Hours)
{
    private static readonly ImmutableArray<CostKind> Shared = [CostKind.Trip, CostKind.Tools, CostKind.Overhead];

    /// <summary>The piece.</summary>
    public Piece Piece => Cost.Piece;

    /// <summary>Sale price and delivery charge; null for an unknown sale price.</summary>
    public decimal? Takings => Cost.Takings;

    /// <summary>Profit of the sale after the costs of this piece alone; null where sale or purchase price is unknown.</summary>
    public decimal? CashProfit { get; } = Cost.PurchaseKnown && Cost.NetProceedsAtMost is { } proceeds
        ? proceeds - Cost.Of(CostKind.Purchase) - Cost.Of(CostKind.Supplies)
        : null;

    /// <summary>The same after its shares of outings, tools and overheads.</summary>
    public decimal? FullProfit { get; } = Cost.PurchaseKnown ? Cost.Takings - Cost.Total : null;

    /// <summary>Cash profit for an hour at the bench; null where either is unknown or the hours are none.</summary>
    public decimal? CashWage => Hours.Bench > 0 ? CashProfit / Hours.Bench : null;

    /// <summary>Full profit for an hour of all work; null where either is unknown or the hours are none.</summary>
    public decimal? FullWage => Hours.Bench > 0 ? FullProfit / Hours.All : null;

    /// <summary>Costs that the log does not tell in full, without the purchase price.</summary>
    public ImmutableArray<CostKind> Missing { get; } =
        [.. Cost.Gaps.Select(gap => gap.Kind).Where(kind => kind != CostKind.Purchase).Distinct().Order()];

    /// <summary>Whether <see cref="CashProfit"/> lacks a cost, so that the true figure is this or lower.</summary>
    public bool CashIsAtMost => Missing.Any(kind => !Shared.Contains(kind));

    /// <summary>Whether <see cref="FullProfit"/> lacks a cost, so that the true figure is this or lower.</summary>
    public bool FullIsAtMost => !Missing.IsEmpty;

    /// <summary>The sold pieces of a log, in its order.</summary>
    /// <param name="book">The books of the log.</param>
    /// <param name="hours">The hours of the same log.</param>
    /// <param name="isChosen">Which of them; all where null.</param>
    public static ImmutableArray<FlipResult> Sold(CostBook book, HoursLedger hours, Func<Piece, bool>? isChosen = null)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(hours);
        return
        [
            .. book.Pieces.Zip(hours.Pieces)
                .Where(piece => piece.First.Piece.IsSold && isChosen?.Invoke(piece.First.Piece) != false)
                .Select(piece => new FlipResult(piece.First, piece.Second)),
        ];
    }
}
