using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>What must not matter to any of the four regressions. Row order, units of a column and levels of a random term are
/// tested with the models themselves, but for the Cox regression's, which are here.</summary>
public sealed class InvarianceTests
{
    [Theory]
    [MemberData(nameof(FourModels.Names), MemberType = typeof(FourModels))]
    public void Which_finish_is_the_base_changes_neither_likelihood_nor_fitted_values(string model) =>
        FourModels.Any.Sample(pieces =>
        {
            ModelFit first = pieces.Fit(model, [pieces.SizeColumn(), .. pieces.Finishes(0)]);
            ModelFit last = pieces.Fit(model, [pieces.SizeColumn(), .. pieces.Finishes(2)]);
            AssertSameAnswers(first, last);
            Assert.Equal(-first.Estimates["finish 2"], last.Estimates["finish 0"], 1e-5);
        }, iter: 25);

    [Theory]
    [MemberData(nameof(FourModels.Names), MemberType = typeof(FourModels))]
    public void A_constant_column_is_dropped_by_name_and_changes_nothing(string model) => FourModels.Any.Sample(pieces =>
    {
        Regressor[] columns = [pieces.SizeColumn(), .. pieces.Finishes(0)];
        Regressor workshop = new("workshop", pieces.Size.Select(_ => 0.3).ToArray());
        ModelFit with = pieces.Fit(model, [.. columns, workshop]);
        Assert.Equal<string>(["workshop"], with.Dropped);
        AssertSameAnswers(pieces.Fit(model, columns), with);
    }, iter: 25);

    [Fact]
    public void The_order_of_the_rows_does_not_matter_to_a_Cox_regression() => FourModels.Any.Sample(pieces =>
    {
        FourModels shuffled = pieces.Reordered();
        ModelFit fit = pieces.Fit("cox", [pieces.SizeColumn(), .. pieces.Finishes(0)]);
        ModelFit other = shuffled.Fit("cox", [shuffled.SizeColumn(), .. shuffled.Finishes(0)]);
        Assert.Equal(fit.LogLikelihood, other.LogLikelihood, 1e-9);
        foreach ((string name, double estimate) in fit.Estimates)
            Assert.Equal(estimate, other.Estimates[name], 1e-9);
    }, iter: 50);

    /// <summary>Only the order of the times counts, so any rising clock gives the same fit.</summary>
    [Fact]
    public void Any_clock_that_keeps_the_order_gives_the_same_Cox_regression() => FourModels.Any.Sample(pieces =>
    {
        CoxFit days = CoxRegression.Fit([pieces.SizeColumn()], pieces.Times);
        CoxFit bent = CoxRegression.Fit(
            [pieces.SizeColumn()], [.. pieces.Times.Select(time => time with { Stop = Math.Pow(time.Stop, 1.7) / 7 })]);
        Assert.Equal(days["log size"].Estimate, bent["log size"].Estimate, 1e-12);
        Assert.Equal(days.Concordance, bent.Concordance);
    }, iter: 50);

    [Fact]
    public void A_spell_cut_in_two_episodes_is_the_same_spell_to_a_Cox_regression() => FourModels.Any.Sample(pieces =>
    {
        CoxFit whole = CoxRegression.Fit([pieces.SizeColumn()], pieces.Times);
        SurvivalTime[] cut =
        [
            .. pieces.Times.Select(time => new SurvivalTime(time.Stop / 2, false)),
            .. pieces.Times.Select(time => time with { Start = time.Stop / 2 }),
        ];
        CoxFit halves = CoxRegression.Fit([new("log size", (double[])[.. pieces.Size, .. pieces.Size])], cut);
        Assert.Equal(whole["log size"].Estimate, halves["log size"].Estimate, 1e-9);
        Assert.Equal(whole.LogLikelihood, halves.LogLikelihood, 1e-9);
        Assert.Equal(whole.Concordance.Value, halves.Concordance.Value, 1e-12);
    }, iter: 50);

    [Fact]
    public void Breslow_s_weights_count_rows() => FourModels.Any.Sample(pieces =>
    {
        double[] weights = [.. pieces.Types.Select(type => type == 0 ? 2.0 : 1)];
        int[] copies = [.. weights.Index().SelectMany(row => Enumerable.Repeat(row.Index, (int)row.Item))];
        CoxFit weighted = CoxRegression.Fit([pieces.SizeColumn()], pieces.Times, weights: weights, ties: TieMethod.Breslow);
        CoxFit repeated = CoxRegression.Fit(
            [new("log size", copies.Select(i => pieces.Size[i]).ToArray())], [.. copies.Select(i => pieces.Times[i])],
            ties: TieMethod.Breslow);
        Assert.Equal(repeated["log size"].Estimate, weighted["log size"].Estimate, 1e-9);
        Assert.Equal(repeated["log size"].StandardError, weighted["log size"].StandardError, 1e-9);
    }, iter: 50);

    private static void AssertSameAnswers(ModelFit expected, ModelFit actual)
    {
        Assert.Equal(expected.LogLikelihood, actual.LogLikelihood, 1e-7);
        for (int i = 0; i < expected.Fitted.Length; i++)
            Assert.Equal(expected.Fitted[i], actual.Fitted[i], 1e-5);
    }
}
