using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Wages and quarter tell the same two wages of a span, and the way from one to the other adds up.</summary>
public sealed class WageBridgeTests
{
    private const int Logs = 300;

    private static readonly Gen<SalesLog> AnyLog = Gen.OneOf(MessyLogs.Any, CostingLogs.Any);

    [Fact]
    public void Wages_and_quarter_tell_the_same_two_wages_of_any_span() => QuarterLaws.Cases.Sample(
        given =>
        {
            SalesLog log = given.Log;
            var period = ReportPeriod.Of(given.From, given.To);
            var quarter = QuarterReport.Of(log, period);
            var wages = WagesReport.Of(log, quarter.Reckoned);

            Assert.Equal(wages.Total.FullWage, quarter.Hours.Bridge?.FullWage);
            Assert.Equal(wages.Bridge?.SpanProfit, quarter.Hours.Bridge?.SpanProfit);
            Assert.Equal(wages.Bridge?.SpanWage, quarter.Hours.Bridge?.SpanWage);
            if (quarter.Hours is { Bridge: { } bridge, Wage: { } wage })
            {
                Assert.Equal((wage.Profit, wage.Hours), (bridge.SpanProfit, bridge.SpanHours));
                Assert.Equal(wage.PerHour, log.Workshop.Currency.Round(bridge.SpanWage));
            }
        },
        iter: Logs);

    [Fact]
    public void The_way_from_one_wage_to_the_other_adds_up_in_money_and_in_hours() => QuarterLaws.Cases.Sample(
        given =>
        {
            var period = ReportPeriod.Of(given.From, given.To);
            foreach (WageBridge bridge in new[] { WagesReport.Of(given.Log, period).Bridge, WagesReport.Of(given.Log).Bridge }
                .OfType<WageBridge>())
            {
                Assert.Equal(0, bridge.Difference);
                Assert.Equal(0, bridge.HoursDifference);
            }
        },
        iter: Logs);

    [Fact]
    public void Every_cost_in_the_files_is_on_a_flip_on_another_piece_still_here_or_in_an_idle_month() => AnyLog.Sample(
        log =>
        {
            var costs = WagesReport.Of(log).Reconciliation.Costs.ToDictionary(cost => cost.Kind);
            Assert.Equal(log.Pieces.Sum(piece => piece.BoughtPrice ?? 0), costs[CostKind.Purchase].InFiles);
            Assert.Equal(log.Tools.Sum(tool => tool.Price ?? 0), costs[CostKind.Tools].InFiles);
            Assert.True(log.Overheads.Sum(row => row.Amount) <= costs[CostKind.Overhead].InFiles);
            Assert.All(costs.Values, cost => Assert.Equal(0, cost.Difference));
        },
        iter: Logs);

    /// <summary>
    /// One desk: bought for 40, worked on for 8 hours in January, sold in February for 200. Rent is 30 a month. January's rent
    /// is on the desk; February and March had no work. Full wage (200 − 40 − 30) / 8 = 16.25; with the idle months
    /// (130 − 60) / 8 = 8.75. The first quarter as a whole bears all three months: 70 / 8. February alone bears its own rent:
    /// (160 − 30) / 8 = 16.25, its own in place of January's.
    /// </summary>
    [Fact]
    public void Rent_of_months_without_work_is_shown_and_taken_off_by_hand()
    {
        SalesLog log = new()
        {
            Date = new(2026, 3, 31),
            Pieces =
            [
                new()
                {
                    Id = "P1", Type = "desk", BoughtOn = new(2026, 1, 5), BoughtPrice = 40, ReadyOn = new(2026, 1, 20),
                    ListedOn = new(2026, 1, 21), SoldOn = new(2026, 2, 10), SoldPrice = 200, Hours = 8,
                },
            ],
            Overheads = [new(new(2026, 1, 1), "rent", 30), new(new(2026, 2, 1), "rent", 30), new(new(2026, 3, 1), "rent", 30)],
        };

        var all = WagesReport.Of(log);
        Assert.Equal((16.25m, 60m, 8.75m, 8.75m),
            (all.Bridge!.FullWage, all.Bridge.IdleCost, all.Bridge.WageAfterIdleMonths, all.Bridge.SpanWage));
        Assert.Contains("Idle months: 60.00 and 0 h are on no piece", string.Join(' ', WagesSentences.Around(all)), StringComparison.Ordinal);
        WageBridge february = WagesReport.Of(log, ReportPeriod.Parse("2026-02")).Bridge!;
        Assert.Equal((16.25m, 30m, 12.5m, 16.25m),
            (february.FullWage, february.IdleCost, february.WageAfterIdleMonths, february.SpanWage));
        Assert.Contains("idle months 60.00 = all in the files", WagesText.Render(all, null, all: true), StringComparison.Ordinal);
    }
}
