using System.Text.Json;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against R's survdiff, and by hand.</summary>
public class LogRankTests
{
    [Theory]
    [InlineData("01_lung", "logrank_sex", "sex", null)]
    [InlineData("01_lung", "peto_sex", "sex", null)]
    [InlineData("01_lung", "logrank_ecog", "ecog", null)]
    [InlineData("01_lung", "logrank_sex_stratified_by_ecog", "sex", "ecog")]
    [InlineData("02_ovarian", "logrank_rx", "rx", null)]
    [InlineData("03_rats_ties", "logrank_treated_stratified_by_sex", "treated", "sex")]
    public void The_test_is_R_s(string name, string test, string group, string? stratum)
    {
        ReferenceCase reference = new($"survival/{name}");
        JsonElement expected = reference.At(test);
        LogRank result = LogRank.Test(
            SurvivalInput.Times(reference), reference.Text(group),
            stratum is null ? null : reference.Text(stratum), Number(expected.GetProperty("rho")));
        Assert.Equal(Names(expected.GetProperty("group")), result.Groups.Select(g => g.Name));
        AssertClose(expected.GetProperty("n"), result.Groups.Select(g => (double)g.Count), 0);
        AssertClose(expected.GetProperty("observed"), result.Groups.Select(g => g.Observed), 1e-10, what: "observed");
        AssertClose(expected.GetProperty("expected"), result.Groups.Select(g => g.Expected), 1e-10, what: "expected");
        foreach (var (j, line) in expected.GetProperty("variance").EnumerateArray().Index())
            AssertClose(line, result.Variance[j], 1e-10, 1e-12, "variance");
        AssertClose(Number(expected.GetProperty("chisq")), result.ChiSquared, 1e-10, what: "chi-squared");
        Assert.Equal(expected.GetProperty("df").GetInt32(), result.DegreesOfFreedom);
        AssertClose(Number(expected.GetProperty("p")), result.P, 1e-10, what: "p");
    }

    /// <summary>Sage sells on days 1 and 2, white on days 3 and 4. Expected of sage: 2/4 + 1/3; variance 1/4 + 2/9; so
    /// χ² = (2 − 5/6)² / (17/36) = 49/17.</summary>
    [Fact]
    public void Two_colours_of_two_pieces_by_hand()
    {
        LogRank result = LogRank.Test(
            [new(1, true), new(2, true), new(3, true), new(4, true)], ["sage", "sage", "white", "white"]);
        Assert.Equal(5 / 6.0, result.Groups[0].Expected, 1e-14);
        Assert.Equal(17 / 36.0, result.Variance[0][0], 1e-14);
        Assert.Equal(49 / 17.0, result.ChiSquared, 1e-13);
    }

    [Fact]
    public void A_piece_seen_late_is_not_yet_at_risk()
    {
        LogRank late = LogRank.Test(
            [new(0, 1, true), new(0, 5, true), new(2, 6, true), new(0, 7, true)], ["a", "b", "a", "b"]);
        // On day 1 group a has one of three at risk, on day 5 one of three, on day 6 one of two.
        Assert.Equal(1 / 3.0 + 1 / 3.0 + 1 / 2.0, late.Groups[0].Expected, 1e-14);
    }

    [Fact]
    public void One_group_alone_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => LogRank.Test([new(1, true), new(2, true)], ["sage", "sage"]));
        Assert.Contains("All spells are in group 'sage'", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_never_at_risk_at_a_sale_are_refused()
    {
        Assert.Throws<NoEstimateException>(() => LogRank.Test([new(1, false), new(2, false)], ["sage", "white"]));
    }
}
