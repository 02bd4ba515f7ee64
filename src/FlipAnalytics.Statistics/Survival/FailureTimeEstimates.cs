using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A coefficient of log duration: exp(estimate) is the factor on every duration per unit of its column.</summary>
/// <param name="Name">The column's name.</param>
/// <param name="Estimate">On the scale of log duration.</param>
/// <param name="StandardError">From the observed information; the group variances count as known.</param>
public sealed record FailureTimeCoefficient(string Name, double Estimate, double StandardError);

/// <summary>A level's effect on log duration, shrunk towards zero.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="Effect">Zero for a level without rows, or where the group's variance is zero.</param>
/// <param name="StandardError">Standard error of effect less true effect, given the group variances.</param>
public sealed record FailureTimeLevel(string Level, double Effect, double StandardError);

/// <summary>A grouping with its estimated spread.</summary>
/// <param name="Name">The grouping's name.</param>
/// <param name="Variance">Estimated variance of the level effects, in squared log duration.</param>
/// <param name="AtZeroBoundary">The data are most likely if the levels do not differ at all.</param>
/// <param name="Levels">The effects in level order.</param>
public sealed record FailureTimeGroup(string Name, double Variance, bool AtZeroBoundary, ImmutableArray<FailureTimeLevel> Levels);

/// <summary>How a fit ended.</summary>
/// <param name="NewtonIterations">Newton steps taken for coefficients, effects and scale, over all group variances tried.</param>
/// <param name="LastStep">Length of the last Newton step in standard errors; the step is included in the estimate.</param>
/// <param name="VarianceEvaluations">How often the marginal likelihood was computed for trial group variances.</param>
/// <param name="NextVarianceStep">Length, in standard errors, of the step in the log group variances at which the search
/// stopped; 0 without groups.</param>
public sealed record FailureTimeConvergence(int NewtonIterations, double LastStep, int VarianceEvaluations, double NextVarianceStep);
