using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A grouping with its estimated spread.</summary>
/// <param name="Name">The grouping's name.</param>
/// <param name="Variance">Estimated variance of the level effects, in squared log duration.</param>
/// <param name="AtZeroBoundary">The data are most likely if the levels do not differ at all.</param>
/// <param name="Levels">The effects in level order.</param>
public sealed record FailureTimeGroup(string Name, double Variance, bool AtZeroBoundary, ImmutableArray<FailureTimeLevel> Levels);
