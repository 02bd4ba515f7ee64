namespace FlipAnalytics.Statistics;

/// <summary>Where values fell within their forecasts; uniform on 0..1 when the forecasts are right: Dawid (1984), J. R.
/// Stat. Soc. A 147, 278–292.</summary>
public static class ProbabilityIntegralTransform
{
    /// <summary>F(y) of a normal forecast.</summary>
    /// <exception cref="ArgumentException">A mean or value that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is not finite and above 0.</exception>
    public static double Normal(double mean, double standardDeviation, double value) =>
        Tails.Normal(ScoringRules.Standardised(mean, standardDeviation, value));

    /// <summary>Kolmogorov's distance of the values to the uniform distribution, 0 to 1: the largest gap between the share
    /// of values up to u and u.</summary>
    /// <exception cref="ArgumentException">No values, or one outside 0..1.</exception>
    public static double DistanceToUniform(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
            throw new ArgumentException("A distance needs at least one value.", nameof(values));
        for (int i = 0; i < values.Length; i++)
        {
            if (!(values[i] is >= 0 and <= 1))
                throw new ArgumentException($"Value {i} (counting from 0) is {values[i]}; it must lie from 0 to 1.", nameof(values));
        }
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        double n = sorted.Length;
        return sorted.Select((u, i) => Math.Max((i + 1) / n - u, u - i / n)).Max();
    }
}
