using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Rent and wear of a month count by its days: any span carries its share, and spans that join add up.</summary>
public sealed class SpanOfDaysTests
{
    private const int Logs = 100;

    // A piece sold in February and one in March, so that every span below has a wage; rent of 61 for March alone; a sander of 75
    // that lasts 96 months: 0.78125 each, so 0.78, 0.78 and 0.78 in January, February and March (0.78, 1.56, 2.34 so far).
    private static readonly SalesLog Log = new()
    {
        Date = new(2026, 4, 30),
        Pieces = [Desk("A", new(2026, 2, 20)), Desk("B", new(2026, 3, 10))],
        Tools = [new("sander", new(2026, 1, 5), 75, null, null, 96)],
        Overheads = [new(new(2026, 3, 1), "rent", 61)],
    };

    /// <summary>61 × 14 / 31 = 27.548 and 0.78 × 14 / 31 = 0.352; what is left of 61 and of 0.78 is 33.45 and 0.43.</summary>
    [Theory]
    [InlineData("2026-03-01..2026-03-14", 27.55, 0.35)]
    [InlineData("2026-03-15..2026-03-31", 33.45, 0.43)]
    [InlineData("2026-03", 61, 0.78)]
    [InlineData("2026-Q1", 61, 2.34)]
    [InlineData("2026-02-15..2026-03-14", 27.55, 0.74)] // half of February: 0.78 × 14 / 28 = 0.39, and 0.35
    [InlineData("2026-03-14..2026-03-14", 1.97, 0.02)] // 27.55 less 61 × 13 / 31 = 25.58; 0.35 less 0.33
    public void Two_weeks_carry_their_share_of_the_months_rent_and_wear_by_hand(string span, decimal rent, decimal wear)
    {
        var report = QuarterReport.Of(Log, ReportPeriod.Parse(span)!);
        Assert.Equal((rent, wear), (report.Profit.Overheads, report.Profit.ToolWear));
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
        Assert.Equal(0, report.StillToArise);
    }

    /// <summary>
    /// The rent is paid on 1 March. Of the first two weeks 27.55 are their own and 33.45 paid ahead; the sander is worth
    /// 75 − 1.56 − 0.35. The rest of the month pays nothing and bears 33.45.
    /// </summary>
    [Fact]
    public void Rent_paid_ahead_is_money_out_before_it_is_a_cost_and_a_tool_wears_day_by_day_by_hand()
    {
        var first = QuarterReport.Of(Log, ReportPeriod.Parse("2026-03-01..2026-03-14")!);
        var rest = QuarterReport.Of(Log, ReportPeriod.Parse("2026-03-15..2026-03-31")!);
        Assert.Equal((-33.45m, 33.45m), (first.Moved.OtherDay, rest.Moved.OtherDay));
        Assert.Equal((40 + 61m, 0m), (first.Cash.Out, rest.Cash.Out)); // B was bought on 1 March
        Assert.Equal((73.44m, 73.09m, 72.66m), (first.Opening.Tools, first.Closing.Tools, rest.Closing.Tools));
        Assert.Contains("paid on another day than counted -33.45", QuarterSentences.ProfitToCash(first), StringComparison.Ordinal);
    }

    /// <summary>
    /// B was sold in the two weeks for 100, with 40 paid and 5 hours: 100 − 40 − 27.55 − 0.35 = 32.10, or 6.42 an hour. Its full
    /// wage keeps the whole share it carries, whatever the span: all three months of A's and B's work.
    /// </summary>
    [Fact]
    public void The_wage_of_two_weeks_bears_two_weeks_and_the_full_wage_all_that_the_flip_carries_by_hand()
    {
        WageBridge weeks = WagesReport.Of(Log, ReportPeriod.Parse("2026-03-01..2026-03-14")).Bridge!;
        WageBridge month = WagesReport.Of(Log, ReportPeriod.Parse("2026-03")).Bridge!;
        Assert.Equal((32.10m, 5m, 6.42m), (weeks.SpanProfit, weeks.SpanHours, weeks.SpanWage));
        // The whole of March: 60 − 61 − 0.78.
        Assert.Equal(-1.78m, month.SpanProfit);
        Assert.Equal(month.FullProfit, weeks.FullProfit);
    }

    /// <summary>As of 14 March the quarter has borne 27.55 of the rent and 1.56 + 0.35 of the sander; 33.45 + 0.43 is to come.</summary>
    [Fact]
    public void A_running_quarter_bears_rent_up_to_today_and_says_what_is_to_come_by_hand()
    {
        SalesLog log = Log.AsOf(new(2026, 3, 14));
        var report = QuarterReport.Of(log, ReportPeriod.Parse("2026-Q1")!);
        Assert.Equal((27.55m, 1.91m, 33.88m), (report.Profit.Overheads, report.Profit.ToolWear, report.StillToArise));
        const string Said = "Rent and wear of tools count by days, up to 2026-03-14: 33.88 for the rest of that month is still to come.";
        Assert.Contains(Said, QuarterSentences.Beneath(report));
        var wages = WagesReport.Of(log, ReportPeriod.Parse("2026-Q1"));
        Assert.Equal(report.Hours.Bridge!.SpanProfit, wages.Bridge!.SpanProfit);
        Assert.Contains(Said, WagesSentences.Missing(wages, all: false));

        // February is over, and so is the quarter once April has come.
        Assert.Equal(0, WagesReport.Of(log, ReportPeriod.Parse("2026-02")).StillToArise);
        Assert.DoesNotContain(QuarterSentences.Beneath(QuarterReport.Of(Log, ReportPeriod.Parse("2026-Q1")!)), text => text.Contains("to come", StringComparison.Ordinal));
    }

