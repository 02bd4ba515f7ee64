namespace FlipAnalytics;

/// <summary>A use of a supply, as a measured quantity or as coats on an area: a row of <c>uses.csv</c>.</summary>
/// <param name="PieceId">The piece it was used on; null for waste, such as a can that dried up.</param>
/// <param name="Date">Day of the use.</param>
/// <param name="Item">The supply used; an item of <c>supplies.csv</c>.</param>
/// <param name="Quantity">Measured quantity, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of the quantity.</param>
/// <param name="Coats">Number of coats.</param>
/// <param name="Area">Area coated, in the square of the workshop's area unit (ft² for inches, m² for centimetres).</param>
/// <param name="Row">Line of the file.</param>
public sealed record SupplyUse(
    string? PieceId,
    DateOnly? Date,
    string Item,
    decimal? Quantity,
    string? Unit,
    decimal? Coats,
    decimal? Area,
    int Row = 0);
