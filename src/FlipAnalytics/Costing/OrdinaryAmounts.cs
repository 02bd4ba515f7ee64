namespace FlipAnalytics;

/// <summary>
/// Between which amounts the ordinary ones of a kind lie, as a factor of their median: what is beyond is held at the end or
/// left out, so that an average follows the many and not one slip of the pen. Where fewer than five are above zero, every
/// amount is ordinary.
/// </summary>
internal sealed record OrdinaryAmounts
{
    private const int FewestToJudge = 5;

    // Fees, discounts and deliveries of different channels and distances differ by several times; never by less than this.
    private const decimal LeastFactor = 8;

    private const decimal MostStep = 10;

    private readonly decimal low;
    private readonly decimal high = decimal.MaxValue;

    private OrdinaryAmounts()
    {
    }

    private OrdinaryAmounts(decimal low, decimal high) => (this.low, this.high) = (low, high);

    /// <summary>The ordinary range of these amounts; what is unknown or not above zero says nothing of it.</summary>
    public static OrdinaryAmounts Of(IEnumerable<decimal?> amounts)
    {
        decimal[] sorted = [.. amounts.Where(a => a > 0).Select(a => a!.Value).Order()];
        if (sorted.Length < FewestToJudge)
            return new();
        decimal median = Middle(sorted);
        // Half of the amounts lie within this factor of the median; three such steps are far out.
        decimal half = Middle([.. sorted.Select(a => a > median ? a / median : median / a).Order()]);
        decimal step = Math.Min(half, MostStep);
        decimal factor = Math.Max(LeastFactor, step * step * step);
        return new(median / factor, median * factor);
    }

    /// <summary>Whether an amount is ordinary; zero is.</summary>
    public bool Holds(decimal amount) => amount <= 0 || (amount >= low && amount <= high);

    /// <summary>The amount, or the end of the ordinary range that it lies beyond; an amount near zero stays.</summary>
    public decimal Hold(decimal amount) => Math.Min(amount, high);

    private static decimal Middle(decimal[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
}
