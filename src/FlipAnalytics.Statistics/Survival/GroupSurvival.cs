using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The survival curve of one group of spells.</summary>
/// <param name="Group">The group's name.</param>
/// <param name="Curve">The curve of its spells alone.</param>
public sealed record GroupSurvival(string Group, KaplanMeier Curve)
{
    /// <summary>A curve a group, in ordinal order of their names. A group whose spells all weigh 0 has none.</summary>
    /// <param name="times">The spells.</param>
    /// <param name="groups">The group of each spell.</param>
    /// <param name="weights">As <see cref="KaplanMeier.Estimate(IReadOnlyList{SurvivalTime}, ReadOnlySpan{double}, double)"/>;
    /// empty counts every spell once.</param>
    /// <param name="level">Of the limits, between 0 and 1.</param>
    /// <exception cref="ArgumentException">Lists of different lengths, no spells, one that does not stop after it starts, a weight
    /// that is negative or not finite, or weights of 0 only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static ImmutableArray<GroupSurvival> Of(
        IReadOnlyList<SurvivalTime> times,
        IReadOnlyList<string> groups,
        ReadOnlySpan<double> weights = default,
        double level = 0.95)
    {
        SurvivalTime.Refuse(times);
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count != times.Count)
            throw new ArgumentException(
                $"There are {times.Count} spells and {groups.Count} groups; each spell needs one.", nameof(groups));
        double[] counts = weights.IsEmpty ? [.. Enumerable.Repeat(1.0, times.Count)] : weights.ToArray();
        CaseWeights.Refuse(times, counts);
        return
        [
            .. Enumerable.Range(0, times.Count)
                .Where(i => counts[i] > 0)
                .GroupBy(i => groups[i], StringComparer.Ordinal)
                .OrderBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => new GroupSurvival(group.Key, KaplanMeier.Estimate(
                    [.. group.Select(i => times[i])], [.. group.Select(i => counts[i])], level))),
        ];
    }
}
