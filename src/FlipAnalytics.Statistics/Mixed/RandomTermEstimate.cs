using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The variance and level effects of one random term.</summary>
/// <param name="Name">The term's name.</param>
/// <param name="Variance">σ²γ: variance of a level, or of a walk per unit of position.</param>
/// <param name="VarianceRatio">γ = variance / residual variance, 0 or more.</param>
/// <param name="AtZeroBoundary">Whether the variance is exactly 0: the levels do not differ more than chance.</param>
/// <param name="Levels">One entry for each level, in the term's order.</param>
public sealed record RandomTermEstimate(
    string Name,
    double Variance,
    double VarianceRatio,
    bool AtZeroBoundary,
    ImmutableArray<RandomLevelEstimate> Levels);
