using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against R, formulas written out there, and by hand.</summary>
public class ScoringTests
{
    private readonly ReferenceCase reference = new("calib/04_scores");
    private readonly double[] y;
    private readonly double[] mean;
    private readonly double[] deviation;
    private readonly Limits[] ranges;

    public ScoringTests()
    {
        y = reference.Numbers("y");
        mean = reference.Numbers("mean");
        deviation = reference.Numbers("sd");
        ranges = [.. reference.Numbers("low").Zip(reference.Numbers("high"), (low, high) => new Limits(low, high))];
    }

    [Fact]
    public void Coverage_width_and_interval_score_are_R_s()
    {
        Coverage coverage = Coverage.Of(ranges, y);
        AssertClose(Number(reference.At("interval/coverage")), coverage.Share, 1e-10);
        AssertClose(Number(reference.At("interval/mean_width")), coverage.MeanWidth, 1e-10);
        AssertClose(
            Number(reference.At("interval/mean_interval_score")),
            y.Select((value, i) => ScoringRules.Interval(ranges[i], 0.8, value)).Average(), 1e-10);
        Assert.True(coverage.Uncertainty().Contains(0.8));
    }

    [Fact]
    public void Pinball_loss_ranked_probability_and_log_score_are_R_s()
    {
        AssertClose(
            Number(reference.At("pinball_high_tau_90")),
            y.Select((value, i) => ScoringRules.Pinball(ranges[i].High, 0.9, value)).Average(), 1e-10);
        AssertClose(
            Number(reference.At("crps_normal_mean")),
            y.Select((value, i) => ScoringRules.NormalContinuousRanked(mean[i], deviation[i], value)).Average(), 1e-10);
        AssertClose(
            Number(reference.At("log_score_mean")),
            y.Select((value, i) => ScoringRules.NormalLogarithmic(mean[i], deviation[i], value)).Average(), 1e-10);
    }

    [Fact]
    public void Where_values_fell_in_their_forecasts_is_R_s()
    {
        double[] fell = [.. y.Select((value, i) => ProbabilityIntegralTransform.Normal(mean[i], deviation[i], value))];
        AssertClose(reference.At("pit"), fell, 1e-10);
        AssertClose(
            Number(reference.At("pit_ks_distance")), ProbabilityIntegralTransform.DistanceToUniform(fell), 1e-10);
    }

    /// <summary>A range from 10 to 20 at 80 %: a value of 23 costs its width and 2/0.2 times 3.</summary>
    [Fact]
    public void A_miss_by_three_costs_thirty_more_at_eighty_percent()
    {
        Assert.Equal(10, ScoringRules.Interval(new(10, 20), 0.8, 20));
        Assert.Equal(40, ScoringRules.Interval(new(10, 20), 0.8, 23), 1e-12);
        Assert.Equal(40, ScoringRules.Interval(new(10, 20), 0.8, 7), 1e-12);
    }

    [Fact]
    public void A_forecast_without_spread_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ScoringRules.NormalContinuousRanked(5, 0, 5));
        Assert.Throws<ArgumentException>(() => Coverage.Of([], []));
    }
}
