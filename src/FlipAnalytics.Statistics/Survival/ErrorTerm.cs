namespace FlipAnalytics.Statistics;

/// <summary>A logarithm of density or probability as a function of the standardised error z, with its first two
/// derivatives in z.</summary>
internal readonly record struct ErrorTerm(double Value, double First, double Second);

/// <summary>log P(lower &lt; e ≤ upper) with its derivatives in both limits.</summary>
internal readonly record struct IntervalTerm(
    double Value, double Lower, double Upper, double LowerLower, double LowerUpper, double UpperUpper)
{
    /// <summary>From log P, the densities at the limits divided by P, and the densities' logarithmic slopes.</summary>
    internal static IntervalTerm From(double value, double lowerRatio, double upperRatio, double lowerSlope, double upperSlope) =>
        new(value, -lowerRatio, upperRatio,
            -lowerRatio * (lowerSlope + lowerRatio), lowerRatio * upperRatio, upperRatio * (upperSlope - upperRatio));
}

/// <summary>The law of the standardised error e.</summary>
internal interface IErrorDistribution
{
    /// <summary>log f(z).</summary>
    static abstract ErrorTerm LogDensity(double z);

    /// <summary>log P(e &gt; z).</summary>
    static abstract ErrorTerm LogSurvival(double z);

    /// <summary>log P(e ≤ z).</summary>
    static abstract ErrorTerm LogDistribution(double z);

    /// <summary>log P(lower &lt; e ≤ upper).</summary>
    static abstract IntervalTerm LogBetween(double lower, double upper);

    /// <summary>The z with P(e ≤ z) = p.</summary>
    static abstract double Quantile(double p);
}
