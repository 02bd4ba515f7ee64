namespace FlipAnalytics.Statistics.Tests;

/// <summary>Quantile, survival and hazard of each law; spells that cannot be.</summary>
public sealed class FailureTimeTests
{
    [Theory]
    [InlineData(FailureDistribution.Weibull)]
    [InlineData(FailureDistribution.Lognormal)]
    [InlineData(FailureDistribution.LogLogistic)]
    [InlineData(FailureDistribution.Exponential)]
    public void TheShareRunningAtAQuantileIsOneLessItsShare(FailureDistribution distribution)
    {
        foreach (double p in new[] { 1e-6, 0.1, 0.5, 0.9, 0.999 })
        {
            double time = FailureTime.Quantile(distribution, p, 2.5, 0.7);
            Assert.Equal(1 - p, FailureTime.Survival(distribution, time, 2.5, 0.7), 1e-12);
        }

        Assert.Equal(0, FailureTime.Quantile(distribution, 0, 2.5, 0.7));
        Assert.Equal(double.PositiveInfinity, FailureTime.Quantile(distribution, 1, 2.5, 0.7));
        Assert.Equal(1, FailureTime.Survival(distribution, 0, 2.5, 0.7));
    }

    [Theory]
    [InlineData(FailureDistribution.Weibull)]
    [InlineData(FailureDistribution.Lognormal)]
    [InlineData(FailureDistribution.LogLogistic)]
    [InlineData(FailureDistribution.Exponential)]
    public void TheHazardIsTheSlopeOfTheCumulativeHazard(FailureDistribution distribution)
    {
        foreach (double time in new[] { 0.01, 2, 12, 90, 5000 })
        {
            double step = time * 1e-5;
            double slope = (FailureTime.CumulativeHazard(distribution, time + step, 2.5, 0.7)
                - FailureTime.CumulativeHazard(distribution, time - step, 2.5, 0.7)) / (2 * step);
            double hazard = FailureTime.Hazard(distribution, time, 2.5, 0.7);
            Assert.Equal(hazard, slope, 1e-6 * hazard + 1e-11);
        }
    }

    [Fact]
    public void TheUpperTailOfTheLognormalKeepsItsDigits()
    {
        // log of the upper normal tail at 10 and 40: R 4.2.2, pnorm(c(10, 40), lower.tail = FALSE, log.p = TRUE).
        Assert.Equal(53.23128515051247, FailureTime.CumulativeHazard(FailureDistribution.Lognormal, Math.Exp(10), 0, 1), 1e-11);
        Assert.Equal(804.6084420137538, FailureTime.CumulativeHazard(FailureDistribution.Lognormal, Math.Exp(40), 0, 1), 1e-10);
    }

    [Theory]
    [InlineData(5, 5)]
    [InlineData(4, 5)]
    [InlineData(5, -1)]
    [InlineData(double.NaN, 0)]
    [InlineData(double.PositiveInfinity, 0)]
    [InlineData(0, 0)]
    public void ASpellMustStopAfterItStartsAtAFiniteTime(double stop, double start)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Spell.Ended(stop, start));
        Assert.Throws<ArgumentOutOfRangeException>(() => Spell.Running(stop, start));
    }

    [Theory]
    [InlineData(0, 5)]
    [InlineData(5, 5)]
    [InlineData(5, 4)]
    [InlineData(5, double.PositiveInfinity)]
    public void AnIntervalMustHaveTwoPositiveFiniteLimitsInOrder(double lower, double upper) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Spell.EndedBetween(lower, upper));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void APriorNeedsAPositiveStandardDeviation(double standardDeviation) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new NormalPrior(0, standardDeviation));
}
