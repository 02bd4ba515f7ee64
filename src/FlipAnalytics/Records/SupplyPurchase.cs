namespace FlipAnalytics;

/// <summary>A purchase of something that is used up: a row of <c>supplies.csv</c>.</summary>
/// <param name="Item">The owner's name for it; purchases of one item share it.</param>
/// <param name="Kind">What kind of thing it is, such as paint or abrasive.</param>
/// <param name="BoughtOn">Day it was bought.</param>
/// <param name="Quantity">How much, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of the quantity, such as quart, l, sheet.</param>
/// <param name="Price">What was paid for the whole quantity.</param>
/// <param name="Coverage">Area one unit covers in one coat, by the label.</param>
/// <param name="CoverageUnit">Unit of the coverage, such as ft2/quart.</param>
/// <param name="Row">Line of the file.</param>
public sealed record SupplyPurchase(
    string Item,
    string? Kind,
    DateOnly? BoughtOn,
    decimal? Quantity,
    string? Unit,
    decimal? Price,
    decimal? Coverage,
    string? CoverageUnit,
    int Row = 0);
