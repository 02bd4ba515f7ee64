using System.Collections.Concurrent;

namespace FlipAnalytics;

/// <summary>
/// The noise of log sale prices, by its quantiles: normal, or Student's t with 4 degrees of freedom scaled to the same
/// standard deviation and held within <see cref="Limit"/> standard deviations. Without the limit the mean sale price
/// would be infinite.
/// </summary>
internal static class DemoNoise
{
    /// <summary>Where the heavy tails end, in standard deviations.</summary>
    public const double Limit = 6;

    // Midpoints in the probability; the mean of exp(0.2 x) is then right to 1e-4 and better.
    private const int Nodes = 2000;

    // A market asks for the same mean with every offer.
    private static readonly ConcurrentDictionary<double, double> HeavyMeans = new();

    /// <summary>The quantile of noise with standard deviation 1.</summary>
    public static double Quantile(double probability, bool heavyTails) => heavyTails
        ? Math.Clamp(StudentWithFourDegrees(probability) / Math.Sqrt(2), -Limit, Limit)
        : MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, probability);

    /// <summary>The mean of exp(noise) for noise of the given standard deviation.</summary>
    public static double MeanOfExponential(double standardDeviation, bool heavyTails)
    {
        if (!heavyTails)
            return Math.Exp(standardDeviation * standardDeviation / 2);
        return HeavyMeans.GetOrAdd(standardDeviation, static spread =>
        {
            double sum = 0;
            for (int node = 0; node < Nodes; node++)
                sum += Math.Exp(spread * Quantile((node + 0.5) / Nodes, heavyTails: true));
            return sum / Nodes;
        });
    }

    /// <summary>
    /// Quantile of Student's t with 4 degrees of freedom in closed form: Shaw (2006), "Sampling Student's T
    /// distribution", Journal of Computational Finance 9(4).
    /// </summary>
    private static double StudentWithFourDegrees(double probability)
    {
        double root = Math.Sqrt(4 * probability * (1 - probability));
        double q = Math.Cos(Math.Acos(Math.Min(root, 1)) / 3) / root;
        return Math.Sign(probability - 0.5) * 2 * Math.Sqrt(Math.Max(q - 1, 0));
    }
}
