using System.Collections.Immutable;

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
            var wages = WagesReport.Of(log, period);
            Assert.Equal(wages.Everywhere.Outside.AsEnumerable(), quarter.Hours.Everywhere.Outside.AsEnumerable());
            Assert.Equal(wages.Bridge is null, quarter.Hours.Wage is null);

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
    public void Every_hour_in_the_files_is_in_the_wage_of_the_span_or_named_as_outside_it() => QuarterLaws.Cases.Sample(
        given =>
        {
            SalesLog log = given.Log;
            decimal inFiles = log.Pieces.Sum(piece => piece.Hours ?? 0) + log.Hours.Sum(entry => entry.Hours)
                + log.Trips.Sum(trip => trip.Hours ?? 0);
            foreach (ReportPeriod? period in new[] { null, ReportPeriod.Of(given.From, given.To) })
            {
                var wages = WagesReport.Of(log, period);
                Assert.Equal(inFiles, wages.Everywhere.Written);
                Assert.Equal(0, wages.Everywhere.Difference);
                Assert.Equal(wages.Bridge?.SpanHours ?? 0, wages.Everywhere.InSpanWage);
                Assert.All(wages.Everywhere.Outside, place => Assert.True(place.Hours >= 0, place.ToString()));
            }
        },
        iter: Logs);

    /// <summary>
    /// A desk: bought for 40, 8 hours, sold for 200. A chair: bought for 10, 3 hours, given away. 2 hours of clearing up in the
    /// month of both: 1.45 of them are the desk's, by hours. Full wage 160 / 9.45 = 16.93. The quarter lost the chair with its
    /// hours, and bears all the clearing up: 150 / (8 + 2 + 3) = 11.54.
    /// </summary>
    [Fact]
    public void A_piece_given_away_takes_its_hours_into_the_wage_of_the_quarter_by_hand()
    {
        SalesLog log = new()
        {
            Date = new(2026, 3, 31),
            Pieces =
            [
                new()
                {
                    Id = "P1", Type = "desk", BoughtOn = new(2026, 1, 5), BoughtPrice = 40, ReadyOn = new(2026, 1, 20),
                    SoldOn = new(2026, 2, 10), SoldPrice = 200, Hours = 8,
                },
                new()
                {
                    Id = "P2", Type = "chair", BoughtOn = new(2026, 1, 5), BoughtPrice = 10, ReadyOn = new(2026, 1, 20),
                    LeftOn = new(2026, 2, 10), LeftAs = LeftAs.Given, Hours = 3,
                },
            ],
            Hours = [new(null, new(2026, 1, 15), WorkTask.Other, 2)],
        };
        var quarter = ReportPeriod.Parse("2026-Q1")!;
        var wages = WagesReport.Of(log, quarter);
        Assert.Equal((9.45m, 13m, 150m), (wages.Bridge!.AllHours, wages.Bridge.SpanHours, wages.Bridge.SpanProfit));
        Assert.Equal((-10, 3m), (wages.Bridge.Lines[^1].Profit, wages.Bridge.Lines[^1].Hours));
        Assert.Equal(11.54m, QuarterReport.Of(log, quarter).Hours.Wage!.PerHour);
        Assert.Equal((13m, 13m), (wages.Everywhere.InSpanWage, wages.Everywhere.Written));
    }

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

    /// <summary>What the span bears by days, of idle months and of others, and the rest of the month the log ends in.</summary>
    [Fact]
    public void Every_cent_of_rent_and_wear_is_in_the_wage_of_the_whole_log_or_still_to_come() => AnyLog.Sample(
        log =>
        {
            var book = CostBook.Of(log);
            var wages = WagesReport.Of(log);
            Assert.Equal(book.StillToArise, wages.StillToArise);
            if (wages.Bridge is not { } bridge)
                return;
            ImmutableArray<CostReconciliation> costs = wages.Reconciliation.Costs;
            Assert.Equal(costs.Sum(cost => cost.Idle), bridge.IdleCost);
            if (bridge.Pieces == bridge.OfPieces)
            {
                decimal all = book.Overheads.Sum(line => line.Amount) + log.Tools.Sum(tool => tool.Price ?? 0)
                    - book.ToolsLeft.Sum(tool => tool.Value);
                Assert.Equal(all, book.StillToArise - bridge.Lines[0].Profit - bridge.Lines[2].Profit);
            }
        },
        iter: Logs);

    /// <summary>A spreadsheet that adds up a column finds the same sum; what is reckoned by a rate stands beside it.</summary>
    [Fact]
    public void The_rows_of_every_file_are_in_the_books_to_the_smallest_unit() => AnyLog.Sample(
        log =>
        {
            var sums = WagesReport.Of(log).Reconciliation;
            Assert.All(sums.Files, file => Assert.Equal(0, file.Difference));
            Assert.Equal(sums.Costs.Sum(cost => cost.InFiles), sums.Files.Sum(file => file.Written + file.Reckoned));
            var written = sums.Files.ToDictionary(file => file.Name, file => file.Written);
            Assert.Equal(log.Overheads.Sum(row => row.Amount), written["overheads.csv"]);
            Assert.Equal(log.Tools.Sum(row => row.Price ?? 0), written["tools.csv"]);
            Assert.Equal(log.Trips.Sum(row => row.OtherCost ?? 0), written["trips.csv"]);
        },
        iter: Logs);

    [Fact]
    public void A_row_that_the_books_lack_is_seen()
    {
        SalesLog log = new() { Date = new(2026, 3, 31), Overheads = [new(new(2026, 1, 1), "rent", 30), new(new(2026, 2, 1), "rent", 30)] };
        ImmutableArray<FileReconciliation> files = FileReconciliation.Of(log, CostBook.Of(log with { Overheads = log.Overheads[..1] }));
        Assert.Equal(("overheads.csv", 30m), Assert.Single(files.Where(file => file.Difference != 0).Select(file => (file.Name, file.Difference))));
    }

    /// <summary>
    /// A desk: bought for 40, worked on for 8 hours in January, sold in February for 200. Rent is 61 a month, and a sander of 75
    /// wears 0.78 a month over 96. January's 61.78 are on the desk: (200 − 40 − 61.78) / 8 = 12.28 an hour. As of 14 March no
    /// work since: idle are February with 61.78 and 14 days of March with 27.55 + 0.35, 89.68 in all; (98.22 − 89.68) / 8 = 1.07.
    /// The other 17 days of March, 33.45 + 0.43 = 33.88, are in the files and in no wage of a span. Files: 40 + 75 + 3 × 61 = 298.
    /// Places: the desk 40 + 61.78, the sander 75 − 2.34 = 72.66, idle 89.68, to come 33.88: 298.
    /// </summary>
    [Fact]
    public void Idle_months_are_shown_with_the_wage_both_ways_and_against_the_rows_of_the_files_by_hand()
    {
        SalesLog log = new()
        {
            Date = new(2026, 3, 14),
            Pieces =
            [
                new()
                {
                    Id = "P1", Type = "desk", BoughtOn = new(2026, 1, 5), BoughtPrice = 40, ReadyOn = new(2026, 1, 20),
                    SoldOn = new(2026, 2, 10), SoldPrice = 200, Fees = 0, Hours = 8, SuppliesCost = 0,
                },
            ],
            Tools = [new("sander", new(2026, 1, 5), 75, null, null, 96)],
            Overheads = [new(new(2026, 1, 1), "rent", 61), new(new(2026, 2, 1), "rent", 61), new(new(2026, 3, 1), "rent", 61)],
        };
        var wages = WagesReport.Of(log);
        Assert.Equal((98.22m, 89.68m, 8.54m, 8.54m),
            (wages.Bridge!.FullProfit, wages.Bridge.IdleCost, wages.Bridge.WageAfterIdleMonths * 8, wages.Bridge.SpanProfit));
        string around = string.Join(' ', WagesSentences.Around(wages));
        Assert.Contains(
            "Idle months: 89.68 and 0 h are on no piece, for nothing was worked on then; with their part of it these pieces paid 1.07.",
            around, StringComparison.Ordinal);
        string all = WagesText.Render(wages, null, all: true).Replace("\n  ", " ", StringComparison.Ordinal);
        Assert.Contains("paid 12.28 an hour (full wage", all, StringComparison.Ordinal);
        Assert.Contains(
            "Costs: these flips 101.78 + in cans and tools 72.66 + idle months 89.68 + rest of this month 33.88 = all in the files 298.00; off by 0.00.",
            all, StringComparison.Ordinal);
        Assert.Contains(
            "The files, row by row: pieces.csv, prices paid 40.00 + tools.csv 75.00 + overheads.csv 183.00 = 298.00; off by 0.00.",
            all, StringComparison.Ordinal);
        Assert.Equal(0, wages.Reconciliation.Difference);
    }

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

    /// <summary>
    /// A desk of 40 sold for 200 after 8 hours in January and February. The booth, 25 a month, had nothing for sale in either; the
    /// workshop had work in both, and its rent of 15 is on the desk. So 50 is no cost of a month without work.
    /// </summary>
    [Fact]
    public void Rent_of_a_booth_with_nothing_for_sale_is_no_month_without_work()
    {
        SalesLog log = new()
        {
            Date = new(2026, 2, 28),
            Pieces =
            [
                new()
                {
                    Id = "P1", Type = "desk", BoughtOn = new(2026, 1, 5), BoughtPrice = 40, ReadyOn = new(2026, 2, 9),
                    ListedOn = new(2026, 2, 9), SoldOn = new(2026, 2, 10), SoldPrice = 200, Channel = "online",
                },
            ],
            Hours = [new("P1", new(2026, 1, 8), WorkTask.Sanding, 4), new("P1", new(2026, 2, 8), WorkTask.Painting, 4)],
            Overheads =
            [
                new(new(2026, 1, 1), "rent", 25) { Channel = "booth" }, new(new(2026, 2, 1), "rent", 25) { Channel = "booth" },
                new(new(2026, 2, 1), "storage", 15),
            ],
        };

        var wages = WagesReport.Of(log);
        Assert.Equal((50m, 50m, 0m), (wages.Bridge!.IdleCost, wages.Bridge.IdleRent, wages.Bridge.IdleHours));
        Assert.Equal("rent of a channel with nothing for sale, on no piece", wages.Bridge.Lines[0].What);
        string said = string.Join(' ', WagesText.Render(wages, null, all: true).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("On no piece: 50.00 is rent of a channel with nothing for sale; with their part", said, StringComparison.Ordinal);
        Assert.Contains("+ rent of a channel with nothing for sale 50.00 = all in the files", said, StringComparison.Ordinal);
        Assert.DoesNotContain("idle months", said, StringComparison.OrdinalIgnoreCase);
        var quarter = QuarterReport.Of(log, ReportPeriod.Parse("2026-02")!);
        Assert.Contains("On no piece: 25.00 is rent of a channel with nothing for sale.", string.Join(' ', QuarterSentences.Beneath(quarter)), StringComparison.Ordinal);

        // With March idle besides, both are named.
        var both = WagesReport.Of(log with { Date = new(2026, 3, 31), Overheads = [.. log.Overheads, new(new(2026, 3, 1), "storage", 15)] });
        Assert.Equal("idle months, and rent of a channel with nothing for sale", both.Bridge!.Lines[0].What);
        Assert.Contains(
            "Idle months: 15.00 and 0 h are on no piece, for nothing was worked on then; 50.00 is rent of a channel with nothing for sale, on no piece either;",
            string.Join(' ', WagesSentences.Around(both)), StringComparison.Ordinal);
    }
}
