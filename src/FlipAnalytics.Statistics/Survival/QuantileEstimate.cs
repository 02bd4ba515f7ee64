namespace FlipAnalytics.Statistics;

/// <summary>A quantile of duration with its standard error by the delta method.</summary>
/// <param name="Value">In the unit of the durations.</param>
/// <param name="StandardError">In the unit of the durations.</param>
public readonly record struct QuantileEstimate(double Value, double StandardError);
