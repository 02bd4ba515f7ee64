using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What a piece cost and brought, line by line.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Lines">Its costs, in the order of <see cref="CostKind"/>, then by date.</param>
/// <param name="Hours">Hands-on hours, as <see cref="BenchHours"/> gives them; null where unknown.</param>
public sealed record PieceCost(Piece Piece, ImmutableArray<CostLine> Lines, decimal? Hours)
{
    /// <summary>Costs that the log does not tell, or tells in part.</summary>
    public ImmutableArray<CostGap> Gaps { get; init; } = [];

    /// <summary>
    /// What <c>pieces.csv</c> states for supplies less what the ledger assigned; 0 where nothing is stated. The line of
    /// this amount is among <see cref="Lines"/>.
    /// </summary>
    public decimal SuppliesDifference { get; init; }

    /// <summary>
    /// What of the sale price is the workshop's: all of it, or its commission on a piece that belongs to somebody else; null
    /// where unknown or not sold.
    /// </summary>
    public decimal? SalePrice { get; init; }

    /// <summary>Sales of it that were undone and money given back on the one that stands, by day.</summary>
    public ImmutableArray<PieceReturn> Returns { get; init; } = [];

    /// <summary>
    /// The workshop's sale price and the delivery charge, with what it kept of sales that were undone and less what it gave back;
    /// null where the sale price is unknown.
    /// </summary>
    public decimal? Takings => SalePrice + (Piece.DeliveryCharged ?? 0) + KeptOfReturns;

    /// <summary>What it kept of sales that were undone, less what it gave back on the one that stands.</summary>
    public decimal KeptOfReturns => Returns.Sum(back => back.Kept);

    /// <summary>
    /// Day on which fees or delivery count: those of a sale on its day, drives to its buyer with it, what a return cost on the day
    /// of the return; null where the day of the sale is not written down.
    /// </summary>
    /// <param name="line">A cost of selling it.</param>
    internal DateOnly? CountedOn(CostLine line)
    {
        if (!IsDrive(line))
            return line.Date;
        var (sale, isTakingBack) = Stays.DriveOf(line.Date);
        return sale == Undone.Length ? Piece.SoldOn : isTakingBack ? Undone[sale].ReturnedOn : Undone[sale].SoldOn;
    }

    /// <summary>Whether a cost of selling is a drive to the buyer.</summary>
    internal static bool IsDrive(CostLine line) => line.Kind == CostKind.Delivery && line.Origin.File == Columns.Trips.File;

    /// <summary>The known costs of a kind; what is unknown is not in it.</summary>
    /// <param name="kind">The kind.</param>
    public decimal Of(CostKind kind)
    {
        decimal sum = 0;
        foreach (CostLine line in Lines)
        {
            if (line.Kind == kind)
                sum += line.Amount;
        }

        return sum;
    }

    /// <summary>Whether the costs of a kind are known in full.</summary>
    /// <param name="kind">The kind.</param>
    public bool IsKnown(CostKind kind) => Gaps.All(gap => gap.Kind != kind);

    /// <summary>The costs of a kind; null where they are not known in full.</summary>
    /// <param name="kind">The kind.</param>
    public decimal? Known(CostKind kind) => IsKnown(kind) ? Of(kind) : null;

    /// <summary>Whether the log says what was paid for the piece, by itself or with its lot.</summary>
    public bool PurchaseKnown => IsKnown(CostKind.Purchase);

    /// <summary>What the supplies ledger assigned, before what <c>pieces.csv</c> states.</summary>
    public decimal SuppliesByLedger => Of(CostKind.Supplies) - SuppliesDifference;

    /// <summary>All known costs, fees and delivery included.</summary>
    public decimal Total => Lines.Sum(line => line.Amount);

    /// <summary>
    /// Takings less fees and delivery cost; null for a piece that is not sold or whose sale
    /// price or fees are unknown, or what the delivery cost that was charged for. A sale with neither charge nor cost of
    /// delivery is taken as collected by the buyer.
    /// </summary>
    public decimal? NetProceeds =>
        IsKnown(CostKind.Fees) && IsKnown(CostKind.Delivery) ? NetProceedsAtMost : null;

    /// <summary>
    /// As <see cref="NetProceeds"/>, but with unknown fees and delivery left out: the real figure is this or lower.
    /// </summary>
    public decimal? NetProceedsAtMost => Takings - Of(CostKind.Fees) - Of(CostKind.Delivery);

    /// <summary>
    /// Day it left the stock, sold or not; where that day is unknown the last earlier day on record stands in; null for
    /// a piece still here and for one that left without any day on record.
    /// </summary>
    public DateOnly? EndedOn => EndOf(Piece);

    /// <summary>When it was in stock.</summary>
    internal StockStays Stays => new(Piece, Undone);

    /// <summary>The rows of <c>returns.csv</c> with which it came back, by day.</summary>
    internal ImmutableArray<SaleReturn> Undone { get; init; } = [];

    /// <summary>Day it was sold or left; where that day is unknown the last earlier day on record stands in.</summary>
    internal static DateOnly? EndOf(Piece piece) => piece.State switch
    {
        PieceState.Sold => piece.SoldOn ?? LastDay(piece),
        PieceState.Gone => piece.LeftOn ?? LastDay(piece),
        _ => null,
    };

    private static DateOnly? LastDay(Piece piece) => piece.ListedOn > piece.ReadyOn || piece.ReadyOn is null
        ? piece.ListedOn ?? piece.BoughtOn
        : piece.ReadyOn;
}
