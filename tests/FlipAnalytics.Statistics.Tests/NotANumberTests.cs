namespace FlipAnalytics.Statistics.Tests;

/// <summary>Values that are not numbers, and limits the wrong way round: each is refused by value and place, by one rule.</summary>
public sealed class NotANumberTests
{
    private const double None = double.NaN;
    private const double Endless = double.PositiveInfinity;
    private static readonly LabColour Sage = new(70, -10, 15);

    public static TheoryData<string, Action, string> Refused => new()
    {
        { "jackknife+, prediction", () => JackknifePlus.Range([1, None, 3], [1, 1, 1], 0.5), "Prediction 1 (counting from 0) is NaN" },
        { "jackknife+, infinite prediction", () => JackknifePlus.Range([1, 2, Endless], [1, 1, 1], 0.5), "Prediction 2 (counting from 0) is Infinity" },
        { "jackknife+, residual", () => JackknifePlus.Range([1, 2, 3], [1, 1, None], 0.5), "Absolute residual 2 (counting from 0) is NaN" },
        { "jackknife+, residual with a sign", () => JackknifePlus.Range([1, 2, 3], [-4, 1, 1], 0.5), "Absolute residual 0 (counting from 0) is -4" },
        { "jackknife+, level too low", () => JackknifePlus.Range([1, 5, 9], [0, 0, 0], 0.1), "the range is empty" },
        { "CV+, prediction", () => JackknifePlus.CrossValidatedRange([1, None], [0, 0, 1], [1, 1, 1], 0.5), "The prediction without fold 1 (counting from 0) is NaN" },
        { "CV+, residual", () => JackknifePlus.CrossValidatedRange([1, 2], [0, 0, 1], [1, None, 1], 0.5), "Absolute residual 1 (counting from 0) is NaN" },
        { "conformal rank", () => ConformalRank.Quantile([3, None, 1], 0.5), "Score 1 (counting from 0) is NaN" },
        { "coverage, reversed", () => Coverage.Of([new(1, 2), new(4, 3)], [1, 3.5]), "Range 1 (counting from 0) runs from 4 to 3" },
        { "coverage, lower limit", () => Coverage.Of([new(None, 2)], [1]), "Range 0 (counting from 0) runs from NaN to 2" },
        { "coverage, upper limit", () => Coverage.Of([new(0, None)], [1]), "Range 0 (counting from 0) runs from 0 to NaN" },
        { "coverage, value", () => Coverage.Of([new(1, 2), new(3, 4)], [1, None]), "Value 1 (counting from 0) is NaN" },
        { "interval score, reversed", () => ScoringRules.Interval(new(2, 1), 0.8, 1), "The range runs from 2 to 1" },
        { "interval score, limit", () => ScoringRules.Interval(new(None, 1), 0.8, 1), "The range runs from NaN to 1" },
        { "interval score, value", () => ScoringRules.Interval(new(1, 2), 0.8, None), "The value is NaN" },
        { "interval score, infinite value", () => ScoringRules.Interval(new(1, Endless), 0.8, Endless), "The value is Infinity" },
        { "pinball, quantile", () => ScoringRules.Pinball(None, 0.5, 1), "The quantile is NaN" },
        { "pinball, value", () => ScoringRules.Pinball(1, 0.5, None), "The value is NaN" },
        { "ranked probability, mean", () => ScoringRules.NormalContinuousRanked(None, 1, 1), "The mean is NaN" },
        { "ranked probability, spread", () => ScoringRules.NormalContinuousRanked(1, Endless, 1), "must be finite and above 0" },
        { "log score, value", () => ScoringRules.NormalLogarithmic(1, 1, None), "The value is NaN" },
        { "integral transform, value", () => ProbabilityIntegralTransform.Normal(1, 1, None), "The value is NaN" },
        { "distance to uniform", () => ProbabilityIntegralTransform.DistanceToUniform([0.5, None]), "Value 1 (counting from 0) is NaN" },
        { "distance to uniform, outside", () => ProbabilityIntegralTransform.DistanceToUniform([1.5]), "Value 0 (counting from 0) is 1.5" },
        { "rate over an endless exposure", () => Rate.Exact(3, Endless), "must be above 0 and finite" },
        { "permutation, score", () => GroupPermutation.Of([1, None], [0, 1], [0, 0], 2, 9), "Score 1 (counting from 0) is NaN" },
        { "permutation of two, score", () => GroupPermutation.ChanceOfTwo([None, 1], [0, 1], [0, 0], 9, 0.1), "Score 0 (counting from 0) is NaN" },
        { "color difference, lightness", () => ColourDifference.Ciede2000(Sage with { Lightness = None }, Sage), "L* of the first color is NaN" },
        { "color difference, a*", () => ColourDifference.Ciede2000(Sage, Sage with { A = Endless }), "a* of the second color is Infinity" },
        { "color difference, b*", () => ColourDifference.Ciede2000(Sage, Sage with { B = None }), "b* of the second color is NaN" },
        { "ratio of totals, divided", () => RatioOfTotals.Of([1, None], [1, 2]), "What to divide in row 1 (counting from 0) is NaN" },
        { "ratio of totals, divisor", () => RatioOfTotals.Of([1, 2], [1, None]), "What to divide by in row 1 (counting from 0) is NaN" },
        { "ratio of totals, infinite divisor", () => RatioOfTotals.Of([1, 2], [Endless, 1]), "What to divide by in row 0 (counting from 0) is Infinity" },
        { "ratio of totals, negative divisor", () => RatioOfTotals.Of([1, 2], [1, -2]), "What to divide by in row 1 (counting from 0) is -2" },
        { "trend of a ratio, time", () => RatioTrend.Of([1, 2, 3], [1, 1, 1], [1, None, 3]), "The time of row 1 (counting from 0) is NaN" },
        { "trend of a ratio, divided", () => RatioTrend.Of([1, 2, None], [1, 1, 1], [1, 2, 3]), "What to divide in row 2 (counting from 0) is NaN" },
        { "smearing, residual", () => Smearing.Factor([0.1, None]), "Residual 1 (counting from 0) is NaN" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_is_not_a_number_is_refused_by_value_and_place(string what, Action given, string message)
    {
        var refused = Assert.ThrowsAny<ArgumentException>(given);
        Assert.True(refused.Message.Contains(message, StringComparison.Ordinal), $"{what}: {refused.Message}");
    }

    /// <summary>An infinite limit, and an infinite score, is one: too few rows give it.</summary>
    [Fact]
    public void Infinite_limits_and_scores_stay_allowed()
    {
        Limits all = JackknifePlus.Range([1, 2], [1, 1], 0.95);
        Assert.Equal(new Limits(double.NegativeInfinity, Endless), all);
        Assert.Equal(1, Coverage.Of([all], [5]).Held);
        Assert.Equal(Endless, ScoringRules.Interval(all, 0.95, 5));
        Assert.Equal(2, ConformalRank.Quantile([Endless, 1, 2], 0.5));
        Assert.Equal(Endless, ConformalRank.Quantile([Endless, 1, 2], 0.75));
    }
}
