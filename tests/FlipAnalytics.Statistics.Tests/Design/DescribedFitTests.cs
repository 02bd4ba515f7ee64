using System.Collections.Immutable;
using System.Text.Json;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Fits through descriptions against the answers of R (ReferenceData/ols, lmm and aft).</summary>
public sealed class DescribedFitTests
{
    [Theory]
    [InlineData("ols/01_mtcars")]
    [InlineData("ols/02_cars93_log_price")]
    [InlineData("ols/03_boston")]
    [InlineData("ols/04_diamonds_price")]
    [InlineData("ols/05_aliased_columns")]
    [InlineData("ols/06_weighted")]
    public void Least_squares_through_a_description_has_R_s_columns_levels_and_numbers(string name)
    {
        var reference = new ReferenceCase(name);
        ModelDescription description = DescribedReference.DescriptionOf(name);
        DescribedLeastSquares described = description.FitLeastSquares(DescribedReference.DataOf(reference, description));

        Assert.Empty(described.Design.LeftOut);
        Assert.Equal(Names(reference.At("design_columns")), described.Design.ColumnNames);
        foreach (CategoryLevels levels in described.Design.Categories)
        {
            Assert.Equal(
                Names(reference.At("factor_levels_base_first").GetProperty(levels.Column)),
                levels.OtherLevels.Prepend(levels.BaseLevel));
        }

        Assert.Equal(Names(reference.At("aliased")), described.Fit.DroppedColumns);
        AssertClose(Number(reference.At("log_lik")), described.Fit.LogLikelihood, 1e-9);
        foreach (Coefficient coefficient in described.Fit.Coefficients)
        {
            AssertClose(Number(reference.At("coefficients").GetProperty(coefficient.Name)), coefficient.Estimate, 1e-9);
        }

        ImmutableArray<LinearPrediction> predictions =
            described.Predict(DescribedReference.NewRowsOf(reference, description), 0.95);
        AssertClose(reference.At("prediction/fit"), predictions.Select(p => p.Fit), 1e-9);
        AssertClose(reference.At("prediction/pi95_high"), predictions.Select(p => p.Range.High), 1e-9);
    }

    [Theory]
    [InlineData("lmm/01_penicillin")]
    [InlineData("lmm/02_dyestuff")]
    [InlineData("lmm/03_dyestuff2_zero")]
    [InlineData("lmm/04_furniture_rare_levels")]
    [InlineData("lmm/05_furniture_zero_colour")]
    [InlineData("lmm/06_log_60")]
    [InlineData("lmm/07_log_300")]
    [InlineData("lmm/08_log_3000")]
    public void A_mixed_model_through_a_description_has_lme4_s_rows_and_numbers(string name)
    {
        var reference = new ReferenceCase(name);
        ModelDescription description = DescribedReference.DescriptionOf(name);
        DataColumns data = DescribedReference.DataOf(reference, description);
        foreach (LikelihoodCriterion criterion in Enum.GetValues<LikelihoodCriterion>())
        {
            DescribedMixedModel described = description.FitMixed(data, new() { Criterion = criterion });
            JsonElement answer = reference.At(criterion == LikelihoodCriterion.Reml ? "reml" : "ml");

            Assert.Equal(reference.At("n").GetInt32(), described.Fit.ObservationCount);
            Assert.Equal(data.RowCount, described.Design.Rows.Length + described.Design.LeftOut.Length);
            AssertClose(answer.GetProperty("beta"), described.Fit.Coefficients.Select(c => c.Estimate), 1e-6);
            AssertClose(answer.GetProperty("se"), described.Fit.Coefficients.Select(c => c.StandardError), 1e-6);
            foreach (RandomTermEstimate term in described.Fit.Terms)
            {
                AssertClose(
                    Number(answer.GetProperty("variance_components").GetProperty(term.Name)), term.Variance, 1e-6, 1e-8);
                Assert.Equal(
                    Names(At(answer, $"random/{term.Name}/level")), term.Levels.Select(level => level.Level));
            }

            ImmutableArray<MixedPrediction> predictions =
                described.Predict(DescribedReference.NewRowsOf(reference, description));
            AssertClose(At(answer, "prediction/mean"), predictions.Select(p => p.Mean), 1e-6);
            AssertClose(
                At(answer, "prediction/sd_new_observation"), predictions.Select(p => Math.Sqrt(p.VarianceOfObservation)), 1e-6);
        }
    }

