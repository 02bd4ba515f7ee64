namespace FlipAnalytics.Statistics;

/// <summary>How well the data know one standard deviation of a mixed model.</summary>
/// <param name="Name">The random term, or <see cref="ProfileLikelihood.Residual"/>.</param>
/// <param name="Estimate">Estimated standard deviation, in units of the response (of a walk per √ unit of position).</param>
/// <param name="Limits">Profile-likelihood limits: 0 at the low end where the data allow no variance, infinite at the high
/// end where they set no upper bound.</param>
public sealed record StandardDeviationLimits(string Name, double Estimate, Limits Limits)
{
    /// <summary>Whether the fit, and every fit with the standard deviation held on the way to these limits, arrived at its minimum;
    /// if not, they may lie elsewhere.</summary>
    public required bool Converged { get; init; }
}
