namespace FlipAnalytics.Statistics;

/// <summary>A fixed coefficient β of a mixed model.</summary>
/// <param name="Name">Its column's name.</param>
/// <param name="Estimate">Generalised least-squares estimate, in units of the response per unit of the column.</param>
/// <param name="StandardError">√ of its variance given the estimated variance ratios.</param>
public sealed record MixedCoefficient(string Name, double Estimate, double StandardError);
