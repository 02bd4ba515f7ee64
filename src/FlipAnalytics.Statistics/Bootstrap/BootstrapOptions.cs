using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>Choices for <see cref="Bootstrap"/>.</summary>
public sealed record BootstrapOptions
{
    /// <summary>How often the rows are drawn anew; 1 or more, 2000 by default, enough for 95 % limits.</summary>
    public int Replicates
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(
            nameof(Replicates), value, "At least one replicate is needed; 2000 is usual for limits.");
    } = 2000;

    /// <summary>Chooses the draws; the same seed gives the same answer everywhere.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The cluster of each row, by any number: clusters are drawn whole, for rows that belong together and
    /// resemble each other. Empty when every row stands for itself.</summary>
    public ImmutableArray<int> Clusters { get; init; } = [];

    /// <summary>Threads at most; 1 or more, or −1 for as many as the computer has. The answer does not depend on it.</summary>
    public int DegreeOfParallelism
    {
        get;
        init => field = value is -1 or >= 1 ? value : throw new ArgumentOutOfRangeException(
            nameof(DegreeOfParallelism), value, "Give 1 thread or more, or -1 for as many as the computer has.");
    } = -1;
}
