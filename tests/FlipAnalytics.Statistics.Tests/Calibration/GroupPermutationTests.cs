using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

public sealed class GroupPermutationTests
{
    /// <summary>Of the 20 ways to choose 3 of 6 scores 1 puts the three highest together and 1 the three lowest; twice the
    /// smaller tail, 1/20, is 0.1.</summary>
    [Fact]
    public void Six_scores_in_two_groups_by_hand()
    {
        var test = GroupPermutation.Of([1, 2, 3, 4, 5, 6], [0, 0, 0, 1, 1, 1], new int[6], 2, 20_000);
        // Both groups count, so the chance that either is so high is that of both splits: 2 · 2/20.
        Assert.Equal(0.2, test.AdjustedP[0], 0.01);
        // Sum 6 − 10.5 over √(3 · 3 / (6 · 5) · 17.5).
        Assert.Equal(-4.5 / Math.Sqrt(5.25), test.Z[0], 1e-12);
        Assert.Equal(-test.Z[0], test.Z[1], 1e-12);
    }

    [Fact]
    public void A_difference_between_strata_is_no_difference_between_groups()
    {
        var test = GroupPermutation.Of([1, 2, 101, 102], [0, 0, 1, 1], [0, 0, 1, 1], 2, 100);
        Assert.All(test.Z, z => Assert.Equal(0, z));
        Assert.Equal(1, test.P);
    }

    [Fact]
    public void The_same_scores_give_the_same_digits() => Assert.Equal<double>(
        GroupPermutation.Of([3, 1, 4, 1, 5], [0, 1, 0, 1, 2], new int[5], 3, 500).Largest.AsEnumerable(),
        GroupPermutation.Of([3, 1, 4, 1, 5], [0, 1, 0, 1, 2], new int[5], 3, 500).Largest.AsEnumerable());

    [Fact]
    public void A_group_that_is_not_there_is_refused() =>
        Assert.Throws<ArgumentException>(() => GroupPermutation.Of([1, 2], [0, 2], [0, 0], 2, 10));

    /// <summary>Groups from not to far apart, of any size and in several strata: what is left out of the reshuffles changes nothing.</summary>
    [Fact]
    public void Two_groups_have_the_chance_of_all_reshuffles_however_few_were_made() => Gen.Select(
        Gen.Double[-1, 1].Array[4, 60], Gen.Double[0, 6], Gen.Int[0, int.MaxValue]).Sample(
        (scores, apart, seed) =>
        {
            int[] group = [.. scores.Select((_, i) => (seed >> (i % 17)) & 1)], stratum = [.. scores.Select((_, i) => (seed >> (i % 13)) & 3)];
            double[] moved = [.. scores.Select((score, i) => score + apart * group[i])];
            double all = GroupPermutation.Of(moved, group, stratum, 2, 400).P;
            Assert.Equal(all, GroupPermutation.ChanceOfTwo(moved, group, stratum, 400, 1));
            double known = GroupPermutation.ChanceOfTwo(moved, group, stratum, 400, 0.1);
            Assert.Equal(all > 0.1 ? double.PositiveInfinity : all, known > 0.1 ? double.PositiveInfinity : known);
        },
        iter: 300);

    /// <summary>2,000 scores of ±1 in two groups of which each holds one sign: no reshuffle in the life of the world is as far apart.</summary>
    [Fact]
    public void Groups_that_are_worlds_apart_need_no_reshuffle()
    {
        double[] scores = [.. Enumerable.Range(0, 2000).Select(i => i % 2 == 0 ? 1.0 : -1.0)];
        int[] group = [.. Enumerable.Range(0, 2000).Select(i => i % 2)], stratum = new int[2000];
        Assert.Equal(2 / 1_000_000_001.0, GroupPermutation.ChanceOfTwo(scores, group, stratum, 1_000_000_000, 0.1), 1e-18);
    }
}
