namespace FlipAnalytics.Statistics.Tests;

/// <summary>Numbers worked out with pencil and paper.</summary>
public sealed class CoxByHandTests
{
    private static readonly SurvivalTime[] TenPieces =
    [
        new(5, true), new(8, true), new(8, false), new(12, true), new(12, true),
        new(20, false), new(25, true), new(40, true), new(60, false), new(75, true),
    ];

    private static readonly Regressor Painted = new("painted", new double[] { 1, 1, 0, 1, 0, 1, 0, 1, 0, 0 });

    /// <summary>Ten pieces, two of them sold on the same day: the likelihood at 0 is the sum of −log of the numbers at risk,
    /// 10, 9, 7, 6, 4, 3 and 1; the second of the tied pair counts 7 again with Breslow, 6 with Efron.</summary>
    [Fact]
    public void Ten_pieces_two_sold_on_one_day()
    {
        CoxFit efron = CoxRegression.Fit([Painted], TenPieces);
        Assert.Equal(-Math.Log(10 * 9 * 7 * 6 * 4 * 3), efron.LogLikelihoodNull, 1e-12);
        Assert.Equal(1.152268, efron["painted"].Estimate, 5e-7);
        Assert.Equal(3.165364, efron["painted"].HazardRatio, 5e-7);
        Assert.Equal(-9.796666, efron.LogLikelihood, 5e-7);
        CoxFit breslow = CoxRegression.Fit([Painted], TenPieces, ties: TieMethod.Breslow);
        Assert.Equal(-Math.Log(10 * 9 * 7 * 7 * 4 * 3), breslow.LogLikelihoodNull, 1e-12);
        Assert.Equal(1.144311, breslow["painted"].Estimate, 5e-7);
        Assert.Equal(-9.964236, breslow.LogLikelihood, 5e-7);
    }

    /// <summary>Three pieces sell on days 1, 2 and 3, painted, plain, painted. With r = exp(b): L = r/(2r + 1) · 1/(1 + r),
    /// largest where 2r² = 1.</summary>
    [Fact]
    public void Three_pieces_have_a_closed_form()
    {
        CoxFit fit = CoxRegression.Fit(
            [new("painted", new double[] { 1, 0, 1 })], [new(1, true), new(2, true), new(3, true)]);
        double r = Math.Sqrt(0.5);
        Assert.Equal(Math.Log(r), fit["painted"].Estimate, 1e-12);
        Assert.Equal(Math.Log(r / (2 * r + 1) / (1 + r)), fit.LogLikelihood, 1e-12);
        double[] hazards = [1 / (2 * r + 1), 1 / (2 * r + 1) + 1 / (1 + r), 1 / (2 * r + 1) + 1 / (1 + r) + 1 / r];
        for (int k = 0; k < 3; k++)
            Assert.Equal(hazards[k], fit.Baselines[0].Steps[k].CumulativeHazard, 1e-12);
        Assert.Equal(Math.Exp(-hazards[1] * r), fit.Survival([1], 2.5), 1e-12);
        Assert.Equal(1, fit.Survival([1], 0.5));
    }

    /// <summary>With one column of 0 and 1 and no ties the score test is the log-rank test.</summary>
    [Fact]
    public void The_score_test_of_two_groups_is_the_log_rank_test()
    {
        SurvivalTime[] times = [.. TenPieces.Select((time, i) => time with { Stop = time.Stop + 0.01 * i })];
        string[] groups = [.. Painted.Values.ToArray().Select(value => value == 1 ? "painted" : "plain")];
        Assert.Equal(LogRank.Test(times, groups).ChiSquared, CoxRegression.Fit([Painted], times).Score.Statistic, 1e-10);
    }

    /// <summary>Sold first of four with the highest score, then the second highest against two left, one of them with the
    /// same score, one seen only to day 2 when the second sold: 3 concordant of the first, 1 of the second and 1 tie.</summary>
    [Fact]
    public void Pairs_are_counted_by_hand()
    {
        Concordance counted = Concordance.Of([new(1, true), new(2, true), new(2, false), new(3, false)], [9, 5, 5, 1]);
        Assert.Equal((4, 0, 1), (counted.Concordant, counted.Discordant, counted.TiedInScore));
        Assert.Equal(4.5 / 5, counted.Value, 1e-15);
    }
}
