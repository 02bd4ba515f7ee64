namespace FlipAnalytics.Statistics;

/// <summary>
/// The ends that values are drawn in to, so that a mean of them follows the many and not a wild one: the median less and
/// plus c robust spreads (Winsor's idea as told by Tukey, 1962, Annals of Mathematical Statistics 33, 1–67, from memory).
/// </summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Winsorised(double Low, double High)
{
    // Fewer values tell nothing of which of them is wild.
    private const int FewestToJudge = 5;

    /// <summary>The ends for these values, <see cref="RowCounts.Ordinary"/> spreads out; none where there are fewer than 5.</summary>
    /// <param name="values">Values in any order.</param>
    /// <param name="expected">The expected spread.</param>
    /// <param name="expectedCounts">How many values that expectation is worth.</param>
    public static Winsorised Ends(IReadOnlyCollection<double> values, double expected, double expectedCounts)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count < FewestToJudge)
            return new(double.NegativeInfinity, double.PositiveInfinity);
        double middle = MedianScale.Median(values);
        double reach = RowCounts.Ordinary * MedianScale.Deviation(values, middle, expected, expectedCounts);
        return new(middle - reach, middle + reach);
    }

    /// <summary>Whether a value lies between the ends.</summary>
    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>The value, or the end that it lies beyond.</summary>
    public double Hold(double value) => Math.Clamp(value, Low, High);
}
