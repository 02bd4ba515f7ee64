using MathNet.Numerics.Integration;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Shrunk group effects: their likelihood, their variance, and how far they are pulled in.</summary>
public sealed class AcceleratedFailureGroupTests
{
    private static readonly AcceleratedFailureData ThreeColours = new(
        ["(Intercept)"],
        [.. Enumerable.Repeat(new[] { 1.0 }, 9)],
        [
            Spell.Ended(3), Spell.Ended(5), Spell.Ended(4), Spell.Ended(30), Spell.Ended(21),
            Spell.Ended(45), Spell.Ended(9), Spell.Ended(14), Spell.Ended(12),
        ],
        [new GroupColumn("colour", ["white", "navy", "sage"], [0, 0, 0, 1, 1, 1, 2, 2, 2])],
        null);

    [Fact]
    public void WithNormalErrorsAndNothingCensoredTheIntegralOverTheEffectsIsExact()
    {
        AcceleratedFailureFit fit = Fit(ThreeColours, FailureDistribution.Lognormal);
        Assert.False(fit.Groups[0].AtZeroBoundary);
        Assert.Equal(IntegrateEffects(fit), fit.MarginalLogLikelihood, 1e-7);
    }

    [Theory]
    [InlineData(FailureDistribution.Weibull)]
    [InlineData(FailureDistribution.LogLogistic)]
    [InlineData(FailureDistribution.Exponential)]
    public void WithOtherErrorsTheIntegralOverTheEffectsIsNearWithThreePiecesAColour(FailureDistribution distribution)
    {
        AcceleratedFailureFit fit = Fit(ThreeColours, distribution);
        Assert.False(fit.Groups[0].AtZeroBoundary);
        // Laplace's relative error is of order one over the pieces in a level: a few hundredths of a unit here.
        Assert.Equal(IntegrateEffects(fit), fit.MarginalLogLikelihood, 0.08);
    }

    [Fact]
    public void TheIntegralOverEverythingIsNearTheOneByGrid()
    {
        AcceleratedFailureFit fit = Fit(ThreeColours, FailureDistribution.Exponential);
        double variance = fit.Groups[0].Variance;
        // ∫ ∏ₗ [∫ L(β + u) N(u; 0, τ²) du] dβ: given β the colours are independent.
        double brute = Math.Log(GaussLegendreRule.Integrate(beta =>
            Math.Exp(Enumerable.Range(0, 3).Sum(l => LogIntegralOfLevel(fit.Distribution, l, beta, 1, variance)) + 40), -3, 9, 200)) - 40;
        Assert.Equal(brute, fit.RestrictedMarginalLogLikelihood, 0.1);
    }

    [Theory]
    [InlineData(FailureDistribution.Weibull)]
    [InlineData(FailureDistribution.Lognormal)]
    [InlineData(FailureDistribution.LogLogistic)]
    public void TheVarianceIsWhereTheMarginalLikelihoodIsGreatest(FailureDistribution distribution)
    {
        AcceleratedFailureData data = new SyntheticSpells(11).Draw(150, [0.7, -0.6, 0.1, -0.4, 0.5, 0], 0.8, 80);
        AcceleratedFailureFit best = Fit(data, distribution);
        double logVariance = Math.Log(best.Groups[0].Variance);
        Assert.Equal(best.RestrictedMarginalLogLikelihood, AtVariance(data, distribution, logVariance).RestrictedMarginalLogLikelihood, 1e-8);
        foreach (double away in new[] { -1, -0.05, 0.05, 1 })
        {
            Assert.True(AtVariance(data, distribution, logVariance + away).RestrictedMarginalLogLikelihood
                < best.RestrictedMarginalLogLikelihood - 1e-6);
        }
    }

    [Fact]
    public void KnownCoefficientsScaleAndSpreadAreFoundAgain()
    {
        var source = new SyntheticSpells(2024);
        double[] effects = [.. Enumerable.Range(0, 60).Select(_ => 0.4 * source.Normal())];
        AcceleratedFailureFit fit = Fit(source.Draw(6000, effects, 0.8, 120), FailureDistribution.Weibull);
        Assert.InRange(fit.Coefficients[1].Estimate, 0.5 - 3 * fit.Coefficients[1].StandardError, 0.5 + 3 * fit.Coefficients[1].StandardError);
        Assert.Equal(Math.Log(0.8), fit.LogScale, 3 * Math.Sqrt(fit.VarianceOfLogScale));
        // A variance of 60 draws has a relative standard error of √(2/59) = 0.18.
        Assert.InRange(fit.Groups[0].Variance / 0.16, 1 - 3 * 0.18, 1 + 3 * 0.18);
        double[] distances = [.. fit.Groups[0].Levels.Select((level, l) =>
            (level.Effect + fit.Coefficients[0].Estimate - 3 - effects[l]) / level.StandardError)];
        Assert.InRange(distances.Average(d => d * d), 0.5, 1.5);
    }

