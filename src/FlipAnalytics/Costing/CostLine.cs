namespace FlipAnalytics;

/// <summary>Where a cost comes from: which row of which file, by which rule.</summary>
/// <param name="File">File of the log, such as <c>supplies.csv</c>.</param>
/// <param name="Row">Line of the file; null where the cost rests on no single line.</param>
/// <param name="Rule">How the amount follows from the line: a sentence.</param>
public sealed record CostOrigin(string File, int? Row, string Rule);

/// <summary>What a cost is for.</summary>
public enum CostKind
{
    /// <summary>What was paid for the piece.</summary>
    Purchase,

    /// <summary>What was used up on it.</summary>
    Supplies,

    /// <summary>Wear of tools.</summary>
    Tools,

    /// <summary>Its share of the outing that brought it home.</summary>
    Trip,

    /// <summary>Its share of costs of no single piece, fruitless outings included.</summary>
    Overhead,

    /// <summary>What delivery to the buyer cost the workshop.</summary>
    Delivery,

    /// <summary>What the selling channel kept.</summary>
    Fees,
}

/// <summary>One cost, with its trail.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Date">Day it arose; null where the log does not say.</param>
/// <param name="Amount">Amount in the workshop's currency; below zero where a cost is taken back.</param>
/// <param name="What">A few words for the owner.</param>
/// <param name="Origin">Where it comes from.</param>
public sealed record CostLine(CostKind Kind, DateOnly? Date, decimal Amount, string What, CostOrigin Origin);

/// <summary>A cost that a piece has but the log does not tell; it is unknown, not zero.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="What">What is missing: a sentence.</param>
public sealed record CostGap(CostKind Kind, string What);
