namespace FlipAnalytics.Statistics.Tests;

/// <summary>Every fit that was searched for says whether the search arrived.</summary>
public sealed class ConvergenceTests
{
    private static readonly MixedModelData Mixed = new GeneratedRows(60, [6, 4], [0.6, 0.4]).Data();

    [Fact]
    public void A_mixed_model_cut_short_says_that_it_has_not_converged()
    {
        MixedModelFit cut = MixedModel.Fit(Mixed, new MixedModelOptions { MaximumIterations = 1 });
        Assert.False(cut.Converged);
        Assert.Equal(ConvergenceReason.IterationLimit, cut.Convergence.Reason);
        Assert.True(MixedModel.Fit(Mixed).Converged);
    }

    [Fact]
    public void Limits_from_a_mixed_model_cut_short_say_that_they_have_not_converged()
    {
        var whole = ProfileLikelihood.StandardDeviations(MixedModel.Fit(Mixed));
        Assert.All(whole, limits => Assert.True(limits.Converged, limits.Name));
        MixedModelFit cut = MixedModel.Fit(Mixed, new MixedModelOptions { MaximumIterations = 2 });
        Assert.All(ProfileLikelihood.StandardDeviations(cut), limits => Assert.False(limits.Converged, limits.Name));
    }

    [Fact]
    public void Durations_say_that_they_have_converged_only_where_both_searches_did()
    {
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(
            new SyntheticSpells(5).Draw(80, [0.6, -0.5, 0.2, -0.3, 0.4], 0.7, 60), new AcceleratedFailureOptions());
        Assert.True(fit.Converged, fit.Convergence.ToString());
        Assert.False((fit with { Convergence = fit.Convergence with { LastStep = 0.01 } }).Converged);
        Assert.False((fit with { Convergence = fit.Convergence with { NextVarianceStep = 0.01 } }).Converged);
        Assert.False((fit with { Convergence = fit.Convergence with { NextVarianceStep = double.NaN } }).Converged);
    }

    [Fact]
    public void Hazards_say_that_they_have_converged_and_are_refused_where_they_have_not()
    {
        SurvivalTime[] times = [new(1, true), new(2, true), new(3, true), new(4, false), new(5, true), new(6, true)];
        CoxFit fit = CoxRegression.Fit([new("width", new double[] { 3, 1, 4, 1, 5, 2 })], times);
        Assert.True(fit.Converged);
        Assert.InRange(fit.LastStep, 0, 1e-6);
        Assert.Throws<NoEstimateException>(
            () => CoxRegression.Fit([new("width", new double[] { 9, 8, 7, 6, 5, 4 })], times));
    }
}
