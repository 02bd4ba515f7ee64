using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Many amounts shared by the same weights come out as each of them alone.</summary>
public class SharesByWeightTests
{
    [Fact]
    public void Every_amount_is_shared_as_it_would_be_alone() => Gen.Select(
        Gen.Int[0, 4_000].Select(n => n / 100m).Array[1, 40], Gen.Int[-300, 20_000].Array[1, 10]).Sample(
        (weights, amounts) =>
        {
            SharesByWeight shares = new(weights, 2);
            foreach (int amount in amounts)
            {
                var together = new decimal[weights.Length];
                foreach (var (place, share) in shares.Of(amount / 100m))
                    together[place] += share;
                Assert.Equal(Shares.InProportion(amount / 100m, weights, 2), together);
            }
        }, iter: 2_000, threads: 1);

    [Fact]
    public void Five_minutes_among_twenty_pieces_go_to_the_heaviest_hundredth_by_hundredth()
    {
        decimal[] weights = [.. Enumerable.Range(1, 20).Select(n => (decimal)n)];
        Assert.Equal([(19, 0.01m), (18, 0.01m), (17, 0.01m)], new SharesByWeight(weights, 2).Of(0.03m));
    }
}
