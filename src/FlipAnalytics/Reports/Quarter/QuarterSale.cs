using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A piece sold in the span. Costs that the log does not tell are not in it.</summary>
/// <param name="Id">The piece's id.</param>
/// <param name="Type">Its type.</param>
/// <param name="SoldOn">Day of the sale.</param>
/// <param name="SalePrice">What the buyer paid for it; null where unknown.</param>
/// <param name="DeliveryCharged">What the buyer paid for delivery.</param>
/// <param name="Purchase">What was paid for it.</param>
/// <param name="Supplies">What was used up on it.</param>
/// <param name="Outing">Its share of the outing that brought it home.</param>
/// <param name="Fees">What the channel kept.</param>
/// <param name="Delivery">What delivery cost.</param>
/// <param name="BenchHours">Hands-on hours, whenever worked; null where unknown.</param>
/// <param name="OutingHours">Its share of the hours of the outing.</param>
/// <param name="Missing">What the log does not tell of it, in words such as "fees"; the purchase and sale price first.</param>
public sealed record QuarterSale(
    string Id,
    string Type,
    DateOnly SoldOn,
    decimal? SalePrice,
    decimal DeliveryCharged,
    decimal Purchase,
    decimal Supplies,
    decimal Outing,
    decimal Fees,
    decimal Delivery,
    decimal? BenchHours,
    decimal OutingHours,
    ImmutableArray<string> Missing)
{
    /// <summary>Word in <see cref="Missing"/> for the sale price.</summary>
    public const string NoSalePrice = "sale price";

    /// <summary>Word in <see cref="Missing"/> for the purchase price.</summary>
    public const string NoPurchasePrice = "purchase price";

    /// <summary>What it had cost when it was sold: purchase, supplies and outing.</summary>
    public decimal Cost => Purchase + Supplies + Outing;

    /// <summary>What it left after all costs that are its own (its contribution); unknown amounts count as nothing.</summary>
    public decimal Contribution => (SalePrice ?? 0) + DeliveryCharged - Cost - Fees - Delivery;

    /// <summary>Whether both its prices are known, so that it can be said what it left.</summary>
    public bool HasPrices => SalePrice is not null && !Missing.Contains(NoPurchasePrice);

    /// <summary>Hours that belong to it: at the bench and its share of the outing; null where those at the bench are unknown.</summary>
    public decimal? Hours => BenchHours + OutingHours;

    /// <summary>Day on which the piece came back, so that the sale was undone; null where the sale stands.</summary>
    public DateOnly? ReturnedOn { get; init; }

    /// <summary>The sales of a span, by piece; of a piece that came back and was sold again more than one.</summary>
    internal static ImmutableArray<QuarterSale> In(QuarterBooks books, ReportPeriod period) =>
    [
        .. books.Costs.Pieces.Zip(books.Hours.Pieces).SelectMany(piece => Of(piece.First, piece.Second, period)),
    ];

    private static IEnumerable<QuarterSale> Of(PieceCost cost, PieceHours hours, ReportPeriod period)
    {
        foreach (PieceReturn back in cost.Returns)
        {
            if (back.Row.CameBack && period.Contains(back.Row.SoldOn))
                yield return Undone(cost, back);
        }

        if (cost.Piece.IsSold && period.Contains(cost.Piece.SoldOn))
            yield return Of(cost, hours);
    }

    internal static QuarterSale Of(PieceCost cost, PieceHours hours) => new(
        cost.Piece.Id,
        cost.Piece.Type,
        cost.Piece.SoldOn ?? DateOnly.MinValue,
        cost.SalePrice,
        cost.Piece.DeliveryCharged ?? 0,
        cost.Of(CostKind.Purchase),
        cost.Of(CostKind.Supplies),
        cost.Of(CostKind.Trip),
        cost.Of(CostKind.Fees) - cost.Returns.Sum(back => back.Fees),
        cost.Of(CostKind.Delivery) - cost.Returns.Sum(back => back.Delivery + back.TakingBack),
        hours.Bench,
        hours.Outings,
        [
            .. cost.Piece.SoldPrice is null ? [NoSalePrice] : Array.Empty<string>(),
            .. GapsOf(cost),
        ]);

    // The hours of a piece count with the sale that stands: it is one piece of work, however often it was sold.
    private static QuarterSale Undone(PieceCost cost, PieceReturn back) => new(
        cost.Piece.Id,
        cost.Piece.Type,
        back.Row.SoldOn!.Value,
        back.SalePrice,
        back.DeliveryCharged,
        back.Purchase,
        back.Supplies,
        back.Outing,
        back.Fees,
        back.Delivery,
        0,
        0,
        [.. GapsOf(cost)])
    {
        ReturnedOn = back.Row.ReturnedOn,
    };

    private static IEnumerable<string> GapsOf(PieceCost cost) => cost.Gaps.Select(gap => gap.Kind).Distinct().Order().Select(Word);

    private static string Word(CostKind kind) => kind switch
    {
        CostKind.Purchase => NoPurchasePrice,
        CostKind.Supplies => "supplies",
        CostKind.Trip => "driving",
        CostKind.Delivery => "delivery cost",
        CostKind.Fees => "fees",
        CostKind.Tools => "tools",
        _ => "overhead",
    };
}
