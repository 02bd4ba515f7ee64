namespace FlipAnalytics.Statistics;

/// <summary>Why the search for the variance ratios stopped.</summary>
public enum ConvergenceReason
{
    /// <summary>Every slope is within tolerance, and no ratio at zero wants to leave it.</summary>
    SmallScore,

    /// <summary>No step lowers the criterion any further within the precision of the arithmetic.</summary>
    NoFurtherDescent,

    /// <summary>A ratio grew to its upper limit: its levels explain the response almost exactly.</summary>
    RatioAtUpperLimit,

    /// <summary>σ² sank to its lower limit: variances that are held leave nothing for it to explain.</summary>
    ResidualVarianceAtLowerLimit,

    /// <summary>The allowed number of iterations was used up.</summary>
    IterationLimit,
}
