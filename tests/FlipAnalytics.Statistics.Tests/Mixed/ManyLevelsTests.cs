namespace FlipAnalytics.Statistics.Tests;

/// <summary>
/// Many levels crossed with few, too many for dense matrices to check: the estimates are put back into the equations they
/// solve. Henderson (1975): Z'W r = û/γ and X'W r = 0 for r = y − Xβ̂ − Zû. Searle, Casella and McCulloch (1992), chapter 8:
/// at the maximum a variance is the mean of û² plus its error variance, given β for the ordinary likelihood.
/// </summary>
public sealed class ManyLevelsTests
{
    [Theory]
    [InlineData(LikelihoodCriterion.Reml, false, 600, 20)]
    [InlineData(LikelihoodCriterion.Reml, true, 20, 600)]
    [InlineData(LikelihoodCriterion.Ml, false, 20, 600)]
    [InlineData(LikelihoodCriterion.Ml, true, 600, 20)]
    public void Estimates_solve_Henderson_s_equations_and_are_stationary(
        LikelihoodCriterion criterion, bool weighted, int first, int second)
    {
        GeneratedRows rows = new(6000, [first, second], [0.5, 0.3]);
        MixedModelFit fit = MixedModel.Fit(rows.Data(weighted), new() { Criterion = criterion });
        Assert.True(fit.Convergence.Converged, fit.Convergence.ToString());

        var residuals = fit.Residuals();
        double[] weightedResiduals = [.. residuals.Select((r, i) => weighted ? r * rows.Weights[i] : r)];
        for (int j = 0; j < fit.Coefficients.Length; j++)
        {
            Near.Absolute(0, weightedResiduals.Select((r, i) => r * rows.X[i][j]).Sum(), 1e-8, "X'Wr");
        }

        for (int k = 0; k < fit.Terms.Length; k++)
        {
            double[] sums = new double[fit.Terms[k].Levels.Length];
            for (int i = 0; i < weightedResiduals.Length; i++)
            {
                sums[rows.Levels[k][i]] += weightedResiduals[i];
            }

            for (int t = 0; t < sums.Length; t++)
            {
                Near.Absolute(fit.Terms[k].Levels[t].Effect / fit.Terms[k].VarianceRatio, sums[t], 1e-8, "Z'Wr");
            }

            double mean = fit.Terms[k].Levels.Average(level => (level.Effect * level.Effect)
                + (criterion == LikelihoodCriterion.Reml ? level.PredictionErrorVariance : level.ConditionalVariance));
            Near.Relative(mean, fit.Terms[k].Variance, 1e-9, fit.Terms[k].Name);
        }

        double explained = weightedResiduals.Select((r, i) => r * rows.Y[i]).Sum();
        Near.Relative(explained / fit.ResidualDegreesOfFreedom, fit.ResidualVariance, 1e-9, "residual variance");
    }
}
