namespace FlipAnalytics.Statistics;

/// <summary>A coefficient of log duration: exp(estimate) is the factor on every duration per unit of its column.</summary>
/// <param name="Name">The column's name.</param>
/// <param name="Estimate">On the scale of log duration.</param>
/// <param name="StandardError">From the observed information; the group variances count as known.</param>
public sealed record FailureTimeCoefficient(string Name, double Estimate, double StandardError);
