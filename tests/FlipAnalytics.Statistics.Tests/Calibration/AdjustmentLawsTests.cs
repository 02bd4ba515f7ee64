using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>What holds for every list of p values and every count.</summary>
public class AdjustmentLawsTests
{
    [Fact]
    public void Holm_lies_between_the_p_values_and_Bonferroni_s() => Gen.Double[0, 1].Array[1, 20].Sample(p =>
    {
        var holm = MultipleTests.Holm(p);
        var bonferroni = MultipleTests.Bonferroni(p);
        for (int i = 0; i < p.Length; i++)
            Assert.InRange(holm[i], p[i], bonferroni[i]);
    });

    [Fact]
    public void The_exact_interval_holds_the_share_and_its_ends_are_as_unlikely_as_stated() =>
        Gen.Select(Gen.Int[1, 200], Gen.Double[0, 1]).Sample((trials, share) =>
        {
            int successes = (int)Math.Round(share * trials);
            Limits limits = Proportion.Exact(successes, trials, 0.9);
            Assert.True(limits.Contains((double)successes / trials));
            // At the lower end, so many successes or more have a chance of 5 %; at the upper end, so many or fewer.
            if (successes > 0)
                Assert.Equal(0.95, MathNet.Numerics.Distributions.Binomial.CDF(limits.Low, trials, successes - 1), 1e-9);
            if (successes < trials)
                Assert.Equal(0.05, MathNet.Numerics.Distributions.Binomial.CDF(limits.High, trials, successes), 1e-9);
        });
}
