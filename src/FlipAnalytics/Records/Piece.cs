namespace FlipAnalytics;

/// <summary>How sound a piece was when it was bought.</summary>
public enum Condition
{
    /// <summary>Solid; surface work only.</summary>
    Sound,

    /// <summary>Scratches, loose joints, stuck drawers: ordinary repair.</summary>
    Worn,

    /// <summary>Missing or broken parts, deep damage.</summary>
    Damaged,
}

/// <summary>How a piece left the workshop without being sold.</summary>
public enum LeftAs
{
    /// <summary>The owner kept it.</summary>
    Kept,

    /// <summary>Given away.</summary>
    Given,

    /// <summary>Thrown away.</summary>
    Scrapped,

    /// <summary>Broken beyond repair while it was here.</summary>
    Broken,

    /// <summary>Taken apart for other pieces.</summary>
    Parts,

    /// <summary>Stolen.</summary>
    Stolen,
}

/// <summary>
/// One thing bought to sell, or a set sold as one: a row of <c>pieces.csv</c>. Whatever is null is unknown, never zero.
/// Money is in the workshop's currency, lengths in its length unit.
/// </summary>
public sealed record Piece
{
    /// <summary>The owner's own name for the piece, unique in the log; "row 12" where the log gives none.</summary>
    public required string Id { get; init; }

    /// <summary>The line of <c>pieces.csv</c> it was read from; 0 when it came from elsewhere.</summary>
    public int Row { get; init; }

    /// <summary>Kind of furniture in the owner's words, such as dresser.</summary>
    public required string Type { get; init; }

    /// <summary>A few words that tell the piece from others.</summary>
    public string? Title { get; init; }

    /// <summary>How many items are sold as one; 1 or more.</summary>
    public int? Count { get; init; }

    /// <summary>Width, in the workshop's length unit.</summary>
    public decimal? Width { get; init; }

    /// <summary>Depth, in the workshop's length unit.</summary>
    public decimal? Depth { get; init; }

    /// <summary>Height, in the workshop's length unit.</summary>
    public decimal? Height { get; init; }

    /// <summary>What it is made of, such as oak or pine.</summary>
    public string? Material { get; init; }

    /// <summary>How sound it was when bought.</summary>
    public Condition? Condition { get; init; }

    /// <summary>Colour it was given, in the owner's word.</summary>
    public string? Colour { get; init; }

    /// <summary>Kind of finish it was given, such as satin or wax.</summary>
    public string? Finish { get; init; }

    /// <summary>Where it was found, such as charity shop or roadside.</summary>
    public string? Source { get; init; }

    /// <summary>The outing that brought it home; a name in <c>trips.csv</c>.</summary>
    public string? Trip { get; init; }

    /// <summary>
    /// A word shared by pieces bought together for one sum, which stands as the price paid for one of them while the
    /// others have none; null for a piece bought by itself.
    /// </summary>
    public string? Lot { get; init; }

    /// <summary>Day it was bought.</summary>
    public DateOnly? BoughtOn { get; init; }

    /// <summary>What the store asked.</summary>
    public decimal? StickerPrice { get; init; }

    /// <summary>What was paid; 0 for a piece that cost nothing.</summary>
    public decimal? BoughtPrice { get; init; }

    /// <summary>The owner's guess of the sale price when buying.</summary>
    public decimal? ExpectedPrice { get; init; }

    /// <summary>Day the work on it was done.</summary>
    public DateOnly? ReadyOn { get; init; }

    /// <summary>Day it was first offered; offering it again does not restart the clock.</summary>
    public DateOnly? ListedOn { get; init; }

    /// <summary>First asking price; later ones are in <c>asking.csv</c>.</summary>
    public decimal? AskingPrice { get; init; }

    /// <summary>Day it was sold.</summary>
    public DateOnly? SoldOn { get; init; }

    /// <summary>What the buyer paid for the piece, before fees and without a delivery charge.</summary>
    public decimal? SoldPrice { get; init; }

    /// <summary>Where it was sold, or is for sale, such as online or market stall.</summary>
    public string? Channel { get; init; }

    /// <summary>Sales tax that the buyer paid on top of the sale price; it belongs to the tax office.</summary>
    public decimal? SalesTax { get; init; }

    /// <summary>
    /// For a piece that belongs to somebody else and is sold for them: the share of the sale price that is the workshop's,
    /// above 0 to 1; null for a piece of its own.
    /// </summary>
    public decimal? Commission { get; init; }

    /// <summary>Whether it belongs to somebody else.</summary>
    public bool IsOnCommission => Commission is not null;

    /// <summary>What of an amount that a buyer pays for it is the workshop's: all of it, or the commission, rounded.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="currency">Currency to round to.</param>
    internal decimal YoursOf(decimal amount, Currency currency) =>
        Commission is { } share ? currency.Round(amount * share) : amount;

    /// <summary>What the channel or payment service kept.</summary>
    public decimal? Fees { get; init; }

    /// <summary>What the buyer paid for delivery on top of the sale price.</summary>
    public decimal? DeliveryCharged { get; init; }

    /// <summary>What delivery cost the workshop.</summary>
    public decimal? DeliveryCost { get; init; }

    /// <summary>All hands-on hours on this piece; overrides the sum of <c>hours.csv</c> for it.</summary>
    public decimal? Hours { get; init; }

    /// <summary>Cost of what was used up on it; overrides the supplies ledger for it.</summary>
    public decimal? SuppliesCost { get; init; }

    /// <summary>Day it left without being sold.</summary>
    public DateOnly? LeftOn { get; init; }

    /// <summary>How it left without being sold.</summary>
    public LeftAs? LeftAs { get; init; }

    /// <summary>Anything else the owner wrote.</summary>
    public string? Notes { get; init; }

    /// <summary>
    /// Last day it was, or could have been, on the market: of its sale, of its leaving, or for a piece still here the day
    /// asked about; null where it has ended on a day that is not recorded.
    /// </summary>
    /// <param name="today">The day up to which facts are known.</param>
    public DateOnly? LastDayOnMarket(DateOnly today) => State switch
    {
        PieceState.Sold => SoldOn,
        PieceState.Gone => LeftOn,
        _ => today,
    };

    /// <summary>Whether a sale is recorded: a sale price or a day of sale.</summary>
    public bool IsSold => SoldPrice is not null || SoldOn is not null;

    /// <summary>Whether it is recorded as gone without a sale.</summary>
    public bool IsGone => !IsSold && (LeftOn is not null || LeftAs is not null);

    /// <summary>Whether it is lost: gone without a sale, and not kept by the owner.</summary>
    internal bool IsWrittenOff => IsGone && LeftAs is not FlipAnalytics.LeftAs.Kept;

    /// <summary>Where the piece stands, by what is recorded.</summary>
    public PieceState State =>
        IsSold ? PieceState.Sold
        : IsGone ? PieceState.Gone
        : ListedOn is not null || AskingPrice is not null ? PieceState.OnSale
        : PieceState.InTheWorkshop;
}
