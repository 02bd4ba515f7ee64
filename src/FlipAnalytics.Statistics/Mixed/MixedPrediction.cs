namespace FlipAnalytics.Statistics;

/// <summary>What a mixed model expects of a new row.</summary>
/// <param name="Mean">x'β̂ + z'û, in units of the response.</param>
/// <param name="VarianceOfMean">
/// Variance of the error in that mean: coefficients, level effects, and the whole component of an unseen level.
/// </param>
/// <param name="ResidualVariance">σ², what one observation of weight 1 adds.</param>
public sealed record MixedPrediction(double Mean, double VarianceOfMean, double ResidualVariance)
{
    /// <summary>Variance of a new observation of weight 1.</summary>
    public double VarianceOfObservation => VarianceOfMean + ResidualVariance;
}
