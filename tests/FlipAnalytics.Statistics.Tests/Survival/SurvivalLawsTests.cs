using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>What holds for every set of spells, on generated data full of ties.</summary>
public class SurvivalLawsTests
{
    private static readonly Gen<SurvivalTime[]> Spells =
        (from start in Gen.Int[0, 5]
         from length in Gen.Int[1, 12]
         from ended in Gen.Bool
         select new SurvivalTime(start, start + length, ended)).Array[2, 40];

    [Fact]
    public void With_every_spell_seen_to_its_end_the_curve_is_the_share_still_running() => Spells.Sample(spells =>
    {
        SurvivalTime[] whole = [.. spells.Select(spell => new SurvivalTime(spell.Stop, true))];
        foreach (SurvivalStep step in KaplanMeier.Estimate(whole).Steps)
        {
            double running = whole.Count(spell => spell.Stop > step.Time) / (double)whole.Length;
            Assert.Equal(running, step.Survival, 1e-12);
        }
    });

    [Fact]
    public void The_curve_never_rises_and_its_limits_hold_it() => Spells.Sample(spells =>
    {
        double last = 1;
        foreach (SurvivalStep step in KaplanMeier.Estimate(spells).Steps)
        {
            Assert.InRange(step.Survival, 0, last);
            Assert.True(step.LogLimits?.Contains(step.Survival) ?? step.Survival == 0);
            Assert.True(step.LogLogLimits?.Contains(step.Survival) ?? step.Survival is 0 or 1);
            last = step.Survival;
        }
    });

    [Fact]
    public void A_spell_cut_in_two_rows_is_the_same_spell() => Spells.Sample(spells =>
    {
        SurvivalTime[] cut =
        [
            .. spells.SelectMany(spell => spell.Stop - spell.Start < 2
                ? new[] { spell }
                : [new(spell.Start, spell.Start + 1, false), new(spell.Start + 1, spell.Stop, spell.Ended)]),
        ];
        KaplanMeier whole = KaplanMeier.Estimate(spells), split = KaplanMeier.Estimate(cut);
        foreach (SurvivalStep step in whole.Steps)
            Assert.Equal(step.Survival, split.At(step.Time), 1e-12);
    });

    [Fact]
    public void Observed_and_expected_endings_agree_in_total_and_the_order_of_spells_does_not_matter() => Spells.Sample(spells =>
    {
        // Two more spells make sure that groups are at risk together when one ends.
        SurvivalTime[] times = [.. spells, new(6, 7, true), new(6, 8, false)];
        string[] groups = [.. times.Select((_, i) => i % 2 == 0 ? "sage" : "white")];
        LogRank result = LogRank.Test(times, groups);
        Assert.Equal(result.Groups.Sum(g => g.Observed), result.Groups.Sum(g => g.Expected), 1e-10);
        LogRank reversed = LogRank.Test([.. times.Reverse()], [.. groups.Reverse()]);
        Assert.Equal(result.ChiSquared, reversed.ChiSquared, 1e-9);
    });
}
