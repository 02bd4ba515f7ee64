namespace FlipAnalytics.Statistics;

/// <summary>
/// log γ ~ N(<see cref="LogMean"/>, <see cref="LogStandardDeviation"/>²) for a variance ratio γ = component / residual
/// variance. It keeps γ off zero and lets thin data lean on what is usual.
/// </summary>
public sealed record VarianceRatioPrior
{
    /// <summary>States the prior.</summary>
    /// <param name="logMean">Mean of log γ, finite.</param>
    /// <param name="logStandardDeviation">Standard deviation of log γ, above 0.</param>
    public VarianceRatioPrior(double logMean, double logStandardDeviation)
    {
        LogMean = double.IsFinite(logMean) ? logMean : throw new ArgumentOutOfRangeException(
            nameof(logMean), logMean, "The mean of the log variance ratio must be finite.");
        LogStandardDeviation = double.IsFinite(logStandardDeviation) && logStandardDeviation > 0
            ? logStandardDeviation
            : throw new ArgumentOutOfRangeException(
                nameof(logStandardDeviation), logStandardDeviation,
                "The standard deviation of the log variance ratio must be finite and above 0.");
    }

    /// <summary>Mean of log γ.</summary>
    public double LogMean { get; }

    /// <summary>Standard deviation of log γ.</summary>
    public double LogStandardDeviation { get; }
}
