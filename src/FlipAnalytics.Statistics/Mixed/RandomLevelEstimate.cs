namespace FlipAnalytics.Statistics;

/// <summary>The predicted effect of one level of a random term.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="Effect">Best linear unbiased prediction û, in units of the response: pulled towards 0.</param>
/// <param name="ConditionalVariance">Variance of u given the data, as if the coefficients were known.</param>
/// <param name="PredictionErrorVariance">Variance of û − u, with the uncertainty of the coefficients.</param>
public sealed record RandomLevelEstimate(
    string Level, double Effect, double ConditionalVariance, double PredictionErrorVariance);
