namespace FlipAnalytics.Statistics.Tests;

/// <summary>What goes into a fit is checked, and what cannot be estimated is said by name.</summary>
public sealed class MixedModelDataTests
{
    private static readonly GeneratedRows Rows = new(30, [4], [0.5], columns: 2);

    [Fact]
    public void A_column_that_earlier_ones_determine_is_dropped_and_named_and_changes_nothing()
    {
        double[][] x = [.. Rows.X.Select(row => new[] { row[0], row[1], (2.54 * row[1]) + 7, 3 })];
        MixedModelFit plain = MixedModel.Fit(Rows.Data());
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(
            ["(Intercept)", "width", "width_cm", "three"], x, Rows.Terms, Rows.Levels, Rows.Y));

        Assert.Equal("width_cm, three", string.Join(", ", fit.DroppedColumns));
        Assert.Equal(["(Intercept)", "width"], fit.Coefficients.Select(coefficient => coefficient.Name));
        Near.Absolute(plain.MinusTwoLogLikelihood, fit.MinusTwoLogLikelihood, 1e-9, "criterion");
        Near.Relative(plain.Coefficients[1].Estimate, fit.Coefficients[1].Estimate, 1e-10, "slope");
        Near.Relative(
            plain.Predict([1, 2], [LevelRef.Known(1)]).Mean, fit.Predict([1, 2, 0, 3], [LevelRef.Known(1)]).Mean, 1e-10, "mean");
    }

    [Fact]
    public void Without_a_constant_column_the_fit_agrees_with_the_dense_model()
    {
        double[][] x = [.. Rows.X.Select(row => new[] { row[1] + 2, row[1] * row[1] })];
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(["a", "b"], x, Rows.Terms, Rows.Levels, Rows.Y));
        var dense = new DenseMixedModel(
            x, Rows.Terms, Rows.Levels, Rows.Y, [.. Rows.Y.Select(_ => 1.0)], [fit.Terms[0].VarianceRatio], restricted: true)
        {
            Own = (k, i) => Rows.Levels[k][i],
        };

        Near.Absolute(dense.MinusTwoLogLikelihood, fit.MinusTwoLogLikelihood, 1e-9, "criterion");
        Near.Relative(dense.Coefficients[0], fit.Coefficients[0].Estimate, 1e-9, "a");
        Near.Relative(dense.Coefficients[1], fit.Coefficients[1].Estimate, 1e-9, "b");
        Near.Relative(
            dense.Predict([1, 1], (_, t) => t == 2 ? 1 : 0, fit.Terms[0].VarianceRatio).Variance,
            fit.Predict([1, 1], [LevelRef.Known(2)]).VarianceOfMean, 1e-9, "variance of the mean");
    }

    [Fact]
    public void Without_random_terms_the_fit_is_least_squares()
    {
        double[][] x = [[1, 0], [1, 1], [1, 2], [1, 3]];
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(["(Intercept)", "x"], x, [], [], [1, 3, 2, 6]));

        // By hand: Sxy = 7, Sxx = 5, slope 1.4, intercept 3 − 1.4·1.5 = 0.9, residual sum of squares 14 − 49/5 = 4.2.
        Near.Relative(1.4, fit.Coefficients[1].Estimate, 1e-14, "slope");
        Near.Relative(0.9, fit.Coefficients[0].Estimate, 1e-14, "intercept");
        Near.Relative(2.1, fit.ResidualVariance, 1e-13, "residual variance");
        Near.Relative(Math.Sqrt(2.1 / 5), fit.Coefficients[1].StandardError, 1e-13, "standard error");
    }

    [Fact]
    public void Two_types_of_two_pieces_by_hand()
    {
        // Balanced one way: mean squares between 9 and within 2 give σ² = 2 and a variance of (9 − 2)/2 = 3.5.
        double[] y = [2, 4, 7, 5];
        RandomTerm type = RandomTerm.Exchangeable("type", ["desk", "hutch"]);
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(
            ["(Intercept)"], [[1], [1], [1], [1]], [type], [[0, 0, 1, 1]], y));

        Near.Relative(2, fit.ResidualVariance, 1e-8, "residual variance");
        Near.Relative(3.5, fit.Terms[0].Variance, 1e-8, "variance between types");
        Near.Relative(4.5, fit.Coefficients[0].Estimate, 1e-12, "mean");

        // Shrinkage of the type means 3 and 6 towards 4.5: 2·3.5 / (2·3.5 + 2) = 7/9.
        Near.Relative(-1.5 * 7 / 9, fit.Terms[0].Levels[0].Effect, 1e-8, "desk");
    }

    [Fact]
    public void No_rows_too_few_rows_and_an_exact_fit_are_told_apart()
    {
        RandomTerm type = RandomTerm.Exchangeable("type", ["desk", "hutch"]);
        MixedModelData Data(params double[] y) => MixedModelData.From(
            ["(Intercept)"], [.. y.Select(_ => new[] { 1.0 })], [type], [[.. y.Select((_, i) => i % 2)]], y);

        Assert.Equal(0, Assert.Throws<TooFewRowsException>(() => MixedModel.Fit(Data())).Rows);
        Assert.Equal(1, Assert.Throws<TooFewRowsException>(() => MixedModel.Fit(Data(5))).Rows);
        Assert.Throws<ExactFitException>(() => MixedModel.Fit(Data(5, 5, 5)));
    }

    [Theory]
    [InlineData(double.NaN, 1, 0, "response")]
    [InlineData(1, double.PositiveInfinity, 0, "width")]
    [InlineData(1, 1, 4, "levels 0 to 3")]
    public void A_bad_value_is_refused_with_its_row_and_column(double y, double width, int level, string named)
    {
        var builder = new MixedModelDataBuilder(["(Intercept)", "width"], Rows.Terms);
        builder.Add([1, 2], [0], 3);

        string message = Assert.ThrowsAny<ArgumentException>(() => builder.Add([1, width], [level], y)).Message;
        Assert.Contains("Row 1", message, StringComparison.Ordinal);
        Assert.Contains(named, message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_weight_must_be_above_zero()
    {
        var builder = new MixedModelDataBuilder(["(Intercept)"], []);

        Assert.Throws<ArgumentOutOfRangeException>(() => builder.Add([1], [], 3, weight: 0));
    }
}
