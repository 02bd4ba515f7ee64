namespace FlipAnalytics.Statistics;

/// <summary>A coefficient of the log hazard.</summary>
/// <param name="Name">The name of its column.</param>
/// <param name="Estimate">b, per unit of the column.</param>
/// <param name="StandardError">√ of the diagonal of the inverse information.</param>
/// <param name="Z">Estimate over standard error.</param>
/// <param name="P">P(|Z| ≥ |z|), normal.</param>
public sealed record CoxCoefficient(string Name, double Estimate, double StandardError, double Z, double P)
{
    /// <summary>exp(b): the factor on the rate of ending per unit of the column; above 1 ends sooner.</summary>
    public double HazardRatio => Math.Exp(Estimate);

    /// <summary>exp(b ± z se), Wald's limits.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public Limits HazardRatioLimits(double level = 0.95)
    {
        Limits.RefuseLevel(level);
        double half = Tails.NormalQuantile((1 + level) / 2) * StandardError;
        return new(Math.Exp(Estimate - half), Math.Exp(Estimate + half));
    }
}
