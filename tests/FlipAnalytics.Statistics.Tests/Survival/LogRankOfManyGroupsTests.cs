using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Groups more than the days on which pieces sell.</summary>
public sealed class LogRankOfManyGroupsTests
{
    [Theory]
    [InlineData(1, 30)]
    [InlineData(3, 40)]
    public void TheStatisticIsTheFormOfTheWholeVariance(int piecesAGroup, int days)
    {
        LogRank test = LogRank.Test(Times(100 * piecesAGroup, days), [.. Enumerable.Range(0, 100 * piecesAGroup).Select(i => $"colour {i % 100:00}")]);
        double[] difference = [.. test.Groups.Select(g => g.Observed - g.Expected)];
        // Without the first group, as the differences sum to zero.
        Assert.Equal(0, difference.Sum(), 1e-10);
        var inner = Matrix<double>.Build.Dense(99, 99, (j, k) => test.Variance[j + 1][k + 1]);
        var rest = Vector<double>.Build.DenseOfEnumerable(difference.Skip(1));
        Assert.Equal(99, test.DegreesOfFreedom);
        Assert.Equal(rest * inner.Cholesky().Solve(rest), test.ChiSquared, 1e-9 * test.ChiSquared);
    }

    [Fact]
    public void StrataWithoutGroupsInCommonAreComparedWithinEachStratum()
    {
        // Two strata of 40 groups each: two directions are without variance, not one.
        SurvivalTime[] times = Times(160, 12);
        string[] groups = [.. Enumerable.Range(0, 160).Select(i => $"colour {i % 80:00}")];
        string[] strata = [.. Enumerable.Range(0, 160).Select(i => i % 80 < 40 ? "chairs" : "tables")];
        LogRank test = LogRank.Test(times, groups, strata);
        Assert.Equal(0, test.Groups.Take(40).Sum(g => g.Observed - g.Expected), 1e-10);
        Assert.True(double.IsFinite(test.P));
    }

    [Fact]
    public void GroupsNeverOnTheMarketTogetherAreRefused()
    {
        // Each is listed after the one before has sold.
        SurvivalTime[] times = [.. Enumerable.Range(0, 100).Select(i => new SurvivalTime(i, i + 1, true))];
        Assert.Throws<NoEstimateException>(() => LogRank.Test(times, [.. times.Select((_, i) => $"colour {i}")]));
    }

    private static SurvivalTime[] Times(int count, int days)
    {
        var source = new SyntheticSpells(9);
        return [.. Enumerable.Range(0, count).Select(_ => new SurvivalTime(1 + (int)(days * source.Uniform()), source.Uniform() < 0.8))];
    }
}
