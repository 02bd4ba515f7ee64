namespace FlipAnalytics.Statistics.Tests;

/// <summary>Thin logs: guesses stand in as weighted rows and priors, and give way as sales come in.</summary>
public sealed class MixedModelPriorTests
{
    private static readonly RandomTerm Types = RandomTerm.Exchangeable("type", ["desk", "dresser", "hutch"]);

    private static MixedModelData FewSales(int count) => MixedModelData.From(
        ["(Intercept)"],
        [.. Enumerable.Range(0, count).Select(_ => new[] { 1.0 })],
        [Types],
        [[.. Enumerable.Range(0, count).Select(i => i % 3)]],
        [.. Enumerable.Range(0, count).Select(i => 5 + (0.3 * i))],
        [.. Enumerable.Range(0, count).Select(i => i == 0 ? 1 : 0.25)]);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void One_to_three_rows_with_priors_give_finite_answers(int count)
    {
        var options = new MixedModelOptions { RatioPriors = [new(Math.Log(0.5), 1)], ResidualVariancePrior = new(4, 0.04) };
        MixedModelFit fit = MixedModel.Fit(FewSales(count), options);
        MixedPrediction known = fit.Predict([1], [LevelRef.Known(0)]);
        MixedPrediction unseen = fit.Predict([1], [LevelRef.Unseen]);

        Assert.True(fit.Convergence.Converged, fit.Convergence.ToString());
        Assert.True(double.IsFinite(fit.MinusTwoLogLikelihood));
        Assert.InRange(known.Mean, 4.9, 5.7);
        Assert.InRange(known.VarianceOfMean, 1e-3, 1);
        Assert.True(unseen.VarianceOfMean > known.VarianceOfMean);
        Assert.All(fit.LeaveOneOut(), left => Assert.True(left.IsDefined == count > 1));
    }

    [Fact]
    public void With_one_row_the_priors_alone_set_the_variances()
    {
        var options = new MixedModelOptions { RatioPriors = [new(Math.Log(0.5), 1)], ResidualVariancePrior = new(4, 0.04) };
        MixedModelFit fit = MixedModel.Fit(FewSales(1), options);

        // The only contrast of one row is its mean, which restricted likelihood leaves out: the prior's own modes remain.
        Near.Relative(0.04, fit.ResidualVariance, 1e-9, "residual variance");
        Near.Relative(0.5, fit.Terms[0].VarianceRatio, 1e-7, "variance ratio");
    }

    [Fact]
    public void The_estimate_is_the_mode_of_likelihood_times_prior()
    {
        GeneratedRows rows = new(50, [5], [0.5], columns: 2);
        var prior = new VarianceRatioPrior(Math.Log(0.05), 0.4);
        MixedModelFit fit = MixedModel.Fit(rows.Data(), new MixedModelOptions { RatioPriors = [prior] });

        double Penalised(double ratio) => MixedModel.Fit(rows.Data(), new MixedModelOptions { HeldRatios = [ratio] })
            .MinusTwoLogLikelihood + Math.Pow((Math.Log(ratio) - prior.LogMean) / prior.LogStandardDeviation, 2);
        double mode = fit.Terms[0].VarianceRatio;
        const double h = 1e-4;
        double slope = (Penalised(mode * Math.Exp(h)) - Penalised(mode * Math.Exp(-h))) / (2 * h);

        Near.Absolute(0, slope, 1e-5, "slope of the penalised deviance");
        Assert.InRange(mode, 0.05, MixedModel.Fit(rows.Data()).Terms[0].VarianceRatio);
    }

    [Fact]
    public void A_residual_prior_adds_its_sum_of_squares_and_degrees_of_freedom()
    {
        GeneratedRows rows = new(30, [4], [0.5], columns: 2);
        MixedModelFit plain = MixedModel.Fit(rows.Data(), new MixedModelOptions { HeldRatios = [0.7] });
        MixedModelFit guided = MixedModel.Fit(
            rows.Data(), new MixedModelOptions { HeldRatios = [0.7], ResidualVariancePrior = new(10, 2) });

        Near.Relative(((28 * plain.ResidualVariance) + 20) / 38, guided.ResidualVariance, 1e-12, "residual variance");
        Assert.Equal(plain.Coefficients[0].Estimate, guided.Coefficients[0].Estimate);
    }

    [Fact]
    public void A_prior_keeps_a_component_that_the_data_would_set_to_zero_above_it()
    {
        MixedReference reference = MixedReference.Load("03_dyestuff2_zero");
        MixedModelFit fit = MixedModel.Fit(
            reference.Data, new MixedModelOptions { RatioPriors = [new(Math.Log(0.2), 0.7)] });

        Assert.False(fit.Terms[0].AtZeroBoundary);
        Assert.InRange(fit.Terms[0].VarianceRatio, 0.01, 0.2);
    }
}