    /// <summary>75 × 20 / 96 = 15.625: half a cent is one. 75 × 19 / 96 = 14.84, so the twentieth month wears 0.79.</summary>
    [Fact]
    public void Half_a_cent_of_wear_is_a_cent_by_hand()
    {
        var report = QuarterReport.Of(Log with { Date = new(2027, 8, 31), Pieces = [], Overheads = [] }, ReportPeriod.Parse("2027-08")!);
        Assert.Equal((75 - 15.63m, 0.79m), (report.Closing.Tools, report.Profit.ToolWear));
        CostLine half = new(CostKind.Overhead, new(2026, 4, 1), 0.03m, "rent", new("overheads.csv", 2, ".")) { Until = new(2026, 4, 30) };
        // 0.03 × 15 / 30 = 0.015 and 0.03 × 5 / 30 = 0.005.
        Assert.Equal((0.02m, 0.01m), (half.ArisenBy(new(2026, 4, 15), Currency.Of("USD")), half.ArisenBy(new(2026, 4, 5), Currency.Of("USD"))));
    }

    [Fact]
    public void Spans_that_join_add_up_for_every_split_of_a_year_in_any_currency() => Gen.Select(
        MessyLogs.Any, Gen.Int[2022, 2026]).Sample(
        (log, year) =>
        {
            QuarterBooks books = new(log);
            DateOnly from = new(year, 1, 1), to = new(year, 12, 31);
            var whole = ReportPeriod.Of(from, to);
            decimal overheads = books.OverheadsIn(whole), wear = books.WearIn(whole);
            for (DateOnly split = from; split < to; split = split.AddDays(1))
            {
                ReportPeriod first = ReportPeriod.Of(from, split), second = ReportPeriod.Of(split.AddDays(1), to);
                Assert.Equal(overheads, books.OverheadsIn(first) + books.OverheadsIn(second));
                Assert.Equal(wear, books.WearIn(first) + books.WearIn(second));
            }
        },
        iter: Logs);

    /// <summary>A year that is over bears what the files hold for its months, and outings that brought nothing home on their day.</summary>
    [Fact]
    public void A_year_that_is_over_bears_the_rows_of_its_months() => Gen.Select(MessyLogs.Any, Gen.Int[2022, 2026]).Sample(
        (log, year) =>
        {
            QuarterBooks books = new(log);
            decimal outings = books.Costs.Overheads
                .Where(line => line.Origin.File == Columns.Trips.File && line.Date?.Year == year).Sum(line => line.Amount);
            if (log.Date >= new DateOnly(year, 12, 31))
            {
                Assert.Equal(
                    log.Overheads.Where(row => row.Month.Year == year).Sum(row => row.Amount) + outings,
                    books.OverheadsIn(ReportPeriod.Of(new(year, 1, 1), new(year, 12, 31))));
            }
        },
        iter: Logs * 3);

    [Fact]
    public void No_days_share_of_a_month_is_off_by_more_than_the_smallest_unit() => Gen.Select(
        Gen.OneOf("USD", "JPY", "KWD").Select(Currency.Of), Gen.Int[-90_000, 90_000], Gen.Int[0, 59], Gen.Int[1, 31], Gen.Int[1, 31]).Sample(
        (currency, units, month, a, b) =>
        {
            decimal unit = currency.MinorDigits switch { 0 => 1, 2 => 0.01m, _ => 0.001m };
            DateOnly first = new DateOnly(2023, 1, 1).AddMonths(month), last = first.AddMonths(1).AddDays(-1);
            CostLine rent = new(CostKind.Overhead, first, units * unit, "rent", new("overheads.csv", 2, ".")) { Until = last };
            DateOnly from = first.AddDays(Math.Min(a, b) - 1), to = first.AddDays(Math.Max(a, b) - 1);
            to = to > last ? last : to;
            from = from > to ? to : from;
            decimal share = rent.Within(from, to, currency);
            Assert.Equal(currency.Round(share), share);
            decimal days = to.DayNumber - from.DayNumber + 1;
            Assert.InRange(share - rent.Amount * days / last.Day, -unit, unit);
            Assert.Equal(rent.Amount, rent.Within(DateOnly.MinValue, DateOnly.MaxValue, currency));
            Assert.Equal(0, rent.Within(last.AddDays(1), DateOnly.MaxValue, currency) + rent.Within(DateOnly.MinValue, first.AddDays(-1), currency));
        },
        iter: Logs * 20);

    private static Piece Desk(string id, DateOnly sold) => new()
    {
        Id = id,
        Type = "desk",
        BoughtOn = sold.AddDays(-9),
        BoughtPrice = 40,
        ReadyOn = sold.AddDays(-2),
        SoldOn = sold,
        SoldPrice = 100,
        Fees = 0,
        Hours = 5,
        SuppliesCost = 0,
    };
}
