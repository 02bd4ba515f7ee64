using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>
/// Variances known from elsewhere, against the likelihood written out with the n × n covariance
/// V = σ² diag(1/w) + Σ vₖZₖZₖ'.
/// </summary>
public sealed class HeldVarianceTests
{
    private static readonly GeneratedRows Rows = new(60, [5, 8], [0.6, 0.4]);

    [Theory]
    [InlineData(LikelihoodCriterion.Reml, false)]
    [InlineData(LikelihoodCriterion.Reml, true)]
    [InlineData(LikelihoodCriterion.Ml, false)]
    [InlineData(LikelihoodCriterion.Ml, true)]
    public void With_one_variance_held_the_others_are_where_the_written_out_likelihood_is_flat(
        LikelihoodCriterion criterion, bool weighted)
    {
        foreach (double held in new[] { 0.01, 0.16, 1.7 })
        {
            MixedModelFit fit = MixedModel.Fit(
                Rows.Data(weighted), new() { Criterion = criterion, HeldVariances = [held, null] });
            Assert.True(fit.Convergence.Converged, fit.Convergence.ToString());
            Near.Relative(held, fit.Terms[0].Variance, 1e-12, "held variance");
            Assert.InRange(fit.Terms[1].Variance, 0.01, 1);

            double At(double residual, double second) => Dense(criterion, weighted, residual, [held, second]).Criterion;
            (double criterionValue, Vector<double> coefficients) =
                Dense(criterion, weighted, fit.ResidualVariance, [held, fit.Terms[1].Variance]);
            Near.Absolute(criterionValue, fit.MinusTwoLogLikelihood, 1e-8, "-2 log-likelihood");
            Near.Absolute(0, Slope(log => At(Math.Exp(log), fit.Terms[1].Variance), Math.Log(fit.ResidualVariance)), 1e-4, "slope in log residual variance");
            Near.Absolute(0, Slope(log => At(fit.ResidualVariance, Math.Exp(log)), Math.Log(fit.Terms[1].Variance)), 1e-4, "slope in log variance");
            for (int j = 0; j < coefficients.Count; j++)
            {
                Near.Absolute(coefficients[j], fit.Coefficients[j].Estimate, 1e-9, "coefficient");
            }
        }
    }

    [Fact]
    public void Holding_the_residual_variance_leaves_the_terms_where_the_written_out_likelihood_is_flat()
    {
        MixedModelFit fit = MixedModel.Fit(Rows.Data(), new() { HeldResidualVariance = 0.4 });
        double[] variances = [.. fit.Terms.Select(term => term.Variance)];

        Assert.Equal(0.4, fit.ResidualVariance);
        Near.Absolute(
            Dense(LikelihoodCriterion.Reml, false, 0.4, variances).Criterion, fit.MinusTwoLogLikelihood, 1e-8, "-2 log-likelihood");
        for (int k = 0; k < variances.Length; k++)
        {
            int term = k;
            double At(double log)
            {
                double[] moved = [.. variances];
                moved[term] = Math.Exp(log);
                return Dense(LikelihoodCriterion.Reml, false, 0.4, moved).Criterion;
            }

            Near.Absolute(0, Slope(At, Math.Log(variances[k])), 1e-4, "slope");
        }
    }

    [Fact]
    public void Holding_a_variance_at_its_own_estimate_changes_nothing()
    {
        MixedModelFit free = MixedModel.Fit(Rows.Data());
        MixedModelFit held = MixedModel.Fit(Rows.Data(), new() { HeldVariances = [null, free.Terms[1].Variance] });

        Near.Absolute(free.MinusTwoLogLikelihood, held.MinusTwoLogLikelihood, 1e-9, "-2 log-likelihood");
        Near.Relative(free.ResidualVariance, held.ResidualVariance, 1e-7, "residual variance");
        Near.Relative(free.Terms[0].Variance, held.Terms[0].Variance, 1e-7, "other variance");
        Near.Relative(free.Terms[1].Levels[0].Effect, held.Terms[1].Levels[0].Effect, 1e-7, "effect");
    }

    [Fact]
    public void A_row_left_out_is_predicted_as_by_a_fit_without_it_at_the_same_variances()
    {
        MixedModelFit fit = MixedModel.Fit(Rows.Data(), new() { HeldVariances = [0.3, null] });
        LeaveOneOutPrediction left = fit.LeaveOneOut()[7];
        MixedModelFit without = MixedModel.Fit(Rows.DataOf(Enumerable.Range(0, 60).Where(i => i != 7)), new()
        {
            HeldVariances = [0.3, fit.Terms[1].Variance],
            HeldResidualVariance = fit.ResidualVariance,
        });
        MixedPrediction prediction = without.Predict(Rows.X[7], Rows.LevelsOf(7));

        Near.Relative(prediction.Mean, left.Mean, 1e-9, "mean");
        Near.Relative(prediction.VarianceOfMean, left.VarianceOfMean, 1e-9, "variance of the mean");
        Assert.Equal(fit.ResidualVariance, left.ResidualVariance);
    }

