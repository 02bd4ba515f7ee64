namespace FlipAnalytics;

/// <summary>Where a piece stands at a date.</summary>
public enum PieceState
{
    /// <summary>Bought, not yet offered.</summary>
    InTheWorkshop,

    /// <summary>Offered, neither sold nor gone.</summary>
    OnSale,

    /// <summary>Sold.</summary>
    Sold,

    /// <summary>Left without a sale: kept, given away, scrapped, broken, used for parts or stolen.</summary>
    Gone,
}
