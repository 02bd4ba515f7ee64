namespace FlipAnalytics.Statistics;

/// <summary>
/// A fitted row predicted from all the others with the variance ratios held. All values are NaN where the other rows
/// cannot predict it, because it alone determines a coefficient.
/// </summary>
/// <param name="Residual">Response minus <paramref name="Mean"/>.</param>
/// <param name="Mean">What the other rows predict.</param>
/// <param name="VarianceOfMean">Variance of the error in that mean.</param>
/// <param name="ResidualVariance">σ² estimated without the row; NaN if no degree of freedom is left.</param>
/// <param name="StandardizedResidual">
/// Residual over √(variance of the mean + residual variance / the row's weight).
/// </param>
public readonly record struct LeaveOneOutPrediction(
    double Residual, double Mean, double VarianceOfMean, double ResidualVariance, double StandardizedResidual)
{
    /// <summary>Whether the other rows determine a prediction.</summary>
    public bool IsDefined => !double.IsNaN(Mean);
}
