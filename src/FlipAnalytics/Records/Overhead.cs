namespace FlipAnalytics;

/// <summary>A cost of no single piece in a month: a row of <c>overheads.csv</c>.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Item">What it was for, such as rent.</param>
/// <param name="Amount">What it cost.</param>
/// <param name="Row">Line of the file.</param>
public sealed record Overhead(DateOnly Month, string? Item, decimal Amount, int Row = 0);
