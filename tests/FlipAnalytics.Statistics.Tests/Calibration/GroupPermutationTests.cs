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
}
