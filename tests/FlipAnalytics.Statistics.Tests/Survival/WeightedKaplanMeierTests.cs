using System.Text.Json;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Curves of weighted spells against R's survfit(weights = ), and by hand.</summary>
public class WeightedKaplanMeierTests
{
    private static readonly SurvivalTime[] Four = [new(2, true), new(4, false), new(5, true), new(9, true)];
    private static readonly ReferenceCase Reference = new("survival/06_case_weights");

    [Theory]
    [InlineData("km_overall", false)]
    [InlineData("km_late", true)]
    public void The_curve_is_R_s(string curve, bool late) =>
        CheckCurve(Reference.At(curve), KaplanMeier.Estimate(Times(late), Reference.Numbers("weight")));

    [Fact]
    public void The_curves_by_group_are_R_s()
    {
        var curves = GroupSurvival.Of(Times(late: false), Reference.Text("sex"), Reference.Numbers("weight"));
        Assert.Equal(["f", "m"], curves.Select(curve => curve.Group));
        foreach (GroupSurvival curve in curves)
            CheckCurve(Reference.At($"km_by_sex/{curve.Group}"), curve.Curve);
    }

    [Fact]
    public void Without_weights_the_curves_by_group_are_those_of_each_group_alone()
    {
        SurvivalTime[] times = Times(late: true);
        string[] sex = Reference.Text("sex");
        foreach (GroupSurvival curve in GroupSurvival.Of(times, sex, level: 0.8))
        {
            KaplanMeier alone = KaplanMeier.Estimate([.. times.Where((_, i) => sex[i] == curve.Group)], 0.8);
            Assert.Equal(alone.Steps.AsEnumerable(), curve.Curve.Steps.AsEnumerable());
        }
    }

    /// <summary>Weights 1, 2, 3 and 0: on day 2, 1 of 6 ends; on day 5, all 3 that are left.</summary>
    [Fact]
    public void Four_weighted_spells_by_hand()
    {
        KaplanMeier fit = KaplanMeier.Estimate(Four, [1, 2, 3, 0]);
        Assert.Equal(3, fit.Count);
        Assert.Equal([6, 5, 3], fit.Weights.Select(weight => weight.AtRisk));
        Assert.Equal([3, 2, 1], fit.Steps.Select(step => step.AtRisk));
        Assert.Equal([1, 0, 3], fit.Weights.Select(weight => weight.Ended));
        Assert.Equal([0, 2, 0], fit.Weights.Select(weight => weight.Censored));
        Assert.Equal(5 / 6.0, fit.At(2), 1e-15);
        Assert.Equal(0, fit.At(5));
        // Greenwood: (5/6) √(1/(6 · 5)).
        Assert.Equal(5 / 6.0 * Math.Sqrt(1 / 30.0), fit.Steps[0].StandardError!.Value, 1e-15);
    }

    [Fact]
    public void A_weight_of_three_is_three_alike_spells()
    {
        KaplanMeier weighted = KaplanMeier.Estimate(Four, [1, 3, 2, 1]);
        KaplanMeier repeated = KaplanMeier.Estimate([Four[0], Four[1], Four[1], Four[1], Four[2], Four[2], Four[3]]);
        Assert.Equal(repeated.Steps.Select(step => step.Survival), weighted.Steps.Select(step => step.Survival));
        Assert.Equal(repeated.Steps.Select(step => step.LogLogLimits), weighted.Steps.Select(step => step.LogLogLimits));
        Assert.Equal(repeated.RestrictedMean(6), weighted.RestrictedMean(6));
    }

    /// <summary>0.1 + 0.2 is not 0.3 in doubles: the curve falls to 0 all the same.</summary>
    [Fact]
    public void Where_all_at_risk_end_the_curve_is_zero()
    {
        KaplanMeier fit = KaplanMeier.Estimate([new(0, 1, true), new(0, 2, true), new(0.5, 2, true)], [0.7, 0.1, 0.2]);
        Assert.Equal(0, fit.Steps[^1].Survival);
        Assert.Null(fit.Steps[^1].StandardError);
    }

