using System.Globalization;
using System.Text.Json;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Days on market by colour in synthetic sales logs, against R's survival package.</summary>
public class SalesLogSurvivalTests
{
    private static readonly int LastDay = new DateOnly(2024, 12, 31).DayNumber;

    [Theory]
    [InlineData("01_log_60")]
    [InlineData("02_log_300")]
    [InlineData("03_log_3000")]
    public void Each_colour_s_curve_is_R_s(string name)
    {
        ReferenceCase log = new($"logs/{name}");
        SurvivalTime[] times = Times(log);
        string[] colours = log.Text("color");
        foreach (JsonProperty colour in log.At("km_by_color").EnumerateObject())
        {
            KaplanMeier fit = KaplanMeier.Estimate(times.Where((_, i) => colours[i] == colour.Name).ToArray());
            Assert.Equal(colour.Value.GetProperty("n").GetInt32(), fit.Count);
            Assert.Equal(colour.Value.GetProperty("events").GetInt32(), fit.Ended);
            SurvivalQuantile[] quartiles = [fit.Quantile(0.25), fit.Quantile(0.5), fit.Quantile(0.75)];
            JsonElement expected = colour.Value.GetProperty("quantiles_25_50_75");
            AssertClose(expected.GetProperty("value"), quartiles.Select(q => q.Time ?? double.NaN), 1e-12, what: colour.Name);
            AssertClose(expected.GetProperty("loglog_low"), quartiles.Select(q => q.Low ?? double.NaN), 1e-12, what: colour.Name);
            AssertClose(expected.GetProperty("loglog_high"), quartiles.Select(q => q.High ?? double.NaN), 1e-12, what: colour.Name);
            RestrictedMean mean = fit.RestrictedMean(60);
            AssertClose(colour.Value.GetProperty("rmst_60"), [mean.Horizon, mean.Mean, mean.StandardError], 1e-10, what: colour.Name);
        }
    }

    [Theory]
    [InlineData("01_log_60")]
    [InlineData("02_log_300")]
    [InlineData("03_log_3000")]
    public void The_log_rank_test_between_colours_is_R_s(string name)
    {
        ReferenceCase log = new($"logs/{name}");
        JsonElement expected = log.At("logrank_color");

        LogRank test = LogRank.Test(Times(log), log.Text("color"));

        Assert.Equal(Names(expected.GetProperty("group")), test.Groups.Select(g => g.Name));
        AssertClose(expected.GetProperty("observed"), test.Groups.Select(g => g.Observed), 1e-10, what: "observed");
        AssertClose(expected.GetProperty("expected"), test.Groups.Select(g => g.Expected), 1e-10, what: "expected");
        AssertClose(expected.GetProperty("chisq").GetDouble(), test.ChiSquared, 1e-10, what: "chi-squared");
        AssertClose(expected.GetProperty("p").GetDouble(), test.P, 1e-9, what: "p");
    }

    private static SurvivalTime[] Times(ReferenceCase log) =>
    [
        .. log.Text("listed_on").Zip(log.Text("sold_on"), (listed, sold) => new SurvivalTime(
            Math.Max(1, (sold.Length == 0 ? LastDay : Day(sold)) - Day(listed)), sold.Length > 0)),
    ];

    private static int Day(string date) => DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture).DayNumber;
}
