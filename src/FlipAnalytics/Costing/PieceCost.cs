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

    /// <summary>The workshop's sale price and the delivery charge; null where the sale price is unknown.</summary>
    public decimal? Takings => SalePrice + (Piece.DeliveryCharged ?? 0);

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
    /// Sale price less fees and delivery cost, plus delivery charge; null for a piece that is not sold or whose sale
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

    /// <summary>
    /// Day it left the stock; null while it is here, the first of all days where the log tells none though it has left.
    /// </summary>
    internal DateOnly? LeftStockOn => LeftStock(Piece);

    /// <summary>
    /// Day from which the stock holds a cost: its own, at the latest the day the piece left; without one, when the piece was
    /// bought, or where that is unknown when it left, or before everything.
    /// </summary>
    /// <param name="line">One of <see cref="Lines"/>.</param>
    /// <param name="leftStockOn">As <see cref="LeftStockOn"/> has it, found once for all lines.</param>
    internal DateOnly AroseOn(CostLine line, DateOnly? leftStockOn) => AroseOn(Piece, line.Date, leftStockOn);

    /// <summary>The same for a cost of a piece with a day of its own.</summary>
    internal static DateOnly AroseOn(Piece piece, DateOnly? date) => AroseOn(piece, date, LeftStock(piece));

    private static DateOnly AroseOn(Piece piece, DateOnly? date, DateOnly? leftStockOn)
    {
        DateOnly arose = date ?? piece.BoughtOn ?? leftStockOn ?? DateOnly.MinValue;
        return arose > leftStockOn ? leftStockOn.Value : arose;
    }

    private static DateOnly? LeftStock(Piece piece) => piece.IsSold || piece.IsGone ? EndOf(piece) ?? DateOnly.MinValue : null;

    private static DateOnly? EndOf(Piece piece) => piece.State switch
    {
        PieceState.Sold => piece.SoldOn ?? LastDay(piece),
        PieceState.Gone => piece.LeftOn ?? LastDay(piece),
        _ => null,
    };

    private static DateOnly? LastDay(Piece piece) => piece.ListedOn > piece.ReadyOn || piece.ReadyOn is null
        ? piece.ListedOn ?? piece.BoughtOn
        : piece.ReadyOn;
}
