namespace FlipAnalytics;

/// <summary>
/// Money given back to a buyer: a row of <c>returns.csv</c>. Where the piece came back, the row tells of the sale that was undone,
/// and <c>pieces.csv</c> of the piece as it is now; where the buyer kept it, the sale in <c>pieces.csv</c> stands.
/// </summary>
/// <param name="PieceId">Id of the piece.</param>
/// <param name="ReturnedOn">Day it came back, or the money was given back.</param>
/// <param name="Refund">What was given back of sale price and delivery charge; zero or more.</param>
/// <param name="Row">Line of the file.</param>
public sealed record SaleReturn(string PieceId, DateOnly ReturnedOn, decimal Refund, int Row = 0)
{
    /// <summary>Sales tax given back with it.</summary>
    public decimal? SalesTax { get; init; }

    /// <summary>Day of the sale that was undone; null where the piece stayed with its buyer.</summary>
    public DateOnly? SoldOn { get; init; }

    /// <summary>What the buyer had paid for the piece; null where it stayed with its buyer.</summary>
    public decimal? SoldPrice { get; init; }

    /// <summary>What the channel kept of that sale in the end.</summary>
    public decimal? Fees { get; init; }

    /// <summary>What the buyer had paid for delivery.</summary>
    public decimal? DeliveryCharged { get; init; }

    /// <summary>What delivery had cost the workshop.</summary>
    public decimal? DeliveryCost { get; init; }

    /// <summary>What it cost to take the piece back, such as its carriage.</summary>
    public decimal? Cost { get; init; }

    /// <summary>Anything else.</summary>
    public string? Notes { get; init; }

    /// <summary>Whether the piece is back and its sale undone; else the sale stands, for less.</summary>
    public bool CameBack => SoldPrice is not null && SoldOn is not null;
}
