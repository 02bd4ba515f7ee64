namespace FlipAnalytics.Statistics;

/// <summary>How a fit ended.</summary>
/// <param name="NewtonIterations">Newton steps taken for coefficients, effects and scale, over all group variances tried.</param>
/// <param name="LastStep">Length of the last Newton step in standard errors; the step is included in the estimate.</param>
/// <param name="VarianceEvaluations">How often the marginal likelihood was computed for trial group variances.</param>
/// <param name="NextVarianceStep">Length, in standard errors, of the step in the log group variances at which the search
/// stopped; 0 without groups.</param>
public sealed record FailureTimeConvergence(int NewtonIterations, double LastStep, int VarianceEvaluations, double NextVarianceStep)
{
    // Far less than any reader sees, and more than rounding makes of a search that has arrived.
    private const double FarthestStep = 1e-4, FarthestVarianceStep = 1e-3;

    /// <summary>Whether the estimates lie within 1e-4, and the log group variances within 1e-3, standard errors of where the search
    /// would have ended. Mostly a search that does not arrive throws <see cref="NoEstimateException"/>; one for group variances
    /// that finds nothing better though its slope says there is, ends with what it has and says so here.</summary>
    public bool Converged => LastStep <= FarthestStep && NextVarianceStep <= FarthestVarianceStep;
}