    [Fact]
    public void AColourSeenOnceIsPulledInMoreThanOneSeenOften()
    {
        double[][] x = [.. Enumerable.Repeat(new[] { 1.0 }, 31)];
        double[] factors = [0.25, 1, 4];
        Spell[] spells = [.. Enumerable.Range(0, 31).Select(row => Spell.Ended((row is < 15 or 30 ? 40 : 5) * factors[(row + row / 30) % 3]))];
        int[] level = [.. Enumerable.Range(0, 31).Select(row => row / 15)];
        var data = new AcceleratedFailureData(["(Intercept)"], x, [.. spells], [new GroupColumn("colour", ["often", "fast", "once"], level)], null);
        FailureTimeGroup group = Fit(data, FailureDistribution.Lognormal).Groups[0];
        Assert.True(group.Levels[2].Effect > 0);
        Assert.True(group.Levels[2].Effect < 0.9 * group.Levels[0].Effect);
        Assert.True(group.Levels[2].StandardError > group.Levels[1].StandardError);
    }

    [Fact]
    public void ALevelNoRowHasGetsNoEffectAndTheWholeSpread()
    {
        AcceleratedFailureData data = ThreeColours with
        {
            Groups = [ThreeColours.Groups[0] with { Levels = ["white", "navy", "sage", "blush"] }],
        };
        FailureTimeGroup group = Fit(data, FailureDistribution.Weibull).Groups[0];
        Assert.Equal(0, group.Levels[3].Effect, 1e-12);
        Assert.Equal(Math.Sqrt(group.Variance), group.Levels[3].StandardError, 1e-9);
    }

    [Fact]
    public void WithAHugeVarianceTheEffectsAreThoseOfDummyColumns()
    {
        AcceleratedFailureFit fixedEffects = AcceleratedFailure.Fit(
            ThreeColours with
            {
                CoefficientNames = ["(Intercept)", "navy", "sage"],
                X = [.. ThreeColours.Groups[0].Level.Select(l => new double[] { 1, l == 1 ? 1 : 0, l == 2 ? 1 : 0 })],
                Groups = [],
            },
            new AcceleratedFailureOptions());
        AcceleratedFailureFit shrunk = AtVariance(ThreeColours, FailureDistribution.Weibull, Math.Log(1e7));
        double[] effects = [.. shrunk.Groups[0].Levels.Select(level => level.Effect)];
        Assert.Equal(fixedEffects.Coefficients[1].Estimate, effects[1] - effects[0], 1e-5);
        Assert.Equal(fixedEffects.Coefficients[2].Estimate, effects[2] - effects[0], 1e-5);
        Assert.Equal(fixedEffects.LogScale, shrunk.LogScale, 1e-5);
    }

    [Fact]
    public void ColoursThatDoNotDifferGetAVarianceOfExactlyZeroAndTheFitWithoutThem()
    {
        AcceleratedFailureData data = ThreeColours with { Groups = [ThreeColours.Groups[0] with { Level = [0, 1, 2, 0, 1, 2, 0, 1, 2] }] };
        AcceleratedFailureFit fit = Fit(data, FailureDistribution.Weibull);
        AcceleratedFailureFit without = Fit(data with { Groups = [] }, FailureDistribution.Weibull);
        Assert.True(fit.Groups[0].AtZeroBoundary);
        Assert.Equal(0, fit.Groups[0].Variance);
        Assert.All(fit.Groups[0].Levels, level => Assert.Equal(0, level.Effect));
        Assert.Equal(without.LogLikelihood, fit.LogLikelihood, 1e-9);
        Assert.Equal(without.Coefficients[0].Estimate, fit.Coefficients[0].Estimate, 1e-9);
        Assert.Equal(without.RestrictedMarginalLogLikelihood, fit.RestrictedMarginalLogLikelihood, 1e-9);
    }

    [Fact]
    public void APriorOnTheLogVarianceKeepsItOffZero()
    {
        AcceleratedFailureData data = ThreeColours with { Groups = [ThreeColours.Groups[0] with { Level = [0, 1, 2, 0, 1, 2, 0, 1, 2] }] };
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(
            data, new AcceleratedFailureOptions { LogGroupVariancePriors = [new NormalPrior(Math.Log(0.05), 1)] });
        Assert.False(fit.Groups[0].AtZeroBoundary);
        Assert.InRange(fit.Groups[0].Variance, 0.001, 0.05);
    }

