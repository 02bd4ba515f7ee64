namespace FlipAnalytics.Tests;

/// <summary>What is claimed of colors on generated markets whose truth is known; the benchmark colour-claims does more.</summary>
public sealed class ColourClaimsTests
{
    private const int Logs = 40;

    /// <summary>5 of 40 false claims or more have a chance of 0.7 % where each log has one of 3 %.</summary>
    [Fact]
    public void Where_no_color_matters_hardly_any_log_says_that_one_does()
    {
        DemoMarket same = DemoMarket.Standard.WithoutColourEffects();
        int claims = Reports(Logs, 150, same, 5000).Count(r => r.ToldApart.DaysDiffer || r.ToldApart.PricesDiffer);
        Assert.InRange(claims, 0, 4);
    }

    /// <summary>The stated chances add up to the expected number; its standard deviation is at most √40 / 2 = 3.2.</summary>
    [Fact]
    public void Sage_that_sells_faster_is_found_as_often_as_the_report_states()
    {
        DemoMarket market = DemoMarket.Standard.WithoutColourEffects().WithColourDays("sage", 0.7);
        GroupComparisonReport[] reports = Reports(Logs, 300, market, 6000);
        LevelRecord[] sage = [.. reports.Select(r => r.Levels.Single(l => l.Level == "sage"))];
        int found = sage.Count(l => l.DaysP <= 1 - GroupTests.Confidence);
        double stated = sage.Sum(l => l.ChanceToShow!.Value);
        Assert.InRange(found, stated - 9, stated + 9);
        Assert.All(sage.Where(l => l.DaysP <= 1 - GroupTests.Confidence), l => Assert.True(l.Days!.Share < 0));
    }

    private static GroupComparisonReport[] Reports(int logs, int flips, DemoMarket market, ulong firstSeed)
    {
        var reports = new GroupComparisonReport[logs];
        Parallel.For(0, logs, i => reports[i] = GroupComparison.Of(
            DemoLog.Generate(flips, firstSeed + (ulong)i, market).Log, GroupedBy.Color));
        return reports;
    }
}
