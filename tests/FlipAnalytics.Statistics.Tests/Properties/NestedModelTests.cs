using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>A maximum over more is never smaller: a search that stops short of the top is found out here.</summary>
public sealed class NestedModelTests
{
    [Theory]
    [MemberData(nameof(FourModels.Names), MemberType = typeof(FourModels))]
    public void Another_column_never_costs_likelihood(string model) => FourModels.Any.Sample(pieces =>
    {
        Regressor noise = new("noise", pieces.Noise);
        double size = pieces.Fit(model, pieces.SizeColumn()).LogLikelihood;
        double both = pieces.Fit(model, pieces.SizeColumn(), noise).LogLikelihood;
        double all = pieces.Fit(model, [pieces.SizeColumn(), noise, .. pieces.Finishes(1)]).LogLikelihood;
        Assert.True(both >= size - 1e-9, $"{both} after {size}");
        Assert.True(all >= both - 1e-9, $"{all} after {both}");
    }, iter: 30);

    /// <summary>The least squares fit is the mixed model whose types do not differ; the exponential law is the Weibull whose
    /// scale is 1.</summary>
    [Fact]
    public void A_freer_model_never_costs_likelihood() => FourModels.Any.Sample(pieces =>
    {
        Assert.True(pieces.Fit("mixed model", pieces.SizeColumn()).LogLikelihood
            >= pieces.Fit("least squares", pieces.SizeColumn()).LogLikelihood - 1e-9);
        FailureDistributionComparison laws = FailureDistributionComparison.Of(new(
            [Regressor.InterceptName], [.. pieces.Size.Select(_ => new[] { 1.0 })],
            [.. pieces.Times.Select(time => time.Ended ? Spell.Ended(time.Stop) : Spell.Running(time.Stop))], [], null));
        double Of(FailureDistribution law) => laws.Ranked.Single(ranked => ranked.Fit.Distribution == law).Fit.LogLikelihood;
        Assert.True(Of(FailureDistribution.Weibull) >= Of(FailureDistribution.Exponential) - 1e-9);
    }, iter: 30);
}
