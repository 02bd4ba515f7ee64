namespace FlipAnalytics.Statistics;

/// <summary>How the search for the variance ratios ended.</summary>
/// <param name="Iterations">Newton steps over all starts.</param>
/// <param name="MaximumAbsoluteScore">
/// Largest slope of the −2 log-likelihood (with priors) in a log variance ratio that is free and not zero.
/// </param>
/// <param name="Reason">Why it stopped.</param>
public sealed record MixedModelConvergence(int Iterations, double MaximumAbsoluteScore, ConvergenceReason Reason)
{
    /// <summary>Whether the result is a stationary point (up to rounding).</summary>
    public bool Converged => Reason == ConvergenceReason.SmallScore
        || (Reason == ConvergenceReason.NoFurtherDescent && MaximumAbsoluteScore < 1e-4);

    /// <summary>Whether it arrived, be it at the end of what a ratio or σ² may be, as with variances held far from their best.
    /// </summary>
    internal bool Arrived =>
        Converged || Reason is ConvergenceReason.RatioAtUpperLimit or ConvergenceReason.ResidualVarianceAtLowerLimit;
}
