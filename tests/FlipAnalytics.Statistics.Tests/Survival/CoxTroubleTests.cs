namespace FlipAnalytics.Statistics.Tests;

/// <summary>What a Cox regression says when the data do not settle an answer.</summary>
public sealed class CoxTroubleTests
{
    private static readonly SurvivalTime[] Times =
        [new(2, true), new(3, true), new(5, true), new(7, false), new(8, true), new(9, true)];

    private static readonly Regressor Size = new("size", new double[] { 3, 1, 4, 1, 5, 2 });

    [Fact]
    public void A_colour_whose_pieces_all_sold_before_the_others_is_named()
    {
        Regressor sage = new("sage", new double[] { 1, 1, 0, 0, 0, 0 });
        var refused = Assert.Throws<NoEstimateException>(() => CoxRegression.Fit([Size, sage], Times));
        Assert.Contains("'sage'", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("'size'", refused.Message, StringComparison.Ordinal);
        Assert.Contains("merge its level", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_colour_of_which_nothing_sold_is_named()
    {
        Regressor unsold = new("white", new double[] { 0, 0, 0, 1, 0, 0 });
        Assert.Contains(
            "'white'", Assert.Throws<NoEstimateException>(() => CoxRegression.Fit([unsold, Size], Times)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Without_endings_there_is_no_estimate()
    {
        var refused = Assert.Throws<NoEstimateException>(
            () => CoxRegression.Fit([Size], [.. Times.Select(time => time with { Ended = false })]));
        Assert.Contains("None of the 6 spells ended", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Dependent_and_constant_columns_are_dropped_and_named()
    {
        Regressor[] columns =
        [
            new("one", new double[] { 0.1, 0.1, 0.1, 0.1, 0.1, 0.1 }), Size,
            new("size in cm", Size.Values.ToArray().Select(x => 2.54 * x + 7).ToArray()),
        ];
        CoxFit fit = CoxRegression.Fit(columns, Times);
        Assert.Equal<string>(["one", "size in cm"], fit.DroppedColumns);
        Assert.Equal(CoxRegression.Fit([Size], Times).LogLikelihood, fit.LogLikelihood, 1e-12);
        Assert.Equal(fit.LogRelativeHazard([0.1, 4, 17]), fit.LogRelativeHazard([8, 4, 0]));
    }

    [Fact]
    public void A_column_that_only_differs_between_strata_is_dropped_and_alone_refused()
    {
        string[] strata = ["barn", "barn", "barn", "shed", "shed", "shed"];
        Regressor shed = new("shed", new double[] { 0, 0, 0, 1, 1, 1 });
        Assert.Equal<string>(["shed"], CoxRegression.Fit([shed, Size], Times, strata).DroppedColumns);
        Assert.Contains(
            "'shed'", Assert.Throws<NoEstimateException>(() => CoxRegression.Fit([shed], Times, strata)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_input_is_refused_with_its_place()
    {
        static void Refused(string said, Action fit) =>
            Assert.Contains(said, Assert.ThrowsAny<ArgumentException>(fit).Message, StringComparison.Ordinal);
        Refused("'size', row 2", () => CoxRegression.Fit([new("size", new double[] { 1, 2, double.NaN, 4, 5, 6 })], Times));
        Refused("2 values", () => CoxRegression.Fit([new("size", new double[] { 1, 2 })], Times));
        Refused("'size'; give", () => CoxRegression.Fit([Size, Size], Times));
        Refused("weight -1", () => CoxRegression.Fit([Size], Times, weights: [1, 1, -1, 1, 1, 1]));
        Refused("no columns", () => CoxRegression.Fit([], Times));
        Refused("'barn'", () => CoxRegression.Fit([Size], Times, ["a", "a", "b", "b", "b", "a"]).Survival([1], 3, "barn"));
        Refused("2 values where", () => CoxRegression.Fit([Size], Times).LogRelativeHazard([1, 2]));
        Refused("no pair", () => Concordance.Of([new(1, false), new(2, true)], [1, 2]));
    }

    /// <summary>One piece has e¹⁴ times the hazard of the others, and is followed only while nothing ends: leaving it out
    /// changes nothing but must not be felt in the last digits either.</summary>
    [Fact]
    public void A_huge_hazard_that_leaves_the_risk_set_spoils_no_digit()
    {
        SurvivalTime[] times = [.. Times, new(3.6, 4.2, true), new(3.5, 4, false)];
        double[] sizes = [.. Size.Values.ToArray(), 2, 400];
        CoxFit without = CoxRegression.Fit([new("size", sizes.AsMemory(0, 7))], times[..^1]);
        CoxFit with = CoxRegression.Fit([new("size", sizes)], times);
        Assert.Equal(without["size"].Estimate, with["size"].Estimate, 1e-9);
        Assert.Equal(without.LogLikelihood, with.LogLikelihood, 1e-9);
    }

    /// <summary>Three painted pieces among 200 sell first, second and sixtieth. At 0 the slope is 2.6 and the information 0.37,
    /// so Newton's step of 7 says that the third should never have lasted, and costs a hundred of log-likelihood.</summary>
    [Fact]
    public void A_step_too_long_is_halved_until_it_gains()
    {
        SurvivalTime[] times = [.. Enumerable.Range(1, 200).Select(day => new SurvivalTime(day, true))];
        double[] painted = [.. times.Select((_, i) => i is 0 or 1 or 59 ? 1.0 : 0)];
        Assert.True(PartialLogLikelihood(times, painted, 7) < PartialLogLikelihood(times, painted, 0) - 50);
        CoxFit fit = CoxRegression.Fit([new("painted", painted)], times);
        double b = fit["painted"].Estimate;
        Assert.Equal(fit.LogLikelihood, PartialLogLikelihood(times, painted, b), 1e-9);
        foreach (double step in new[] { -1e-4, 1e-4 })
            Assert.True(fit.LogLikelihood > PartialLogLikelihood(times, painted, b + step));
    }

    /// <summary>The definition, for spells that all stop on different days.</summary>
    private static double PartialLogLikelihood(SurvivalTime[] times, double[] x, double b) => times.Select((time, i) => time.Ended
        ? x[i] * b - Math.Log(times.Select((other, j) => other.Stop >= time.Stop ? Math.Exp(x[j] * b) : 0).Sum())
        : 0).Sum();
}
