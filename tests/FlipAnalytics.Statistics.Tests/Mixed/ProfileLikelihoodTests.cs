using System.Collections.Immutable;
using System.Text.Json;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Check values: ReferenceData/profile, made with lme4 (its README states what they are good to).</summary>
public sealed class ProfileLikelihoodTests
{
    private static readonly JsonElement Answers = JsonDocument.Parse(File.ReadAllText(
        Path.Combine(AppContext.BaseDirectory, "ReferenceData", "profile", "answers.json"))).RootElement;

    public static TheoryData<string> Cases =>
    [
        .. new[] { "01_penicillin", "02_dyestuff", "03_dyestuff2_zero", "04_furniture_rare_levels", "06_log_60" },
    ];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Limits_are_where_the_deviance_of_lme4_crosses_the_quantile(string name)
    {
        Check(name, "ml95", LikelihoodCriterion.Ml, 0.95, 2e-5);
        Check(name, "reml95", LikelihoodCriterion.Reml, 0.95, 2e-5);
        Check(name, "reml80", LikelihoodCriterion.Reml, 0.80, 2e-5);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Limits_by_ordinary_likelihood_agree_with_confint_as_far_as_its_splines_go(string name) =>
        Check(name, "confint", LikelihoodCriterion.Ml, 0.95, 5e-4);

    [Fact]
    public void A_standard_deviation_estimated_at_zero_has_limits_from_zero_up()
    {
        ImmutableArray<StandardDeviationLimits> limits = Limits("03_dyestuff2_zero", LikelihoodCriterion.Reml, 0.95);
        Assert.Equal("batch", limits[0].Name);
        Assert.Equal(0, limits[0].Estimate);
        Assert.Equal(0, limits[0].Limits.Low);
        Assert.InRange(limits[0].Limits.High, 2, 3);
    }

    [Fact]
    public void A_term_of_one_level_has_no_upper_limit_by_restricted_likelihood()
    {
        MixedModelFit fit = MixedModel.Fit(MixedModelData.From(
            ["(Intercept)"], [[1], [1], [1], [1]], [RandomTerm.Exchangeable("type", ["desk"])], [[0, 0, 0, 0]], [1, 2, 4, 5]));
        Assert.Equal(new Limits(0, double.PositiveInfinity), ProfileLikelihood.StandardDeviations(fit)[0].Limits);
    }

    [Fact]
    public void What_is_held_is_not_listed_and_a_prior_counts()
    {
        MixedModelData data = MixedReference.Load("06_log_60").Data;
        MixedModelFit held = MixedModel.Fit(data, new() { HeldVariances = [null, 0.01] });
        Assert.Equal(["type", ProfileLikelihood.Residual], ProfileLikelihood.StandardDeviations(held).Select(l => l.Name));
        MixedModelFit heldResidual = MixedModel.Fit(data, new() { HeldResidualVariance = 0.04 });
        Assert.Equal(["type", "color"], ProfileLikelihood.StandardDeviations(heldResidual).Select(l => l.Name));

        MixedModelFit free = MixedModel.Fit(data);
        var prior = new VarianceRatioPrior(Math.Log(free.Terms[0].VarianceRatio), 0.1);
        MixedModelFit guided = MixedModel.Fit(data, new() { RatioPriors = [prior, null] });
        Limits wide = ProfileLikelihood.StandardDeviations(free)[0].Limits;
        Limits narrow = ProfileLikelihood.StandardDeviations(guided)[0].Limits;
        Assert.True(narrow.Low > wide.Low && narrow.High < wide.High);
        Assert.True(narrow.Contains(Math.Sqrt(guided.Terms[0].Variance)));
    }

    private static void Check(string name, string answer, LikelihoodCriterion criterion, double level, double tolerance)
    {
        JsonElement expected = Answers.GetProperty(name).GetProperty(answer);
        ImmutableArray<StandardDeviationLimits> limits = Limits(name, criterion, level);
        Assert.Equal(Names(expected.GetProperty("name")), limits.Select(l => l.Name));
        AssertClose(expected.GetProperty("low"), limits.Select(l => l.Limits.Low), tolerance, what: name + " low");
        AssertClose(expected.GetProperty("high"), limits.Select(l => l.Limits.High), tolerance, what: name + " high");
        Assert.All(limits, l => Assert.True(l.Limits.Contains(l.Estimate)));
    }

    private static ImmutableArray<StandardDeviationLimits> Limits(string name, LikelihoodCriterion criterion, double level) =>
        ProfileLikelihood.StandardDeviations(
            MixedModel.Fit(MixedReference.Load(name).Data, new() { Criterion = criterion }), level);
}
