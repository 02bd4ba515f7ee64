using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>The four laws side by side.</summary>
public sealed class FailureDistributionComparisonTests
{
    [Theory]
    [InlineData("lung")]
    [InlineData("ovarian")]
    [InlineData("rats")]
    [InlineData("log-300")]
    public void The_order_and_the_differences_are_those_of_R_s_likelihoods(string name)
    {
        FailureDistributionComparison comparison = FailureDistributionComparison.Of(AftReference.Episodes(name));
        (string Law, double Aic)[] expected =
        [
            .. AftReference.Answers("answers.json").GetProperty(name).EnumerateObject()
                .Select(law => (law.Name, Aic(law.Value, law.Name == "exponential" ? 0 : 1))).OrderBy(law => law.Item2),
        ];
        Assert.Equal(
            expected.Select(law => law.Law), comparison.Ranked.Select(ranked => ranked.Fit.Distribution.ToString().ToLowerInvariant()));
        for (int k = 0; k < expected.Length; k++)
            Assert.Equal(expected[k].Aic - expected[0].Aic, comparison.Ranked[k].AicDifference, 1e-6);
        Assert.Same(comparison.Ranked[0].Fit, comparison.Best);
        Assert.Equal(1, comparison.Ranked.Sum(ranked => ranked.Weight), 1e-12);
        Assert.Empty(comparison.Unfitted);
    }

    /// <summary>Every piece sold on day 5: only the law whose scale is held has a likelihood with a top.</summary>
    [Fact]
    public void A_law_without_an_estimate_is_named_and_the_rest_are_ranked()
    {
        AcceleratedFailureData sameDay = new(["(Intercept)"], [[1], [1], [1]], [Spell.Ended(5), Spell.Ended(5), Spell.Ended(5)], [], null);
        FailureDistributionComparison comparison = FailureDistributionComparison.Of(sameDay);
        Assert.Equal(FailureDistribution.Exponential, comparison.Best.Distribution);
        Assert.Equal(3, comparison.Unfitted.Length);
        Assert.All(comparison.Unfitted, unfitted => Assert.NotEmpty(unfitted.Reason));
    }

    private static double Aic(JsonElement law, int scales) =>
        -2 * law.Number("loglik") + 2 * (law.GetProperty("coef").GetArrayLength() + scales);
}
