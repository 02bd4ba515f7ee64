namespace FlipAnalytics;

/// <summary>Something that lasts over many pieces: a row of <c>tools.csv</c>.</summary>
/// <param name="Item">What it is.</param>
/// <param name="BoughtOn">Day it was bought.</param>
/// <param name="Price">What it cost.</param>
/// <param name="Salvage">What it will fetch at the end of its life; unknown counts as nothing left.</param>
/// <param name="LifePieces">Life in pieces worked on.</param>
/// <param name="LifeMonths">Life in months.</param>
/// <param name="Row">Line of the file.</param>
public sealed record Tool(
    string Item,
    DateOnly? BoughtOn,
    decimal? Price,
    decimal? Salvage,
    decimal? LifePieces,
    decimal? LifeMonths,
    int Row = 0);
