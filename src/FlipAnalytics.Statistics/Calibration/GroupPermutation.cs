using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>Whether scores are higher or lower in some groups than in the rest, by reshuffling the labels within strata: the
/// scores stay, so nothing is assumed of their law, and small groups are tested as honestly as large ones (Pesarin and Salmaso,
/// 2010, Permutation Tests for Complex Data, ch. 1). Groups are compared with the rest by the largest and the least z of a reshuffle,
/// each side on its own since sums of skewed scores reach further on one; this keeps the chance of any false alarm (Westfall and Young, 1993, Resampling-Based Multiple Testing, section 2.3; both from
/// memory). The same input gives the same digits.</summary>
/// <param name="Z">A group's sum of scores less its expectation, in standard deviations over reshuffles; below 0 where its scores
/// are low; 0 where its strata hold no other group.</param>
/// <param name="Variance">Of a group's sum over reshuffles.</param>
/// <param name="AdjustedP">The chance that some group would be at least as far out if labels were chance.</param>
/// <param name="Largest">The largest z of each reshuffle, ascending.</param>
/// <param name="Least">The least z of each reshuffle, ascending.</param>
public sealed record GroupPermutation(
    ImmutableArray<double> Z, ImmutableArray<double> Variance, ImmutableArray<double> AdjustedP,
    ImmutableArray<double> Largest, ImmutableArray<double> Least)
{
    private const ulong Stream = 0x6C6162656C73;

    // Sums of the same scores in another order differ by rounding.
    private const double SameZ = 1e-9;

    // A chance that nobody will ever see come true.
    private const double Never = 1e-12;

    /// <summary>The chance of any group so far out: the least of <see cref="AdjustedP"/>, 1 without groups.</summary>
    public double P => AdjustedP.DefaultIfEmpty(1).Min();

    /// <summary>How high a group's z must be for a chance of a false alarm of at most alpha on both sides together.</summary>
    /// <param name="alpha">Between 0 and 1.</param>
    public double CriticalZ(double alpha)
    {
        Limits.RefuseLevel(1 - alpha);
        return Largest.IsEmpty ? double.PositiveInfinity
            : Largest[Math.Min(Largest.Length - 1, (int)Math.Ceiling((1 - alpha / 2) * Largest.Length))];
    }

    /// <summary>Tests each group against the rest.</summary>
    /// <param name="scores">A score an observation.</param>
    /// <param name="group">Its group, 0 to groups − 1.</param>
    /// <param name="stratum">Its stratum; labels stay within.</param>
    /// <param name="groups">How many groups there are.</param>
    /// <param name="shuffles">Reshuffles, 1 or more.</param>
    /// <exception cref="ArgumentException">Lists of different lengths, a score that is not finite, or a group that is not among them.</exception>
    public static GroupPermutation Of(
        ReadOnlySpan<double> scores, ReadOnlySpan<int> group, ReadOnlySpan<int> stratum, int groups, int shuffles)
    {
        var (centred, labels, variance, starts) = Centred(scores, group, stratum, groups, shuffles);
        double[] z = Standardised(centred, labels, variance);
        int[] atLeast = new int[groups], atMost = new int[groups];
        double[] largest = new double[shuffles], least = new double[shuffles];
        var random = new RandomNumbers(Stream);
        for (int b = 0; b < shuffles; b++)
        {
            Shuffle(labels, starts, random);
            double[] shuffled = Standardised(centred, labels, variance);
            largest[b] = shuffled.Max();
            least[b] = shuffled.Min();
            for (int g = 0; g < groups; g++)
            {
                atLeast[g] += largest[b] >= z[g] - SameZ ? 1 : 0;
                atMost[g] += least[b] <= z[g] + SameZ ? 1 : 0;
            }
        }
        Array.Sort(least);
        Array.Sort(largest);
        // The labels as they are count as one more reshuffle, so that p is never 0 and the test keeps its level.
        return new([.. z], [.. variance],
            [.. atLeast.Zip(atMost, (above, below) => Math.Min(1, 2 * (Math.Min(above, below) + 1.0) / (shuffles + 1)))],
            [.. largest], [.. least]);
    }

    /// <summary>
    /// The chance that two groups would be at least as far apart if labels were chance: <see cref="P"/> of the same reshuffles, of
    /// which those are left out that cannot change it.
    /// </summary>
    /// <param name="scores">A score an observation.</param>
    /// <param name="group">Its group, 0 or 1.</param>
    /// <param name="stratum">Its stratum; labels stay within.</param>
    /// <param name="shuffles">Reshuffles, 1 or more.</param>
    /// <param name="enough">Of a chance above this one, only that it is above it is told.</param>
    /// <exception cref="ArgumentException">Lists of different lengths, a score that is not finite, or another group.</exception>
    public static double ChanceOfTwo(
        ReadOnlySpan<double> scores, ReadOnlySpan<int> group, ReadOnlySpan<int> stratum, int shuffles, double enough)
    {
        var (centred, labels, variance, starts) = Centred(scores, group, stratum, 2, shuffles);
        double z = Math.Abs(Standardised(centred, labels, variance)[0]);
        int atLeast = 0;
        if (ChanceOfAny(z, centred, labels, variance[0], starts) * shuffles > Never)
        {
            var random = new RandomNumbers(Stream);
            for (int b = 0; b < shuffles && Chance() <= enough; b++)
            {
                Shuffle(labels, starts, random);
                atLeast += Math.Abs(Standardised(centred, labels, variance)[0]) >= z - SameZ ? 1 : 0;
            }
        }

        return Chance();

        double Chance() => Math.Min(1, 2 * (atLeast + 1.0) / (shuffles + 1));
    }

    /// <summary>
    /// More than the chance that one reshuffle is as far out, whatever the scores: Bernstein's inequality, which holds without
    /// replacement too (Hoeffding, 1963, JASA 58, 13–30, theorem 4; from memory), on the smaller group of each stratum.
    /// </summary>
    private static double ChanceOfAny(double z, double[] centred, int[] labels, double variance, int[] starts)
    {
        double withReplacement = 0, furthest = 0;
        for (int s = 0; s + 1 < starts.Length; s++)
        {
            int n = starts[s + 1] - starts[s], first = 0;
            double squares = 0;
            for (int i = starts[s]; i < starts[s + 1]; i++)
            {
                first += labels[i] == 0 ? 1 : 0;
                squares += centred[i] * centred[i];
                furthest = Math.Max(furthest, Math.Abs(centred[i]));
            }

            withReplacement += Math.Min(first, n - first) * squares / n;
        }

        double distance = (z - SameZ) * Math.Sqrt(variance);
        return distance <= 0 ? 1 : 2 * Math.Exp(-distance * distance / 2 / (withReplacement + furthest * distance / 3));
    }

    private static (double[] Centred, int[] Labels, double[] Variance, int[] Starts) Centred(
        ReadOnlySpan<double> scores, ReadOnlySpan<int> group, ReadOnlySpan<int> stratum, int groups, int shuffles)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(shuffles, 1);
        if (group.Length != scores.Length || stratum.Length != scores.Length)
            throw new ArgumentException(
                $"There are {scores.Length} scores, {group.Length} groups and {stratum.Length} strata; give one of each an observation.");
        GivenNumbers.RefuseNotFinite("Score", scores, nameof(scores));
        foreach (int g in group)
        {
            if (g < 0 || g >= groups)
                throw new ArgumentException($"Group {g} is not between 0 and {groups - 1}.", nameof(group));
        }

        int[] order = Order(stratum, out int[] starts);
        double[] centred = new double[scores.Length];
        int[] labels = new int[scores.Length];
        double[] variance = new double[groups];
        for (int s = 0; s + 1 < starts.Length; s++)
            Centre(order.AsSpan(starts[s]..starts[s + 1]), starts[s], scores, group, centred, labels, variance);
        return (centred, labels, variance, starts);
    }

    private static int[] Order(ReadOnlySpan<int> stratum, out int[] starts)
    {
        int[] keys = stratum.ToArray();
        int[] order = [.. Enumerable.Range(0, keys.Length).OrderBy(i => keys[i])];
        starts = [.. Enumerable.Range(0, order.Length).Where(i => i == 0 || keys[order[i]] != keys[order[i - 1]]), order.Length];
        return order;
    }

    /// <summary>In a stratum of n with scores r, the sum over a group of m of them has over reshuffles the variance
    /// m (n − m) / (n (n − 1)) Σ (r − r̄)².</summary>
    private static void Centre(
        ReadOnlySpan<int> members, int start, ReadOnlySpan<double> scores, ReadOnlySpan<int> group,
        double[] centred, int[] labels, double[] variance)
    {
        double mean = 0, squares = 0;
        foreach (int i in members)
            mean += scores[i] / members.Length;
        int[] counts = new int[variance.Length];
        for (int k = 0; k < members.Length; k++)
        {
            centred[start + k] = scores[members[k]] - mean;
            labels[start + k] = group[members[k]];
            squares += centred[start + k] * centred[start + k];
            counts[labels[start + k]]++;
        }
        double n = members.Length;
        for (int g = 0; g < variance.Length && n > 1; g++)
            variance[g] += counts[g] * (n - counts[g]) / (n * (n - 1)) * squares;
    }

    private static double[] Standardised(double[] centred, int[] labels, double[] variance)
    {
        double[] sums = new double[variance.Length];
        for (int i = 0; i < centred.Length; i++)
            sums[labels[i]] += centred[i];
        for (int g = 0; g < sums.Length; g++)
            sums[g] = variance[g] > 1e-18 ? sums[g] / Math.Sqrt(variance[g]) : 0;
        return sums;
    }

    private static void Shuffle(int[] labels, int[] starts, RandomNumbers random)
    {
        for (int s = 0; s + 1 < starts.Length; s++)
            Shuffle(labels.AsSpan(starts[s]..starts[s + 1]), random);
    }

    private static void Shuffle(Span<int> labels, RandomNumbers random)
    {
        for (int i = labels.Length - 1; i > 0; i--)
        {
            int j = random.NextIndex(i + 1);
            (labels[i], labels[j]) = (labels[j], labels[i]);
        }
    }
}
