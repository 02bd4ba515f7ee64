namespace FlipAnalytics;

/// <summary>
/// A stock count: what is left of a supply on the evening of a day, a row of <c>counts.csv</c>. Rows of one item and day add
/// up, such as two cans on two shelves.
/// </summary>
/// <param name="Date">Day of the count.</param>
/// <param name="Item">The supply counted; an item of <c>supplies.csv</c>.</param>
/// <param name="Quantity">What is left; 0 where it is empty.</param>
/// <param name="Unit">Unit of the quantity; null for the unit it was bought in.</param>
/// <param name="Notes">Anything else.</param>
/// <param name="Row">Line of the file.</param>
public sealed record StockCount(
    DateOnly Date,
    string Item,
    decimal Quantity,
    string? Unit,
    string? Notes,
    int Row = 0);