    [Fact]
    public void OfTwoGroupingsTheOneThatMattersIsKeptAndRowsInNoLevelHaveNoEffect()
    {
        int[] shuffled = [0, 1, 2, 0, 1, 2, -1, -1, -1];
        AcceleratedFailureFit fit = Fit(
            ThreeColours with { Groups = [new GroupColumn("finish", ["wax", "satin", "matte"], shuffled), ThreeColours.Groups[0]] },
            FailureDistribution.LogLogistic);
        AcceleratedFailureFit alone = Fit(ThreeColours, FailureDistribution.LogLogistic);
        Assert.True(fit.Groups[0].AtZeroBoundary);
        Assert.Equal(alone.Groups[0].Variance, fit.Groups[1].Variance, 1e-5);
        Assert.Equal(alone.MarginalLogLikelihood, fit.MarginalLogLikelihood, 1e-8);
        Assert.Equal<string>(["(Intercept)", "colour:white", "colour:navy", "colour:sage", "log(scale)"], fit.CovarianceOrder.ToArray());
        Assert.Equal(
            fit.Coefficients[0].Estimate + fit.Groups[1].Levels[2].Effect,
            fit.Predict([1], [GroupLevel.Known(1), GroupLevel.Known(2)]).Location, 1e-12);
    }

    [Fact]
    public void PredictionsAddTheKnownEffectOrTheUnseenSpreadOrNothing()
    {
        AcceleratedFailureFit fit = Fit(ThreeColours, FailureDistribution.Weibull);
        FailurePrediction none = fit.Predict([1], [GroupLevel.None]);
        FailurePrediction unseen = fit.Predict([1], [GroupLevel.Unseen]);
        FailurePrediction navy = fit.Predict([1], [GroupLevel.Known(1)]);
        Assert.Equal(none, fit.Predict([1]));
        Assert.Equal(none.Location, unseen.Location);
        Assert.Equal(none.VarianceOfLocation + fit.Groups[0].Variance, unseen.VarianceOfLocation, 1e-12);
        Assert.Equal(none.Location + fit.Groups[0].Levels[1].Effect, navy.Location, 1e-12);
        int row = fit.CovarianceOrder.IndexOf("colour:navy");
        Assert.Equal(fit.Covariance[0][0] + 2 * fit.Covariance[0][row] + fit.Covariance[row][row], navy.VarianceOfLocation, 1e-12);
        Assert.Equal(fit.Covariance[0][^1] + fit.Covariance[row][^1], navy.Covariance, 1e-12);
        Assert.True(navy.VarianceOfLocation < unseen.VarianceOfLocation);
    }

    private static AcceleratedFailureFit Fit(AcceleratedFailureData data, FailureDistribution distribution) =>
        AcceleratedFailure.Fit(data, new AcceleratedFailureOptions { Distribution = distribution });

    private static AcceleratedFailureFit AtVariance(AcceleratedFailureData data, FailureDistribution distribution, double logVariance) =>
        AcceleratedFailure.Fit(data, new AcceleratedFailureOptions
        {
            Distribution = distribution,
            LogGroupVariancePriors = [new NormalPrior(logVariance, 1e-7)],
        });

    private static double IntegrateEffects(AcceleratedFailureFit fit) =>
        Enumerable.Range(0, 3).Sum(level => LogIntegralOfLevel(
            fit.Distribution, level, fit.Coefficients[0].Estimate, fit.Scale, fit.Groups[0].Variance));

    // log ∫ ∏ f(t | location + u) N(u; 0, τ²) du, with f = hazard · survival.
    private static double LogIntegralOfLevel(FailureDistribution distribution, int level, double location, double scale, double variance)
    {
        double[] times = [.. ThreeColours.Spells.Where((_, row) => ThreeColours.Groups[0].Level[row] == level).Select(spell => spell.Stop)];
        double reach = 9 * Math.Sqrt(variance);
        return Math.Log(GaussLegendreRule.Integrate(
            u => Math.Exp(-u * u / (2 * variance)) / Math.Sqrt(2 * Math.PI * variance) * times.Aggregate(1.0, (product, t) =>
                product * FailureTime.Hazard(distribution, t, location + u, scale) * FailureTime.Survival(distribution, t, location + u, scale)),
            -reach, reach, 400));
    }
}
