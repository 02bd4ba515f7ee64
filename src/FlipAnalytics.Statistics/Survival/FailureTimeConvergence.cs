namespace FlipAnalytics.Statistics;

/// <summary>How a fit ended.</summary>
/// <param name="NewtonIterations">Newton steps taken for coefficients, effects and scale, over all group variances tried.</param>
/// <param name="LastStep">Length of the last Newton step in standard errors; the step is included in the estimate.</param>
/// <param name="VarianceEvaluations">How often the marginal likelihood was computed for trial group variances.</param>
/// <param name="NextVarianceStep">Length, in standard errors, of the step in the log group variances at which the search
/// stopped; 0 without groups.</param>
public sealed record FailureTimeConvergence(int NewtonIterations, double LastStep, int VarianceEvaluations, double NextVarianceStep);
