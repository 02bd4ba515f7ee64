using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>Choices for an accelerated failure time model. The defaults give plain maximum likelihood.</summary>
public sealed record AcceleratedFailureOptions
{
    /// <summary>Law of the duration; Weibull unless said otherwise.</summary>
    public FailureDistribution Distribution { get; init; } = FailureDistribution.Weibull;

    /// <summary>Prior of each coefficient in column order, null for none; empty for none at all.</summary>
    public ImmutableArray<NormalPrior?> CoefficientPriors { get; init; } = [];

    /// <summary>Prior of the logarithm of the scale; null for none. Not used by the exponential distribution.</summary>
    public NormalPrior? LogScalePrior { get; init; }

    /// <summary>A scale that is hardly believed, and less and less below it, so that durations which are all alike have an
    /// estimate: the prior's further factor exp(−(floor/σ)⁸), which does not show from twice the floor on. Null for none, else
    /// positive. Not used by the exponential distribution.</summary>
    public double? ScaleFloor { get; init; }

    /// <summary>Prior of the logarithm of each group's variance in group order, null for none; empty for none at all.
    /// With one the estimate is the mode on the log scale and never exactly zero
    /// (Chung and others, 2013, Psychometrika 78, 685–709, on why to avoid the boundary).</summary>
    public ImmutableArray<NormalPrior?> LogGroupVariancePriors { get; init; } = [];

    /// <summary>Refuses lists of priors that do not match the columns or groups.</summary>
    internal void Validate(int coefficientCount, int groupCount)
    {
        CheckLength(CoefficientPriors, coefficientCount, nameof(CoefficientPriors), "coefficient");
        CheckLength(LogGroupVariancePriors, groupCount, nameof(LogGroupVariancePriors), "group");
        if (ScaleFloor is { } floor && !(floor > 0 && double.IsFinite(floor)))
        {
            throw new ArgumentException($"A scale floor of {floor}: it must be positive and finite; leave it out for none.");
        }

        if (!Enum.IsDefined(Distribution))
        {
            throw new ArgumentException($"{Distribution} is not a known failure distribution.");
        }
    }

    /// <summary>The prior at this place, null where the list is empty.</summary>
    internal static NormalPrior? At(ImmutableArray<NormalPrior?> priors, int index) =>
        priors.IsDefaultOrEmpty ? null : priors[index];

    private static void CheckLength(ImmutableArray<NormalPrior?> priors, int count, string name, string of)
    {
        if (!priors.IsDefaultOrEmpty && priors.Length != count)
        {
            throw new ArgumentException(
                $"{name} has {priors.Length} entries but there are {count}: give one a {of} (null for none), or leave it empty.");
        }
    }
}
