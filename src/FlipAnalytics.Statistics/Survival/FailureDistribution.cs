namespace FlipAnalytics.Statistics;

/// <summary>The law of a duration T in log T = location + scale · e, named after T as textbooks do
/// (Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data, section 2.2).</summary>
public enum FailureDistribution
{
    /// <summary>e is the smallest extreme value: P(e &gt; z) = exp(−exp(z)).</summary>
    Weibull,

    /// <summary>e is standard normal.</summary>
    Lognormal,

    /// <summary>e is standard logistic: P(e &gt; z) = 1 / (1 + exp(z)).</summary>
    LogLogistic,

    /// <summary>Weibull with the scale held at 1: a hazard that does not change with time.</summary>
    Exponential,
}
