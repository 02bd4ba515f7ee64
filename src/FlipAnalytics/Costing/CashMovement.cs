namespace FlipAnalytics;

/// <summary>Money that came in or went out on a day.</summary>
/// <param name="Date">The day; null where the log does not say.</param>
/// <param name="Amount">Above zero for money in, below for money out.</param>
/// <param name="What">A few words for the owner.</param>
/// <param name="Origin">Where it comes from.</param>
public sealed record CashMovement(DateOnly? Date, decimal Amount, string What, CostOrigin Origin)
{
    /// <summary>What was paid for; null for money from a sale and for what is no cost.</summary>
    public CostKind? Kind { get; init; }

    /// <summary>Whose it is, where it is neither from a sale nor for a cost; null where it is.</summary>
    public MoneyOf? Of { get; init; }

    /// <summary>The piece it belongs to; null for none.</summary>
    public string? PieceId { get; init; }

    /// <summary>Whether it was given back to a buyer.</summary>
    public bool IsGivenBack { get; init; }

    /// <summary>The outing it belongs to; null for none.</summary>
    public Trip? Outing { get; init; }

    /// <summary>
    /// Whether it is reckoned and not paid out on that day: driving at a rate for each mile or kilometre, which stands
    /// for fuel, wear and insurance.
    /// </summary>
    public bool IsReckoned { get; init; }
}
