namespace FlipAnalytics.Statistics;

/// <summary>A test whose statistic is about χ² when its hypothesis holds.</summary>
/// <param name="Statistic">0 or more.</param>
/// <param name="DegreesOfFreedom">Coefficients tested.</param>
/// <param name="P">The chance of a statistic at least as large.</param>
public sealed record ChiSquaredTest(double Statistic, int DegreesOfFreedom, double P)
{
    internal static ChiSquaredTest Of(double statistic, int degreesOfFreedom) =>
        new(statistic, degreesOfFreedom, Tails.UpperChiSquared(statistic, degreesOfFreedom));
}
