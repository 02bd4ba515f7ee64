using MathNet.Numerics.Statistics;

namespace FlipAnalytics;

/// <summary>What is read off the nodes of a forecast, all equally likely.</summary>
internal static class EquallyLikely
{
    /// <summary>
    /// The value at rank p·n, halfway between neighbours at the steps (Hyndman and Fan's definition 5). The values may change
    /// places.
    /// </summary>
    public static double Quantile(double[] values, double p) =>
        ArrayStatistics.QuantileCustomInplace(values, p, QuantileDefinition.R5);
}
