using System.Collections.Concurrent;

namespace FlipAnalytics;

/// <summary>
/// The shape of the predictive error, calibrated on leave-one-out residuals: a symmetric quantile function that averages
/// the normal's quantiles with those of the absolute standardised leave-one-out residuals (quantile averaging, Vincent,
/// 1912, from memory). The residuals gain weight as n / (n + <see cref="NormalWeight"/>), so that an 80 % range comes to
/// hold 80 % of the time whatever the tails, while a few sales lean on the normal. Its exponential's mean is the
/// smearing factor (Duan, 1983, JASA 78, 605–610), here of the calibrated error.
/// </summary>
internal sealed class ResidualShape
{
    private const double NormalWeight = 30;

    private readonly double[] ratios;
    private readonly double weight;
    private readonly ConcurrentDictionary<(int Count, int Coordinate), double[]> atNodes = new();

    private ResidualShape(double[] ratios, double weight) => (this.ratios, this.weight) = (ratios, weight);

    /// <summary>The normal shape, for when there is nothing to calibrate on.</summary>
    public static ResidualShape Normal { get; } = new([], 0);

    /// <summary>The shape of these standardised leave-one-out residuals.</summary>
    public static ResidualShape Of(IEnumerable<double> standardised)
    {
        double[] sorted = [.. standardised.Where(double.IsFinite).Select(Math.Abs).Order()];
        if (sorted.Length < 5)
            return Normal;
        return new(sorted, sorted.Length / (sorted.Length + NormalWeight));
    }

    /// <summary>The errors, in predictive standard deviations, at the nodes of one coordinate; made once.</summary>
    public double[] At(NodeTable nodes, int coordinate) =>
        atNodes.GetOrAdd((nodes.Count, coordinate), _ => [.. nodes.Normal(coordinate).Select(At)]);

    /// <summary>The error, in predictive standard deviations, at a standard normal coordinate.</summary>
    public double At(double z)
    {
        if (weight == 0)
            return z;
        double size = Math.Abs(z);
        return Math.Sign(z) * ((1 - weight) * size + weight * EmpiricalQuantile(size));
    }

    // Plotting positions (i − ½)/n of |residual| against the half-normal; past either end, in proportion to the normal.
    private double EmpiricalQuantile(double size)
    {
        int n = ratios.Length;
        double place = (2 * Normal01(size) - 1) * n - 0.5;
        if (place <= 0)
            return size * ratios[0] / HalfNormal(0, n);
        if (place >= n - 1)
            return size * ratios[n - 1] / HalfNormal(n - 1, n);
        int below = (int)place;
        return ratios[below] + (place - below) * (ratios[below + 1] - ratios[below]);
    }

    private static double HalfNormal(int i, int n) =>
        MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (1 + (i + 0.5) / n) / 2);

    private static double Normal01(double z) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, z);
}
