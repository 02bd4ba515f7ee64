namespace FlipAnalytics.Statistics.Tests;

/// <summary>A level that drifts, checked against the dense covariance min(s, t) − s₀ of a walk that starts at 0.</summary>
public sealed class RandomWalkTests
{
    private static readonly double[] Positions = [0, 1, 2.5, 3, 4, 6, 7, 7.5, 9, 10];
    private static readonly GeneratedRows Rows = new(60, [10, 5], [0, 0.4], columns: 2);
    private static readonly RandomTerm Walk =
        RandomTerm.RandomWalk("period", Rows.Terms[0].Levels, [.. Positions]);

    private static readonly double[] Prices = [.. Rows.Y.Select((y, i) =>
        y + (0.8 * Math.Sin(Positions[Rows.Levels[0][i]])))];

    private static readonly int[][] Levels =
        [[.. Rows.Levels[0].Select((period, i) => i == 11 ? -1 : period)], Rows.Levels[1]];

    private static readonly RandomTerm[] Terms = [Walk, Rows.Terms[1]];

    private static MixedModelFit Fit(LikelihoodCriterion criterion) => MixedModel.Fit(
        MixedModelData.From(Rows.Columns, Rows.X, Terms, Levels, Prices, Rows.Weights),
        new MixedModelOptions { Criterion = criterion });

    private static DenseMixedModel Dense(double[] ratios, LikelihoodCriterion criterion) => new(
        Rows.X, Terms, Levels, Prices, Rows.Weights, ratios, criterion == LikelihoodCriterion.Reml)
    {
        Own = (k, i) => Levels[k][i],
    };

    [Theory]
    [InlineData(LikelihoodCriterion.Reml)]
    [InlineData(LikelihoodCriterion.Ml)]
    public void Likelihood_coefficients_and_effects_agree_with_the_dense_model_and_are_at_its_optimum(
        LikelihoodCriterion criterion)
    {
        MixedModelFit fit = Fit(criterion);
        double[] ratios = [.. fit.Terms.Select(term => term.VarianceRatio)];
        DenseMixedModel dense = Dense(ratios, criterion);

        double sumOfLogWeights = Rows.Weights.Sum(Math.Log);
        Assert.True(fit.Terms[0].Variance > 0 && sumOfLogWeights != 0);
        Near.Absolute(dense.MinusTwoLogLikelihood, fit.MinusTwoLogLikelihood, 1e-9, "criterion");
        Near.Relative(dense.ResidualVariance, fit.ResidualVariance, 1e-10, "residual variance");
        Near.Relative(dense.Coefficients[1], fit.Coefficients[1].Estimate, 1e-10, "slope");
        for (int k = 0; k < 2; k++)
        {
            for (int t = 0; t < Terms[k].Levels.Length; t++)
            {
                Near.Absolute(dense.Effect(k, t), fit.Terms[k].Levels[t].Effect, 1e-10, Terms[k].Levels[t]);
            }

            foreach (double factor in new[] { 0.99, 1.01 })
            {
                double[] beside = [.. ratios];
                beside[k] *= factor;
                Assert.True(Dense(beside, criterion).MinusTwoLogLikelihood > dense.MinusTwoLogLikelihood);
            }
        }

        Assert.Equal(0, fit.Terms[0].Levels[0].Effect);
    }

    [Theory]
    [InlineData(6)] // a period that was fitted
    [InlineData(5.2)] // between two
    [InlineData(13.5)] // after the last
    [InlineData(-2)] // before the first
    public void A_prediction_anywhere_on_the_walk_agrees_with_the_dense_model(double position)
    {
        MixedModelFit fit = Fit(LikelihoodCriterion.Reml);
        double[] ratios = [.. fit.Terms.Select(term => term.VarianceRatio)];
        double[] x = [1, 0.4];
        (double mean, double variance) = Dense(ratios, LikelihoodCriterion.Reml).Predict(
            x,
            (k, t) => k == 0 ? Math.Max(0, Math.Min(position, Positions[t])) : t == 3 ? 1 : 0,
            (ratios[0] * Math.Abs(position)) + ratios[1]);
        MixedPrediction prediction = fit.Predict(x, [LevelRef.AtPosition(position), LevelRef.Known(3)]);

        Near.Absolute(mean, prediction.Mean, 1e-10, "mean");
        Near.Relative(variance, prediction.VarianceOfMean, 1e-9, "variance of the mean");
    }

    [Fact]
    public void A_fitted_period_is_the_same_by_index_and_by_position()
    {
        MixedModelFit fit = Fit(LikelihoodCriterion.Reml);

        Assert.Equal(
            fit.Predict([1, 0], [LevelRef.Known(5), LevelRef.None]),
            fit.Predict([1, 0], [LevelRef.AtPosition(6), LevelRef.None]));
    }

    [Fact]
    public void A_walk_needs_a_position_for_a_new_period_and_increasing_positions()
    {
        MixedModelFit fit = Fit(LikelihoodCriterion.Reml);

        Assert.Contains("AtPosition", Assert.Throws<ArgumentException>(
            () => fit.Predict([1, 0], [LevelRef.Unseen, LevelRef.None])).Message, StringComparison.Ordinal);
        Assert.Contains("greater", Assert.Throws<ArgumentException>(
            () => RandomTerm.RandomWalk("period", ["a", "b"], [2, 2])).Message, StringComparison.Ordinal);
    }
}
