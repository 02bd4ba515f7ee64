namespace FlipAnalytics.Statistics;

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
