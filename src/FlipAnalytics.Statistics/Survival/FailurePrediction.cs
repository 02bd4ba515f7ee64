namespace FlipAnalytics.Statistics;

/// <summary>Location of log duration for one new row, with what is needed to draw location and log scale together:
/// they are taken as jointly normal with these variances and covariance.</summary>
/// <param name="Location">x'β plus the effects of known levels.</param>
/// <param name="VarianceOfLocation">Of the estimate, unseen levels included; not the spread of durations.</param>
/// <param name="LogScale">Estimate of log σ.</param>
/// <param name="VarianceOfLogScale">Of its estimate; 0 where the scale is held.</param>
/// <param name="Covariance">Of location and log scale.</param>
public readonly record struct FailurePrediction(
    double Location, double VarianceOfLocation, double LogScale, double VarianceOfLogScale, double Covariance)
{
    /// <summary>Square root of <see cref="VarianceOfLocation"/>.</summary>
    public double StandardError => Math.Sqrt(VarianceOfLocation);
}