    [Fact]
    public void A_duration_model_through_a_description_has_survreg_s_numbers_and_leaves_gaps_out()
    {
        JsonElement answer = AftReference.Answers("answers.json").GetProperty("lung").GetProperty("weibull");
        AcceleratedFailureData rows = AftReference.Episodes("lung");
        double[] Column(int j) => [.. rows.X.Select(row => row[j])];
        DataColumns data = DataColumns.Empty
            .With("age", Column(1).Append(double.NaN))
            .With("sex", Column(2).Select(male => male == 1 ? "m" : "f").Append("m"))
            .With("ecog", Column(3).Append(1))
            .With("loss", Column(4).Append(0));
        var description = new ModelDescription(
            new("days", Transformation.Log), new Term.Intercept(), new Term.Number("age"), new Term.Category("sex"),
            new Term.Number("ecog"), new Term.Number("loss"));

        DescribedAcceleratedFailure described = description.FitAcceleratedFailure(data, [.. rows.Spells, Spell.Ended(5)]);

        Assert.Equal(rows.CoefficientNames.AsEnumerable(), described.Design.ColumnNames);
        Assert.Equal($"row {rows.X.Length}: 'age' is missing", Assert.Single(described.Design.LeftOut).ToString());
        AssertClose(answer.GetProperty("coef"), described.Fit.Coefficients.Select(c => c.Estimate), 0, 1e-6);
        double[][] newRows = AftReference.NewRows("lung");
        DataColumns coming = DataColumns.Empty
            .With("age", newRows.Select(row => row[1])).With("sex", newRows.Select(row => row[2] == 1 ? "m" : "f"))
            .With("ecog", newRows.Select(row => row[3])).With("loss", newRows.Select(row => row[4]));
        AssertClose(answer.GetProperty("linear_predictor"), described.Predict(coming).Select(p => p.Location), 1e-6);
    }

    [Fact]
    public void Random_intercepts_of_durations_are_groups_and_a_level_never_seen_adds_their_variance()
    {
        AcceleratedFailureData rows = AftReference.Episodes("log-300");
        string[] types = [.. rows.X.Select((_, i) => "type" + (i * 7 % 5))];
        DataColumns data = DataColumns.Empty.With("asking", rows.X.Select(row => Math.Exp(row[1]))).With("type", types);
        var description = new ModelDescription(
            new("days", Transformation.Log), new Term.Intercept(), new Term.Transformed("asking", Transformation.Log),
            new Term.RandomIntercept("type"));
        var options = new AcceleratedFailureOptions { LogGroupVariancePriors = [new NormalPrior(-2, 0.5)] };

        DescribedAcceleratedFailure described = description.FitAcceleratedFailure(data, rows.Spells, options);
        string[] levels = [.. types.Distinct().Order(StringComparer.Ordinal)];
        AcceleratedFailureFit direct = AcceleratedFailure.Fit(
            new(["(Intercept)", "log(asking)"], [.. rows.X.Select(row => new[] { 1, Math.Log(Math.Exp(row[1])) })], rows.Spells,
                [new("type", [.. levels], [.. types.Select(type => Array.IndexOf(levels, type))])], null),
            options);

        Assert.Equal(direct.Coefficients.AsEnumerable(), described.Fit.Coefficients);
        FailurePrediction unseen = described.Predict(
            DataColumns.Empty.With("asking", [Math.E]).With("type", ["hutch"]))[0];
        Assert.Equal(direct.Predict([1, 1], [GroupLevel.Unseen]), unseen);
        Assert.True(direct.Groups[0].Variance > 0);
    }

    [Fact]
    public void A_random_walk_through_a_description_is_the_walk_over_the_positions_found()
    {
        double[] months = [0, 0, 1, 1, 3, 3, 4, 4, 6, 6];
        double[] price = [5.0, 5.2, 5.1, 5.4, 5.6, 5.5, 5.9, 5.7, 6.1, 6.0];
        var description = new ModelDescription(new("price"), new Term.Intercept(), new Term.RandomWalk("month"));
        DescribedMixedModel described = description.FitMixed(DataColumns.Empty.With("month", months).With("price", price));
        MixedModelFit direct = MixedModel.Fit(MixedModelData.From(
            ["(Intercept)"], [.. price.Select(_ => new[] { 1.0 })],
            [RandomTerm.RandomWalk("month", ["0", "1", "3", "4", "6"], [0, 1, 3, 4, 6])],
            [[0, 0, 1, 1, 2, 2, 3, 3, 4, 4]], price));

        Assert.True(direct.Terms[0].Variance > 0);
        Assert.Equal(direct.Terms[0].Variance, described.Fit.Terms[0].Variance);
        Assert.Equal(
            direct.Predict([1], [LevelRef.AtPosition(2)]), described.Predict(DataColumns.Empty.With("month", [2.0]))[0]);
    }
}
