using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>Whether full wages rise or fall from sale to sale, by <see cref="RatioTrend"/>: hours count as weights.</summary>
/// <param name="Flips">Counted flips with a day of sale.</param>
/// <param name="ChangePerYear">Change of the wage a year.</param>
/// <param name="Low">Lower end of a range for it that holds 19 times in 20.</param>
/// <param name="High">Upper end.</param>
public sealed record WageTrend(int Flips, decimal ChangePerYear, decimal Low, decimal High)
{
    /// <summary>Fewest dated flips that a trend is told from.</summary>
    public const int FewestFlips = 8;

    /// <summary>Fewest days from the first sale to the last.</summary>
    public const int FewestDays = 180;

    /// <summary>Whether chance alone would hardly give it: the range lies on one side of none.</summary>
    public bool IsClear => Low > 0 || High < 0;

    /// <summary>The trend of some flips; null where they are too few or too close in time.</summary>
    /// <param name="flips">The flips.</param>
    /// <param name="currency">The workshop's currency.</param>
    public static WageTrend? Of(IEnumerable<FlipWage> flips, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(flips);
        FlipWage[] dated = [.. flips.Where(flip => flip is { Counts: true, SoldOn: not null })];
        if (dated.Length < FewestFlips || dated.All(flip => flip.BenchHours == 0))
            return null;
        int days = dated.Max(flip => flip.SoldOn!.Value.DayNumber) - dated.Min(flip => flip.SoldOn!.Value.DayNumber);
        if (days < FewestDays)
            return null;
        RatioTrend? trend = RatioTrend.Of(
            [.. dated.Select(flip => ReportCrossing.Number(flip.FullProfit!.Value))],
            [.. dated.Select(flip => ReportCrossing.Number(flip.AllHours!.Value))],
            [.. dated.Select(flip => ReportCrossing.Years(flip.SoldOn!.Value))]);
        if (trend?.SlopeInterval(WageSum.Level) is not { } limits
            || ReportCrossing.Estimate(trend.Slope, currency) is not { } slope
            || ReportCrossing.Estimate(limits.Low, currency) is not { } low
            || ReportCrossing.Estimate(limits.High, currency) is not { } high)
        {
            return null;
        }

        return new(dated.Length, slope, low, high);
    }
}
