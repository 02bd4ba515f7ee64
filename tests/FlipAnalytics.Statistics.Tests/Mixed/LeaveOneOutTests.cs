namespace FlipAnalytics.Statistics.Tests;

/// <summary>Leaving a row out by formula gives what fitting without it gives.</summary>
public sealed class LeaveOneOutTests
{
    private static readonly GeneratedRows Rows = new(40, [4, 5], [0.6, 0.4]);

    [Theory]
    [InlineData(LikelihoodCriterion.Reml)]
    [InlineData(LikelihoodCriterion.Ml)]
    public void Equals_a_refit_without_the_row_at_the_same_ratios(LikelihoodCriterion criterion)
    {
        var options = new MixedModelOptions { Criterion = criterion, ResidualVariancePrior = new(3, 0.2) };
        MixedModelFit fit = MixedModel.Fit(Rows.Data(weighted: true), options);
        MixedModelOptions held = options with { HeldRatios = [.. fit.Terms.Select(term => (double?)term.VarianceRatio)] };
        var left = fit.LeaveOneOut();

        Assert.Equal(40, left.Length);
        for (int i = 0; i < 40; i++)
        {
            MixedModelFit without = MixedModel.Fit(
                Rows.DataOf(Enumerable.Range(0, 40).Where(row => row != i), weighted: true), held);
            MixedPrediction prediction = without.Predict(Rows.X[i], Rows.LevelsOf(i));
            Near.Absolute(prediction.Mean, left[i].Mean, 1e-10, "mean");
            Near.Absolute(Rows.Y[i] - prediction.Mean, left[i].Residual, 1e-10, "residual");
            Near.Relative(prediction.VarianceOfMean, left[i].VarianceOfMean, 1e-8, "variance of the mean");
            Near.Relative(prediction.ResidualVariance, left[i].ResidualVariance, 1e-9, "residual variance");
            Near.Absolute(
                left[i].Residual / Math.Sqrt(prediction.VarianceOfMean + (prediction.ResidualVariance / Rows.Weights[i])),
                left[i].StandardizedResidual, 1e-8, "standardised residual");
        }
    }

    [Fact]
    public void A_residual_is_what_the_prediction_of_the_fitted_row_leaves()
    {
        MixedModelFit fit = MixedModel.Fit(Rows.Data());
        var residuals = fit.Residuals();

        for (int i = 0; i < 40; i++)
        {
            Near.Absolute(Rows.Y[i] - fit.Predict(Rows.X[i], Rows.LevelsOf(i)).Mean, residuals[i], 1e-12, "residual");
        }
    }

    [Fact]
    public void A_row_that_alone_determines_a_coefficient_cannot_be_predicted_from_the_others()
    {
        double[][] x = [.. Enumerable.Range(0, 40).Select(i => new[] { 1, i == 7 ? 1.0 : 0 })];
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(["(Intercept)", "seventh"], x, Rows.Terms, Rows.Levels, Rows.Y));
        var left = fit.LeaveOneOut();

        Assert.False(left[7].IsDefined);
        Assert.All(Enumerable.Range(0, 40).Where(i => i != 7), i => Assert.True(left[i].IsDefined));
    }

    [Fact]
    public void A_predicted_mean_is_the_weighted_sum_of_the_fitted_prices_and_the_weights_sum_to_one()
    {
        MixedModelFit fit = MixedModel.Fit(Rows.Data(weighted: true));
        double[] x = [1, 0.3, -0.8];
        LevelRef[] levels = [LevelRef.Known(2), LevelRef.Unseen];
        double[] weights = fit.RowWeights(x, levels);

        Near.Relative(fit.Predict(x, levels).Mean, weights.Zip(Rows.Y, (w, y) => w * y).Sum(), 1e-10, "mean");
        Near.Absolute(1, weights.Sum(), 1e-10, "sum of weights");
    }

    [Fact]
    public void Without_kept_rows_single_rows_cannot_be_asked_for()
    {
        var builder = new MixedModelDataBuilder(Rows.Columns, Rows.Terms, keepRows: false);
        for (int i = 0; i < 40; i++)
        {
            builder.Add(Rows.X[i], [Rows.Levels[0][i], Rows.Levels[1][i]], Rows.Y[i]);
        }

        MixedModelFit fit = MixedModel.Fit(builder.Build());

        Near.Absolute(MixedModel.Fit(Rows.Data()).MinusTwoLogLikelihood, fit.MinusTwoLogLikelihood, 1e-10, "criterion");
        Assert.Contains(
            "keepRows", Assert.Throws<InvalidOperationException>(() => fit.LeaveOneOut()).Message, StringComparison.Ordinal);
    }
}
