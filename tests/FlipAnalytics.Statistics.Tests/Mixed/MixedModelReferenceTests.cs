using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Check values: ReferenceData/lmm, made with lme4 and dense matrices (its README states the tolerances).</summary>
public sealed class MixedModelReferenceTests
{
    public static TheoryData<string, LikelihoodCriterion> Cases
    {
        get
        {
            var cases = new TheoryData<string, LikelihoodCriterion>();
            foreach (string name in new[]
            {
                "01_penicillin", "02_dyestuff", "03_dyestuff2_zero", "04_furniture_rare_levels",
                "05_furniture_zero_colour", "06_log_60", "07_log_300", "08_log_3000",
            })
            {
                cases.Add(name, LikelihoodCriterion.Reml);
                cases.Add(name, LikelihoodCriterion.Ml);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Criterion_and_variances_agree_with_lme4(string name, LikelihoodCriterion criterion)
    {
        (MixedReference reference, MixedModelFit fit, JsonElement answer) = Fit(name, criterion);

        Assert.True(fit.Convergence.Converged, fit.Convergence.ToString());
        Assert.Equal(reference.Answer.GetProperty("n").GetInt32(), fit.ObservationCount);
        Near.Absolute(
            answer.GetProperty("criterion_minus2loglik").GetDouble(), fit.MinusTwoLogLikelihood, 1e-6, "-2 log-likelihood");
        JsonElement variances = answer.GetProperty("variance_components");
        Near.Relative(variances.GetProperty("Residual").GetDouble(), fit.ResidualVariance, 1e-6, "residual variance");
        foreach (RandomTermEstimate term in fit.Terms)
        {
            bool atZero = answer.GetProperty("at_zero_boundary").GetProperty(term.Name).GetBoolean();
            Assert.Equal(atZero, term.AtZeroBoundary);
            Near.Relative(variances.GetProperty(term.Name).GetDouble(), term.Variance, 1e-6, term.Name);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Coefficients_and_their_covariance_agree_with_lme4(string name, LikelihoodCriterion criterion)
    {
        (MixedReference reference, MixedModelFit fit, JsonElement answer) = Fit(name, criterion);

        Assert.Equal(reference.Columns, fit.Coefficients.Select(coefficient => coefficient.Name));
        Assert.Empty(fit.DroppedColumns);
        for (int i = 0; i < fit.Coefficients.Length; i++)
        {
            MixedCoefficient coefficient = fit.Coefficients[i];
            Near.Relative(
                answer.GetProperty("beta").GetProperty(coefficient.Name).GetDouble(), coefficient.Estimate, 1e-6,
                coefficient.Name);
            Near.Relative(
                answer.GetProperty("se").GetProperty(coefficient.Name).GetDouble(), coefficient.StandardError, 1e-6,
                coefficient.Name + " standard error");
            for (int j = 0; j < fit.Coefficients.Length; j++)
            {
                double scale = coefficient.StandardError * fit.Coefficients[j].StandardError;
                Near.Absolute(
                    answer.GetProperty("vcov_beta")[i][j].GetDouble(), fit.CoefficientCovariance[i][j], 1e-6 * scale,
                    $"covariance {i},{j}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Level_effects_and_their_variances_agree_with_lme4(string name, LikelihoodCriterion criterion)
    {
        (_, MixedModelFit fit, JsonElement answer) = Fit(name, criterion);

        double residualDeviation = Math.Sqrt(fit.ResidualVariance);
        foreach (RandomTermEstimate term in fit.Terms)
        {
            JsonElement expected = answer.GetProperty("random").GetProperty(term.Name);
            Assert.Equal(
                expected.GetProperty("level").EnumerateArray().Select(level => level.GetString()),
                term.Levels.Select(level => level.Level));
            for (int t = 0; t < term.Levels.Length; t++)
            {
                RandomLevelEstimate level = term.Levels[t];
                Near.Absolute(
                    expected.GetProperty("blup")[t].GetDouble(), level.Effect, 1e-6 * residualDeviation, level.Level);
                Near.Relative(
                    expected.GetProperty("conditional_variance")[t].GetDouble(), level.ConditionalVariance, 1e-6,
                    level.Level + " conditional variance");
                Near.Relative(
                    expected.GetProperty("prediction_error_variance")[t].GetDouble(), level.PredictionErrorVariance, 1e-6,
                    level.Level + " prediction error variance");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Predictions_with_known_and_unseen_levels_agree_with_lme4(string name, LikelihoodCriterion criterion)
    {
        (MixedReference reference, MixedModelFit fit, JsonElement answer) = Fit(name, criterion);

        JsonElement expected = answer.GetProperty("prediction");
        int i = 0;
        foreach ((double[] x, LevelRef[] levels) in reference.NewRows())
        {
            MixedPrediction prediction = fit.Predict(x, levels);
            Near.Absolute(
                expected.GetProperty("mean")[i].GetDouble(), prediction.Mean, 1e-6 * Math.Sqrt(fit.ResidualVariance), "mean");
            Near.Relative(
                expected.GetProperty("variance_of_linear_predictor")[i].GetDouble(), prediction.VarianceOfMean, 1e-6,
                "variance of the mean");
            Near.Relative(
                expected.GetProperty("sd_new_observation")[i].GetDouble(), Math.Sqrt(prediction.VarianceOfObservation), 1e-6,
                "standard deviation of an observation");
            i++;
        }
    }

    private static (MixedReference Reference, MixedModelFit Fit, JsonElement Answer) Fit(
        string name, LikelihoodCriterion criterion)
    {
        MixedReference reference = MixedReference.Load(name);
        MixedModelFit fit = MixedModel.Fit(reference.Data, new MixedModelOptions { Criterion = criterion });
        return (reference, fit, reference.Answer.GetProperty(criterion == LikelihoodCriterion.Reml ? "reml" : "ml"));
    }
}
