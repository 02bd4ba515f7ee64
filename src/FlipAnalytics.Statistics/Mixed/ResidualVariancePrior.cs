namespace FlipAnalytics.Statistics;

/// <summary>
/// Scaled inverse chi-squared prior of σ²: counts as <see cref="DegreesOfFreedom"/> ν₀ earlier residuals of mean square
/// <see cref="Scale"/> s₀². σ̂² = (y'Py + ν₀s₀²) / (degrees of freedom + ν₀), the mode in log σ².
/// </summary>
public sealed record ResidualVariancePrior
{
    /// <summary>States the prior.</summary>
    /// <param name="degreesOfFreedom">ν₀, above 0.</param>
    /// <param name="scale">s₀², the expected residual variance, above 0.</param>
    public ResidualVariancePrior(double degreesOfFreedom, double scale)
    {
        DegreesOfFreedom = Positive(degreesOfFreedom, nameof(degreesOfFreedom));
        Scale = Positive(scale, nameof(scale));
    }

    /// <summary>ν₀, how many residuals the prior is worth.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>s₀², the residual variance it expects, in squared units of the response.</summary>
    public double Scale { get; }

    private static double Positive(double value, string name) => double.IsFinite(value) && value > 0
        ? value
        : throw new ArgumentOutOfRangeException(name, value, "A residual variance prior needs finite values above 0.");
}
