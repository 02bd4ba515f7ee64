namespace FlipAnalytics.Statistics.Tests;

/// <summary>Rows drawn from known variances give those variances back.</summary>
public sealed class MixedModelRecoveryTests
{
    [Fact]
    public void Four_thousand_rows_with_sixty_levels_recover_the_truth()
    {
        double[] deviations = [0.4, 0.3];
        GeneratedRows rows = new(4000, [60, 60], deviations);
        MixedModelFit fit = MixedModel.Fit(rows.Data());

        Near.Relative(
            GeneratedRows.ResidualDeviation, Math.Sqrt(fit.ResidualVariance), 0.04, "residual standard deviation");
        for (int k = 0; k < 2; k++)
        {
            // The sample variance of 60 effects has relative standard error √(2/59) = 0.18.
            Near.Relative(deviations[k] * deviations[k], fit.Terms[k].Variance, 3 * 0.18, $"variance {k}");
        }

        for (int j = 1; j < 3; j++)
        {
            Near.Absolute(rows.Coefficients[j], fit.Coefficients[j].Estimate, 4 * fit.Coefficients[j].StandardError, "slope");
        }
    }

    [Fact]
    public void Intervals_of_level_effects_hold_the_true_effects_about_as_often_as_they_say()
    {
        GeneratedRows rows = new(2000, [100], [0.4], columns: 2);
        MixedModelFit fit = MixedModel.Fit(rows.Data());
        double centre = rows.Effects[0].Average();
        int held = fit.Terms[0].Levels
            .Where((level, t) => Math.Abs(level.Effect - rows.Effects[0][t])
                <= 1.2816 * Math.Sqrt(level.PredictionErrorVariance))
            .Count();

        // 80 of 100 expected; binomial standard deviation 4.
        Assert.InRange(held, 68, 92);
        Assert.InRange(Math.Abs(centre), 0, 0.2);
    }

    [Fact]
    public void Five_crossed_terms_two_of_them_empty_converge_with_exact_zeros_where_the_slope_says_so()
    {
        GeneratedRows rows = new(300, [8, 8, 8, 8, 8], [0.5, 0, 0.3, 0, 0.2]);
        MixedModelFit fit = MixedModel.Fit(rows.Data());

        Assert.True(fit.Convergence.Converged, fit.Convergence.ToString());
        for (int k = 0; k < 5; k++)
        {
            double[] ratios = [.. fit.Terms.Select(term => term.VarianceRatio)];
            foreach (double moved in fit.Terms[k].AtZeroBoundary
                ? [1e-4, 1e-2, 1]
                : new[] { 0, ratios[k] * 0.9, ratios[k] * 1.1 })
            {
                double[] beside = [.. ratios];
                beside[k] = moved;
                MixedModelFit other = MixedModel.Fit(
                    rows.Data(), new MixedModelOptions { HeldRatios = [.. beside.Select(ratio => (double?)ratio)] });
                Assert.True(other.MinusTwoLogLikelihood > fit.MinusTwoLogLikelihood);
            }
        }
    }

    [Fact]
    public void One_row_for_each_level_cannot_be_told_from_residual_noise_and_gets_no_variance()
    {
        GeneratedRows rows = new(20, [2], [0.1], columns: 2);
        RandomTerm piece = RandomTerm.Exchangeable("piece", [.. Enumerable.Range(0, 20).Select(i => $"p{i}")]);
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(
            rows.Columns, rows.X, [piece], [[.. Enumerable.Range(0, 20)]], rows.Y));

        Assert.True(fit.Terms[0].AtZeroBoundary);
        Assert.True(fit.Convergence.Converged);
    }

    [Fact]
    public void Levels_that_explain_the_prices_exactly_stop_at_the_upper_limit_and_say_so()
    {
        double[] y = [.. Enumerable.Range(0, 30).Select(i => (double)(i % 5))];
        RandomTerm type = RandomTerm.Exchangeable("type", ["a", "b", "c", "d", "e"]);
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(
            ["(Intercept)"], [.. y.Select(_ => new[] { 1.0 })], [type], [[.. Enumerable.Range(0, 30).Select(i => i % 5)]], y));

        Assert.False(fit.Convergence.Converged);
        Near.Absolute(2, fit.Coefficients[0].Estimate, 1e-6, "mean");
        Near.Absolute(2, fit.Terms[0].Levels[4].Effect, 1e-6, "effect");
    }

    [Fact]
    public void A_stationary_point_is_preferred_to_ratios_that_run_away_because_levels_outnumber_rows()
    {
        GeneratedRows rows = new(13, [8, 10, 3, 5], [1.2, 1.2, 0, 1.2], columns: 3, seed: 2261755);
        var options = new MixedModelOptions { Criterion = LikelihoodCriterion.Ml };
        MixedModelFit fit = MixedModel.Fit(rows.Data(), options);
        MixedModelFit ranAway = MixedModel.Fit(rows.Data(), options with { HeldRatios = [2.4e9, 1.1e9, 8.5e7, 0] });

        Assert.Equal(ConvergenceReason.SmallScore, fit.Convergence.Reason);
        Assert.True(ranAway.MinusTwoLogLikelihood < fit.MinusTwoLogLikelihood);
        Assert.All(fit.Terms, term => Assert.InRange(term.VarianceRatio, 0, 100));
    }
}
