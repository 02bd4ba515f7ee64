namespace FlipAnalytics.Statistics;

/// <summary>log P(lower &lt; e ≤ upper) with its derivatives in both limits.</summary>
internal readonly record struct IntervalTerm(
    double Value, double Lower, double Upper, double LowerLower, double LowerUpper, double UpperUpper)
{
    /// <summary>From log P, the densities at the limits divided by P, and the densities' logarithmic slopes.</summary>
    internal static IntervalTerm From(double value, double lowerRatio, double upperRatio, double lowerSlope, double upperSlope) =>
        new(value, -lowerRatio, upperRatio,
            -lowerRatio * (lowerSlope + lowerRatio), lowerRatio * upperRatio, upperRatio * (upperSlope - upperRatio));
}
