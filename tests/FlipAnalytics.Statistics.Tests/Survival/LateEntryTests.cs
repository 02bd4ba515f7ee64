using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Spells first seen late that ended between two visits: their likelihood is that of the interval among spells that
/// lasted until seen, [S(a) − S(b)]/S(entry), against integrals of the density and by hand.</summary>
public sealed class LateEntryTests
{
    private static readonly double[] Size =
        [0.3, -0.2, 0.9, -1.1, 0.4, 0.7, -0.5, 0, 1.2, -0.8, 0.1, -0.3, 0.6, -0.9, 0.2, 0.5, -0.6, 1, -0.1, 0.8];

    // A visit a week: some entered the shop before the first, some were still there at the last.
    private static readonly Spell[] Visited =
    [
        .. Size.Select((x, row) =>
        {
            double entry = row % 3 == 0 ? 0 : 2 + row % 5, lower = entry + 1 + 7 * (row % 4);
            return (row % 5) switch
            {
                0 => Spell.Running(lower + 4 * x + 6, entry),
                1 => Spell.Ended(lower + 3, entry),
                2 when entry > 0 => Spell.EndedBetween(entry, entry + 7, entry),
                _ => Spell.EndedBetween(lower, lower + 7, entry),
            };
        }),
    ];

    public static TheoryData<FailureDistribution> Laws => [.. Enum.GetValues<FailureDistribution>()];

    [Theory]
    [MemberData(nameof(Laws))]
    public void TheLikelihoodIsThatOfTheIntegratedDensity(FailureDistribution distribution)
    {
        AcceleratedFailureFit fit = Fit(distribution, Visited);
        double[] at = [fit.Coefficients[0].Estimate, fit.Coefficients[1].Estimate, fit.LogScale];
        Assert.Contains(Visited, spell => spell is { Kind: SpellKind.EndedBetween, Start: > 0 });
        Assert.Equal(Integrated(distribution, at), fit.LogLikelihood, 1e-8);
    }

    [Theory]
    [MemberData(nameof(Laws))]
    public void TheEstimateIsWhereTheIntegratedLikelihoodIsFlat(FailureDistribution distribution)
    {
        AcceleratedFailureFit fit = Fit(distribution, Visited);
        double[] at = [fit.Coefficients[0].Estimate, fit.Coefficients[1].Estimate, fit.LogScale];
        for (int j = 0; j < fit.CovarianceOrder.Length; j++)
        {
            double h = 1e-3;
            double[] above = [.. at], below = [.. at];
            above[j] += h;
            below[j] -= h;
            Assert.Equal(0, (Integrated(distribution, above) - Integrated(distribution, below)) / (2 * h), 1e-4);
        }
    }

    /// <summary>An exponential duration has no memory: what was first seen after 5 days and ended between days 7 and 12 tells as
    /// much as what ended between days 2 and 7, and with no visit between, as what ended by day 7.</summary>
    [Fact]
    public void AnExponentialDurationForgetsHowOldItWasWhenFirstSeen()
    {
        Spell[] late = [Spell.EndedBetween(7, 12, 5), Spell.EndedBetween(5, 12, 5), Spell.Ended(9, 5), Spell.EndedBetween(8, 20, 5)];
        Spell[] fresh = [Spell.EndedBetween(2, 7), Spell.EndedBefore(7), Spell.Ended(4), Spell.EndedBetween(3, 15)];
        AcceleratedFailureFit seenLate = Fit(FailureDistribution.Exponential, late), seenFresh = Fit(FailureDistribution.Exponential, fresh);
        Assert.Equal(seenFresh.Coefficients[0].Estimate, seenLate.Coefficients[0].Estimate, 1e-9);
        Assert.Equal(seenFresh.Coefficients[1].StandardError, seenLate.Coefficients[1].StandardError, 1e-9);
        Assert.Equal(seenFresh.LogLikelihood, seenLate.LogLikelihood, 1e-10);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void ASpellCannotBeFollowedOnlyFromAfterItWasSeenRunning(double start)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Spell.EndedBetween(7, 12, start));
        Assert.Contains("A spell seen running at 7 is followed since then at the latest", refused.Message, StringComparison.Ordinal);
    }

    private static double Integrated(FailureDistribution distribution, double[] at) => Visited.Select((spell, row) =>
    {
        Func<double, double> density = Density(distribution, at[0] + at[1] * Size[row], Math.Exp(at[2]));
        double seen = 1 - Integral(density, 0, spell.Start);
        double here = spell.Kind switch
        {
            SpellKind.Ended => density(spell.Stop),
            SpellKind.Running => 1 - Integral(density, 0, spell.Stop),
            _ => Integral(density, spell.Lower, spell.Upper),
        };
        return Math.Log(here / seen);
    }).Sum();

    // In log time, where densities near zero are smooth.
    private static double Integral(Func<double, double> density, double from, double to) => to == 0 ? 0
        : GaussLegendreRule.Integrate(s => density(Math.Exp(s)) * Math.Exp(s), from == 0 ? -60 : Math.Log(from), Math.Log(to), 1024);

    private static Func<double, double> Density(FailureDistribution distribution, double location, double scale) => distribution switch
    {
        FailureDistribution.Lognormal => t => LogNormal.PDF(location, scale, t),
        FailureDistribution.LogLogistic => t => LogLogistic(t, Math.Exp((Math.Log(t) - location) / scale), scale),
        _ => t => Weibull.PDF(1 / scale, Math.Exp(location), t),
    };

    private static double LogLogistic(double t, double power, double scale) => power / (scale * t * (1 + power) * (1 + power));

    private static AcceleratedFailureFit Fit(FailureDistribution distribution, Spell[] spells) => AcceleratedFailure.Fit(
        new(["(Intercept)", "size"], [.. spells.Select((_, row) => new[] { 1, Size[row] })], [.. spells], [], null),
        new AcceleratedFailureOptions { Distribution = distribution });
}
