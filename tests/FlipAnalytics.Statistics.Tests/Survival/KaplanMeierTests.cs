using System.Text.Json;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against R's survival package (survfit, its quantile method and restricted mean) and by hand.</summary>
public class KaplanMeierTests
{
    private static readonly SurvivalTime[] TenPieces =
    [
        new(5, true), new(8, true), new(8, false), new(12, true), new(12, true),
        new(20, false), new(25, true), new(40, true), new(60, false), new(75, true),
    ];

    public static TheoryData<string, string> Curves => new()
    {
        { "01_lung", "km_overall" },
        { "01_lung", "km_by_sex/f" },
        { "01_lung", "km_by_sex/m" },
        { "02_ovarian", "km_overall" },
        { "02_ovarian", "km_by_rx/1" },
        { "02_ovarian", "km_by_rx/2" },
        { "03_rats_ties", "km_by_treated/0" },
        { "03_rats_ties", "km_by_treated/1" },
        { "04_relistings_left_truncated", "km_overall" },
        { "05_price_cuts_split_rows", "km_overall" },
    };

    [Theory, MemberData(nameof(Curves))]
    public void The_curve_is_R_s(string name, string curve)
    {
        ReferenceCase reference = new($"survival/{name}");
        SurvivalTime[] times = SurvivalInput.Times(reference, curve);
        KaplanMeier fit = KaplanMeier.Estimate(times);
        JsonElement expected = reference.At(curve), table = expected.GetProperty("table");
        Assert.Equal(expected.GetProperty("n").GetInt32(), fit.Count);
        Assert.Equal(expected.GetProperty("events").GetInt32(), fit.Ended);
        Check("time", fit.Steps.Select(step => step.Time));
        Check("at_risk", fit.Steps.Select(step => (double)step.AtRisk));
        Check("events", fit.Steps.Select(step => (double)step.Ended));
        Check("censored", fit.Steps.Select(step => (double)step.Censored));
        Check("survival", fit.Steps.Select(step => step.Survival));
        Check("greenwood_se", fit.Steps.Select(step => step.StandardError ?? double.NaN));
        Check("loglog_low", fit.Steps.Select(step => step.LogLogLimits?.Low ?? double.NaN));
        Check("loglog_high", fit.Steps.Select(step => step.LogLogLimits?.High ?? double.NaN));
        Check("log_low", fit.Steps.Select(step => step.LogLimits?.Low ?? double.NaN));
        Check("log_high", fit.Steps.Select(step => step.LogLimits?.High ?? double.NaN));
        Check("nelson_aalen", NelsonAalen.Estimate(times).Select(step => step.CumulativeHazard));

        void Check(string column, IEnumerable<double> values) =>
            AssertClose(table.GetProperty(column), values, 1e-10, what: column);
    }

    [Theory, MemberData(nameof(Curves))]
    public void Quantiles_and_the_restricted_mean_are_R_s(string name, string curve)
    {
        ReferenceCase reference = new($"survival/{name}");
        KaplanMeier fit = KaplanMeier.Estimate(SurvivalInput.Times(reference, curve));
        JsonElement expected = reference.At(curve);
        SurvivalQuantile[] quartiles = [fit.Quantile(0.25), fit.Quantile(0.5), fit.Quantile(0.75)];
        AssertClose(At(expected, "quantiles_25_50_75/value"), quartiles.Select(q => q.Time ?? double.NaN), 1e-12, what: "time");
        AssertClose(At(expected, "quantiles_25_50_75/loglog_low"), quartiles.Select(q => q.Low ?? double.NaN), 1e-12, what: "low");
        AssertClose(At(expected, "quantiles_25_50_75/loglog_high"), quartiles.Select(q => q.High ?? double.NaN), 1e-12, what: "high");
        SurvivalQuantile median = fit.Median(SurvivalLimits.Log);
        AssertClose(At(expected, "median_log_ci"), [median.Low ?? double.NaN, median.High ?? double.NaN], 1e-12, what: "log");
        RestrictedMean mean = fit.RestrictedMean(Number(At(expected, "rmst/tau")));
        AssertClose(At(expected, "rmst"), [mean.Horizon, mean.Mean, mean.StandardError], 1e-10, what: "restricted mean");
    }

    /// <summary>Ten pieces worked by hand: sold after 5, 8, 12, 12, 25, 40 and 75 days, last seen unsold at 8, 20 and 60.
    /// The piece last seen on day 8 is still at risk when another sells that day.</summary>
    [Fact]
    public void Ten_pieces_by_hand()
    {
        KaplanMeier fit = KaplanMeier.Estimate(TenPieces);
        SurvivalStep[] sold = [.. fit.Steps.Where(step => step.Ended > 0)];
        Assert.Equal([5, 8, 12, 25, 40, 75], sold.Select(step => step.Time));
        double[] survival = [0.9, 0.8, 4 / 7.0, 3 / 7.0, 2 / 7.0, 0];
        Assert.Equal(survival, sold.Select(step => step.Survival), (a, b) => Math.Abs(a - b) < 1e-14);
        double[] errors = [0.094868, 0.126491, 0.163775, 0.174338, 0.164662];
        Assert.Equal(errors, sold[..5].Select(step => step.StandardError!.Value), (a, b) => Math.Abs(a - b) < 5e-7);
        Assert.Null(sold[5].StandardError);
        Assert.Equal(25, fit.Median().Time);
        Assert.Equal(20.471429, fit.RestrictedMean(30).Mean, 5e-7);
        Assert.Equal(30.471429, fit.RestrictedMean(60).Mean, 5e-7);
        Assert.Equal(4 / 7.0, fit.At(24.9), 1e-14);
    }

    [Fact]
    public void A_flat_step_at_just_a_half_puts_the_median_in_its_middle()
    {
        KaplanMeier fit = KaplanMeier.Estimate([new(1, true), new(2, true), new(6, true), new(9, true)]);
        Assert.Equal(4, fit.Median().Time);
        Assert.Equal(4.5, KaplanMeier.Estimate([new(2, true), new(7, false)]).Median().Time);
    }

    [Fact]
    public void A_piece_seen_late_counts_from_the_day_it_was_seen()
    {
        KaplanMeier fit = KaplanMeier.Estimate([new(0, 4, true), new(0, 9, true), new(4, 6, true), new(5, 8, false)]);
        Assert.Equal([2, 3, 2, 1], fit.Steps.Select(step => step.AtRisk));
    }

    [Fact]
    public void With_nothing_sold_there_is_no_median_and_the_curve_stays_at_one()
    {
        KaplanMeier fit = KaplanMeier.Estimate([new(3, false), new(10, false)]);
        Assert.Equal(new SurvivalQuantile(0.5, null, null, null), fit.Median());
        Assert.Equal(new RestrictedMean(10, 10, 0), fit.RestrictedMean(10));
    }

    [Fact]
    public void A_mean_past_the_last_follow_up_is_refused_while_pieces_still_run()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => KaplanMeier.Estimate([new(3, true), new(9, false)]).RestrictedMean(10));
        Assert.Equal(6, KaplanMeier.Estimate([new(3, true), new(9, true)]).RestrictedMean(10).Mean, 1e-14);
    }

    [Fact]
    public void A_spell_that_stops_before_it_starts_is_named()
    {
        var error = Assert.Throws<ArgumentException>(() => KaplanMeier.Estimate([new(3, true), new(5, 5, true)]));
        Assert.Contains("Spell 1 (counting from 0) runs from 5 to 5", error.Message, StringComparison.Ordinal);
    }
}