    [Fact]
    public void Eight_studies_with_known_errors_by_hand()
    {
        // Equal known errors s² make restricted likelihood explicit: τ² = sample variance − s², the mean is the average.
        double[] y = [28, 8, -3, 7, -1, 1, 18, 12];
        const double errorVariance = 50;
        MixedModelFit fit = MixedModel.Fit(
            MixedModelData.From(
                ["(Intercept)"], [.. y.Select(_ => new[] { 1.0 })],
                [RandomTerm.Exchangeable("study", [.. y.Select((_, i) => $"s{i}")])], [[.. y.Select((_, i) => i)]], y),
            new() { HeldResidualVariance = errorVariance });
        double sampleVariance = y.Sum(v => (v - y.Average()) * (v - y.Average())) / 7;

        Near.Relative(sampleVariance - errorVariance, fit.Terms[0].Variance, 1e-7, "variance between studies");
        Near.Relative(y.Average(), fit.Coefficients[0].Estimate, 1e-12, "mean");
        double shrinkage = fit.Terms[0].Variance / sampleVariance;
        Near.Relative(shrinkage * (28 - y.Average()), fit.Terms[0].Levels[0].Effect, 1e-7, "first study's effect");
    }

    [Fact]
    public void A_held_variance_that_exceeds_all_there_is_says_so()
    {
        double[] y = [1, 2, 3, 4];
        MixedModelFit fit = MixedModel.Fit(
            MixedModelData.From(
                ["(Intercept)"], [.. y.Select(_ => new[] { 1.0 })],
                [RandomTerm.Exchangeable("row", ["a", "b", "c", "d"])], [[0, 1, 2, 3]], y),
            new() { HeldVariances = [100] });

        Assert.Equal(ConvergenceReason.ResidualVarianceAtLowerLimit, fit.Convergence.Reason);
        Assert.False(fit.Convergence.Converged);
        Near.Relative(2.5, fit.Coefficients[0].Estimate, 1e-9, "mean");
    }

    [Fact]
    public void What_cannot_be_held_is_refused()
    {
        Refused("HeldVariances contains -1", new() { HeldVariances = [-1, null] });
        Refused("HeldVariances has 1 entries for 2 random terms", new() { HeldVariances = [1] });
        Refused("both hold random term 0", new() { HeldVariances = [1, null], HeldRatios = [1, null] });
        Refused("prior allows none", new() { HeldVariances = [0, null], RatioPriors = [new(0, 1), null] });
        Assert.Throws<ArgumentOutOfRangeException>(() => new MixedModelOptions { HeldResidualVariance = 0 });

        static void Refused(string message, MixedModelOptions options) => Assert.Contains(
            message, Assert.Throws<ArgumentException>(() => MixedModel.Fit(Rows.Data(), options)).Message, StringComparison.Ordinal);
    }

    private static double Slope(Func<double, double> function, double at) => (function(at + 1e-4) - function(at - 1e-4)) / 2e-4;

    private static (double Criterion, Vector<double> Coefficients) Dense(
        LikelihoodCriterion criterion, bool weighted, double residual, double[] variances)
    {
        int n = Rows.Y.Length;
        Matrix<double> x = Matrix<double>.Build.Dense(n, Rows.X[0].Length, (i, j) => Rows.X[i][j]);
        Matrix<double> v = Matrix<double>.Build.Dense(n, n, (i, j) =>
            (i == j ? residual / (weighted ? Rows.Weights[i] : 1) : 0)
            + variances.Select((variance, k) => Rows.Levels[k][i] == Rows.Levels[k][j] ? variance : 0).Sum());
        var factor = v.Cholesky();
        Matrix<double> information = x.Transpose() * factor.Solve(x);
        Vector<double> y = Vector<double>.Build.Dense(Rows.Y);
        Vector<double> coefficients = information.Solve(x.Transpose() * factor.Solve(y));
        Vector<double> rest = y - (x * coefficients);
        bool restricted = criterion == LikelihoodCriterion.Reml;
        return (((restricted ? n - x.ColumnCount : n) * Math.Log(2 * Math.PI)) + factor.DeterminantLn
            + (restricted ? Math.Log(information.Determinant()) : 0) + (rest * factor.Solve(rest)), coefficients);
    }
}
