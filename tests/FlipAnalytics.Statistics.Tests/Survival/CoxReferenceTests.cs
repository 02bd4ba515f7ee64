using System.Text.Json;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against R's coxph, basehaz, concordance and cox.zph (ReferenceData/survival and ReferenceData/cox).</summary>
public sealed class CoxReferenceTests
{
    public static TheoryData<string, string> Cases()
    {
        TheoryData<string, string> cases = [];
        foreach (string name in new[] { "lung", "ovarian", "rats", "rats by sex", "relistings", "price cuts", "weighted" })
        {
            cases.Add(name, "efron");
            cases.Add(name, "breslow");
        }
        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Coefficients_errors_likelihoods_and_tests_are_R_s(string name, string ties)
    {
        CoxReference reference = CoxReference.Of(name);
        JsonElement expected = reference.Answer.GetProperty(ties);
        CoxFit fit = reference.Fit(ties);
        AssertClose(expected.GetProperty("coef"), fit.Coefficients.Select(c => c.Estimate), 1e-8, what: "coefficient");
        AssertClose(expected.GetProperty("se"), fit.Coefficients.Select(c => c.StandardError), 1e-8, what: "error");
        foreach (var (j, line) in expected.GetProperty("vcov").EnumerateArray().Index())
            AssertClose(line, fit.Covariance[j], 1e-8, 1e-8 * fit.Covariance[j][j], "covariance");
        AssertClose(Number(expected.GetProperty("loglik_null")), fit.LogLikelihoodNull, 1e-12, what: "null likelihood");
        AssertClose(Number(expected.GetProperty("loglik")), fit.LogLikelihood, 1e-12, what: "likelihood");
        AssertClose(expected.GetProperty("wald_test"), [fit.Wald.Statistic], 1e-8, what: "Wald");
        AssertClose(Number(expected.GetProperty("score_test")), fit.Score.Statistic, 1e-8, what: "score");
        AssertClose(Number(expected.GetProperty("lr_test")), fit.LikelihoodRatio.Statistic, 1e-8, what: "likelihood ratio");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Concordance_and_its_error_are_R_s(string name, string ties)
    {
        CoxReference reference = CoxReference.Of(name);
        JsonElement expected = reference.Answer.GetProperty(ties);
        Concordance found = reference.Fit(ties).Concordance;
        AssertClose(Number(expected.GetProperty("concordance")), found.Value, 0, 1e-12, "concordance");
        AssertClose(Number(expected.GetProperty("concordance_se")), found.StandardError, 0, 1e-12, "error");
        if (name == "weighted")
        {
            AssertClose(Number(expected.GetProperty("concordant")), found.Concordant, 1e-12);
            AssertClose(Number(expected.GetProperty("discordant")), found.Discordant, 1e-12);
            AssertClose(Number(expected.GetProperty("tied_score")), found.TiedInScore, 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_baseline_hazard_of_every_stratum_is_R_s(string name, string ties)
    {
        CoxReference reference = CoxReference.Of(name);
        JsonElement expected = reference.Answer.GetProperty(ties).GetProperty("baseline_cumhaz_at_x_zero");
        CoxFit fit = reference.Fit(ties);
        BaselineStep[] steps = [.. fit.Baselines.SelectMany(baseline => baseline.Steps)];
        AssertClose(expected.GetProperty("time"), steps.Select(step => step.Time), 0);
        AssertClose(expected.GetProperty("hazard"), steps.Select(step => step.CumulativeHazard), 1e-8, what: "hazard");
        if (expected.TryGetProperty("stratum", out JsonElement strata))
        {
            Assert.Equal(
                Names(strata), fit.Baselines.SelectMany(baseline => baseline.Steps.Select(_ => baseline.Stratum)));
        }
    }

    [Theory]
    [InlineData("lung", "efron")]
    [InlineData("lung", "breslow")]
    [InlineData("ovarian", "efron")]
    [InlineData("rats", "breslow")]
    [InlineData("relistings", "efron")]
    [InlineData("price cuts", "efron")]
    public void Survival_of_new_rows_is_R_s(string name, string ties)
    {
        CoxReference reference = CoxReference.Of(name);
        JsonElement expected = reference.Answer.GetProperty(ties).GetProperty("predicted_survival");
        CoxFit fit = reference.Fit(ties);
        double[][] rows = reference.NewRows();
        double[] times = Numbers(expected.GetProperty("times"));
        foreach (var (t, line) in expected.GetProperty("rows_times_by_newrow").EnumerateArray().Index())
            AssertClose(line, rows.Select(row => fit.Survival(row, times[t])), 1e-8, what: "survival");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_test_of_proportional_hazards_is_R_s(string name, string ties)
    {
        CoxReference reference = CoxReference.Of(name);
        JsonElement expected = reference.Answer.GetProperty(ties).GetProperty("ph_test_zph_km");
        ProportionalHazardsTest test = ProportionalHazardsTest.Of(reference.Fit(ties), reference.CoxTerms());
        Assert.Equal(Names(expected.GetProperty("term"))[..^1], test.Terms.Select(term => term.Name));
        ChiSquaredTest[] tests = [.. test.Terms.Select(term => term.Test), test.Global];
        AssertClose(expected.GetProperty("chisq"), tests.Select(t => t.Statistic), 1e-8, what: "statistic");
        AssertClose(expected.GetProperty("df"), tests.Select(t => (double)t.DegreesOfFreedom), 0);
        AssertClose(expected.GetProperty("p"), tests.Select(t => t.P), 1e-7, what: "p");
    }

    [Theory]
    [InlineData("efron")]
    [InlineData("breslow")]
    public void Schoenfeld_residuals_are_R_s(string ties)
    {
        CoxReference reference = CoxReference.Of("weighted");
        JsonElement expected = reference.Answer.GetProperty(ties);
        var residuals = SchoenfeldResidual.Of(reference.Fit(ties));
        AssertClose(expected.GetProperty("schoenfeld_time"), residuals.Select(residual => residual.Time), 0);
        foreach (var (i, line) in expected.GetProperty("schoenfeld").EnumerateArray().Index())
            AssertClose(line, residuals[i].Values, 0, 1e-9, $"ending {i}");
    }
}
