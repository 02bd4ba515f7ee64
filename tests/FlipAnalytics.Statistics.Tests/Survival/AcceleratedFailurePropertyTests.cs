using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>What must not change a fit, or must change it in a known way.</summary>
public sealed class AcceleratedFailurePropertyTests
{
    private static readonly Gen<(uint Seed, FailureDistribution Distribution)> Fits = Gen.Select(
        Gen.UInt, Gen.Int[0, 3].Select(index => (FailureDistribution)index));

    [Fact]
    public void SplittingASpellIntoEpisodesWithTheSameCovariatesChangesNothing() => Fits.Sample(given =>
    {
        AcceleratedFailureData whole = Draw(given.Seed);
        var source = new SyntheticSpells(given.Seed + 1UL);
        var x = new List<double[]>();
        var spells = new List<Spell>();
        var level = new List<int>();
        for (int row = 0; row < whole.X.Length; row++)
        {
            Spell spell = whole.Spells[row];
            double cut = spell.Stop * source.Uniform();
            spells.Add(Spell.Running(cut));
            spells.Add(spell.Kind == SpellKind.Ended ? Spell.Ended(spell.Stop, cut) : Spell.Running(spell.Stop, cut));
            x.AddRange([whole.X[row], whole.X[row]]);
            level.AddRange([whole.Groups[0].Level[row], whole.Groups[0].Level[row]]);
        }

        var split = new AcceleratedFailureData(
            whole.CoefficientNames, [.. x], [.. spells], [whole.Groups[0] with { Level = [.. level] }], null);
        AssertSameFit(Fit(whole, given.Distribution), Fit(split, given.Distribution), 0, 0);
    }, iter: 30);

    [Fact]
    public void CountingInWeeksInsteadOfDaysShiftsTheInterceptOnly() => Fits.Sample(given =>
    {
        AcceleratedFailureData days = Draw(given.Seed);
        AcceleratedFailureData weeks = days with
        {
            Spells = [.. days.Spells.Select(spell => spell.Kind == SpellKind.Ended ? Spell.Ended(spell.Stop / 7) : Spell.Running(spell.Stop / 7))],
        };
        AcceleratedFailureFit fitted = Fit(days, given.Distribution);
        AssertSameFit(fitted, Fit(weeks, given.Distribution), -Math.Log(7), fitted.EventCount * Math.Log(7));
    }, iter: 30);

    [Fact]
    public void TheOrderOfTheRowsChangesNothing() => Fits.Sample(given =>
    {
        AcceleratedFailureData data = Draw(given.Seed);
        var source = new SyntheticSpells(given.Seed + 2UL);
        int[] order = [.. Enumerable.Range(0, data.X.Length).OrderBy(_ => source.Uniform())];
        AcceleratedFailureData shuffled = data with
        {
            X = [.. order.Select(row => data.X[row])],
            Spells = [.. order.Select(row => data.Spells[row])],
            Groups = [data.Groups[0] with { Level = [.. order.Select(row => data.Groups[0].Level[row])] }],
        };
        AssertSameFit(Fit(data, given.Distribution), Fit(shuffled, given.Distribution), 0, 0);
    }, iter: 30);

    [Fact]
    public void AWeightOfTwoCountsARowTwice()
    {
        AcceleratedFailureData data = Draw(5) with { Groups = [] };
        double[] weights = [.. data.X.Select((_, row) => row % 3 == 0 ? 2.0 : 1)];
        int[] repeated = [.. Enumerable.Range(0, data.X.Length).SelectMany(row => Enumerable.Repeat(row, (int)weights[row]))];
        AcceleratedFailureData twice = data with
        {
            X = [.. repeated.Select(row => data.X[row])],
            Spells = [.. repeated.Select(row => data.Spells[row])],
        };
        AssertSameFit(
            Fit(data with { Weights = weights }, FailureDistribution.Lognormal), Fit(twice, FailureDistribution.Lognormal), 0, 0);
    }

    private static AcceleratedFailureData Draw(uint seed) =>
        new SyntheticSpells(seed).Draw(80, [0.6, -0.5, 0.2, -0.3, 0.4], 0.7, 60);

    private static AcceleratedFailureFit Fit(AcceleratedFailureData data, FailureDistribution distribution) =>
        AcceleratedFailure.Fit(data, new AcceleratedFailureOptions { Distribution = distribution });

    private static void AssertSameFit(
        AcceleratedFailureFit expected, AcceleratedFailureFit actual, double interceptShift, double logLikelihoodShift)
    {
        for (int j = 0; j < expected.Coefficients.Length; j++)
        {
            Assert.Equal(expected.Coefficients[j].Estimate + (j == 0 ? interceptShift : 0), actual.Coefficients[j].Estimate, 1e-5);
            Assert.Equal(expected.Coefficients[j].StandardError, actual.Coefficients[j].StandardError, 1e-5);
        }

        Assert.Equal(expected.LogScale, actual.LogScale, 1e-5);
        Assert.Equal(expected.RestrictedMarginalLogLikelihood + logLikelihoodShift, actual.RestrictedMarginalLogLikelihood, 1e-7);
        for (int k = 0; k < expected.Groups.Length; k++)
        {
            Assert.Equal(expected.Groups[k].AtZeroBoundary, actual.Groups[k].AtZeroBoundary);
            Assert.Equal(expected.Groups[k].Variance, actual.Groups[k].Variance, 1e-4);
        }
    }
}
