namespace FlipAnalytics.Statistics;

/// <summary>
/// Centre and spread that a few wild values cannot move: the median and the median absolute deviation from it (Hampel,
/// 1974, JASA 69, 383–393, from memory).
/// </summary>
public static class MedianScale
{
    /// <summary>1/Φ⁻¹(¾): makes the median absolute deviation of normal values their standard deviation.</summary>
    private const double OfNormal = 1.4826022185056018;

    /// <summary>The median; NaN of no values.</summary>
    /// <param name="values">Values in any order.</param>
    public static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return sorted.Length == 0 ? double.NaN : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    /// <summary>Median absolute deviation from a centre, on the scale of a normal's standard deviation; NaN of no values.</summary>
    /// <param name="values">Values in any order.</param>
    /// <param name="centre">Where deviations are taken from.</param>
    public static double Deviation(IEnumerable<double> values, double centre) =>
        OfNormal * Median(values.Select(value => Math.Abs(value - centre)));

    /// <summary>
    /// That deviation drawn to what is expected where values are few: √((n·s² + k·e²)/(n + k)). The expected one of no
    /// values.
    /// </summary>
    /// <param name="values">Values in any order.</param>
    /// <param name="centre">Where deviations are taken from.</param>
    /// <param name="expected">The expected spread e.</param>
    /// <param name="expectedCounts">How many values the expectation is worth, k.</param>
    public static double Deviation(IReadOnlyCollection<double> values, double centre, double expected, double expectedCounts)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count == 0)
            return expected;
        double own = Deviation(values, centre);
        return Math.Sqrt(
            ((values.Count * own * own) + (expectedCounts * expected * expected)) / (values.Count + expectedCounts));
    }
}
