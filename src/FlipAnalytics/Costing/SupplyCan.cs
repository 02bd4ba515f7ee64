namespace FlipAnalytics;

/// <summary>
/// A purchase of a supply on an evening: what was bought of it is used, wasted, counted away or left, in quantity and in
/// money.
/// </summary>
/// <param name="Item">The owner's name for it.</param>
/// <param name="BoughtOn">Day it was bought; null where unknown.</param>
/// <param name="Bought">How much was bought, in <paramref name="Unit"/>; null where unknown.</param>
/// <param name="Unit">Unit of the quantities.</param>
/// <param name="Used">How much pieces used up; null where unknown.</param>
/// <param name="Wasted">How much went to waste; null where unknown.</param>
/// <param name="CountedAway">How much was missing at counts, below zero where more was found; null where unknown.</param>
/// <param name="Left">How much is left; null where unknown.</param>
/// <param name="Cost">What was paid for it; null where unknown.</param>
/// <param name="CostUsed">What the pieces that used it bear.</param>
/// <param name="CostWasted">What was wasted had cost.</param>
/// <param name="CostCountedAway">What was missing at counts had cost, below zero where more was found.</param>
/// <param name="ValueLeft">What the rest cost; never below zero.</param>
/// <param name="Row">Line of <c>supplies.csv</c>.</param>
public sealed record SupplyCan(
    string Item,
    DateOnly? BoughtOn,
    decimal? Bought,
    string? Unit,
    decimal? Used,
    decimal? Wasted,
    decimal? CountedAway,
    decimal? Left,
    decimal? Cost,
    decimal CostUsed,
    decimal CostWasted,
    decimal CostCountedAway,
    decimal ValueLeft,
    int Row);