    [Fact]
    public void A_group_whose_spells_all_weigh_nothing_has_no_curve() => Assert.Equal(
        ["white"], GroupSurvival.Of(Four, ["white", "sage", "white", "sage"], [1, 0, 2, 0]).Select(curve => curve.Group));

    [Theory]
    [InlineData(-1, "Weight 1 (counting from 0) is -1")]
    [InlineData(double.NaN, "Weight 1 (counting from 0) is NaN")]
    [InlineData(double.PositiveInfinity, "Weight 1 (counting from 0) is Infinity")]
    public void A_weight_that_is_negative_or_not_finite_is_refused(double weight, string message)
    {
        Assert.Contains(message, Assert.Throws<ArgumentException>(
            () => KaplanMeier.Estimate(Four, [1, weight, 1, 1])).Message, StringComparison.Ordinal);
        Assert.Contains(message, Assert.Throws<ArgumentException>(
            () => GroupSurvival.Of(Four, ["a", "b", "a", "b"], [1, weight, 1, 1])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Weights_that_do_not_fit_are_refused()
    {
        Assert.Contains("4 spells and 2 weights", Assert.Throws<ArgumentException>(
            () => KaplanMeier.Estimate(Four, [1, 1])).Message, StringComparison.Ordinal);
        Assert.Contains("All weights are 0", Assert.Throws<ArgumentException>(
            () => KaplanMeier.Estimate(Four, [0, 0, 0, 0])).Message, StringComparison.Ordinal);
        Assert.Contains("4 spells and 1 groups", Assert.Throws<ArgumentException>(
            () => GroupSurvival.Of(Four, ["a"])).Message, StringComparison.Ordinal);
    }

    private static SurvivalTime[] Times(bool late)
    {
        double[] stops = Reference.Numbers("time"), ends = Reference.Numbers("event"), starts = Reference.Numbers("entered");
        return [.. stops.Select((stop, i) => new SurvivalTime(late ? starts[i] : 0, stop, ends[i] == 1))];
    }

    private static void CheckCurve(JsonElement expected, KaplanMeier fit)
    {
        JsonElement table = expected.GetProperty("table");
        Assert.Equal(expected.GetProperty("n").GetInt32(), fit.Count);
        Check("time", step => step.Time);
        AssertClose(table.GetProperty("at_risk"), fit.Weights.Select(weight => weight.AtRisk), 1e-10, what: "at risk");
        AssertClose(table.GetProperty("events"), fit.Weights.Select(weight => weight.Ended), 1e-10, what: "ended");
        AssertClose(table.GetProperty("censored"), fit.Weights.Select(weight => weight.Censored), 1e-10, what: "censored");
        Check("survival", step => step.Survival);
        Check("greenwood_se", step => step.StandardError ?? double.NaN);
        Check("loglog_low", step => step.LogLogLimits?.Low ?? double.NaN);
        Check("loglog_high", step => step.LogLogLimits?.High ?? double.NaN);
        Check("log_low", step => step.LogLimits?.Low ?? double.NaN);
        Check("log_high", step => step.LogLimits?.High ?? double.NaN);
        SurvivalQuantile[] quartiles = [fit.Quantile(0.25), fit.Quantile(0.5), fit.Quantile(0.75)];
        AssertClose(At(expected, "quantiles_25_50_75/value"), quartiles.Select(q => q.Time ?? double.NaN), 1e-12, what: "time");
        AssertClose(At(expected, "quantiles_25_50_75/loglog_low"), quartiles.Select(q => q.Low ?? double.NaN), 1e-12, what: "low");
        AssertClose(At(expected, "quantiles_25_50_75/loglog_high"), quartiles.Select(q => q.High ?? double.NaN), 1e-12, what: "high");
        RestrictedMean mean = fit.RestrictedMean(Number(At(expected, "rmst/tau")));
        AssertClose(At(expected, "rmst"), [mean.Horizon, mean.Mean, mean.StandardError], 1e-10, what: "restricted mean");

        void Check(string column, Func<SurvivalStep, double> value) =>
            AssertClose(table.GetProperty(column), fit.Steps.Select(value), 1e-10, what: column);
    }
}
