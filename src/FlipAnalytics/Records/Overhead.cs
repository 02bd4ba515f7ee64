namespace FlipAnalytics;

/// <summary>A cost of no single piece in a month: a row of <c>overheads.csv</c>.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Item">What it was for, such as rent.</param>
/// <param name="Amount">What it cost.</param>
/// <param name="Row">Line of the file.</param>
public sealed record Overhead(DateOnly Month, string? Item, decimal Amount, int Row = 0)
{
    /// <summary>
    /// The channel it is for, such as a booth, in the word that pieces use: those for sale there share it; null for a cost of
    /// the whole workshop.
    /// </summary>
    public string? Channel { get; init; }
}
