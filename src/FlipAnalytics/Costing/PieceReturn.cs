namespace FlipAnalytics;

/// <summary>
/// What a return did to the books: a sale that was undone, or money given back on one that stands. Both count on their own day,
/// the sale when it was made, the return when it came (IFRS 15, paragraphs B20 to B27, from memory: what is given back is no
/// revenue, and goods that come back are an asset at what they had cost).
/// </summary>
/// <param name="Row">The row of <c>returns.csv</c>.</param>
/// <param name="SalePrice">What of the sale price was the workshop's; 0 where the sale stands.</param>
/// <param name="GivenBack">
/// What of the money given back was the workshop's own, and, of a buyer who had not paid in full, what is no longer due.
/// </param>
public sealed record PieceReturn(SaleReturn Row, decimal SalePrice, decimal GivenBack)
{
    /// <summary>What had been paid for the piece that came back; 0 where the sale stands.</summary>
    public decimal Purchase { get; init; }

    /// <summary>What had been used up on it.</summary>
    public decimal Supplies { get; init; }

    /// <summary>Its share of the outing that brought it home.</summary>
    public decimal Outing { get; init; }

    /// <summary>What the channel kept of the sale that was undone.</summary>
    public decimal Fees { get; init; }

    /// <summary>What delivery of the sale that was undone had cost.</summary>
    public decimal Delivery { get; init; }

    /// <summary>What it cost to take the piece back.</summary>
    public decimal TakingBack { get; init; }

    /// <summary>What the buyer had paid for delivery in the sale that was undone.</summary>
    public decimal DeliveryCharged => Row.CameBack ? Row.DeliveryCharged ?? 0 : 0;

    /// <summary>What the piece that came back had cost until it was sold.</summary>
    public decimal Cost => Purchase + Supplies + Outing;

    /// <summary>What of the buyer's money the workshop has kept; below zero for money given back on a sale that stands.</summary>
    public decimal Kept => SalePrice + DeliveryCharged - GivenBack;

    /// <summary>What the sale that was undone left on its day; 0 where the sale stands.</summary>
    public decimal LeftBySale => SalePrice + DeliveryCharged - Cost - Fees - Delivery;

    /// <summary>What the return left on its day; mostly below zero.</summary>
    public decimal LeftByReturn => Cost - GivenBack - TakingBack;
}
