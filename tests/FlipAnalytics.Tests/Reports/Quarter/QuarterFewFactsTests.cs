namespace FlipAnalytics.Tests;

/// <summary>Little in the log: a plain sentence instead of a zero.</summary>
public sealed class QuarterFewFactsTests
{
    [Fact]
    public void SalesWithoutADayBelongToNoQuarterAndAreSaid()
    {
        QuarterReport report = Of("type,bought_price,sold_price\ndresser,40,200\nchair,5,\n", "2026-Q1", new(2026, 3, 31));
        Assert.Equal(
            "In 2026-Q1 no sale is dated, but 1 piece sold for 200 on days not written down: fill in sold_on. No costs fell into it.",
            QuarterSentences.Headline(report));
        Assert.Equal(0, report.Profit.Net);
        Assert.Equal(["pieces sold", "pieces bought"], report.Undated.Select(facts => facts.What));
        // The chair is still here; the dresser is not.
        Assert.Equal(5, report.Closing.Cost);
    }

    [Fact]
    public void WithoutHoursThereIsNoFigureForAnHour()
    {
        QuarterReport report = Of(
            "type,bought_on,bought_price,sold_on,sold_price\ndresser,2026-01-05,40,2026-02-01,200\n", "2026-Q1", new(2026, 3, 31));
        Assert.Null(report.Hours.Wage);
        Assert.Equal(
            "In 2026-Q1 you made 160. The hours of the pieces sold are not written down, so there is no figure for an hour.",
            QuarterSentences.Headline(report));
    }

    [Fact]
    public void NothingSoldIsSaidAndStockIsStillShown()
    {
        QuarterReport report = Of(
            "type,bought_on,bought_price,listed_on\ndresser,2025-08-05,40,2025-09-01\n", "2026-Q1", new(2026, 3, 31));
        Assert.Equal("In 2026-Q1 you sold nothing. No costs fell into it.", QuarterSentences.Headline(report));
        Assert.Equal(0, report.Ratios.SellThrough.Share);
        Assert.Null(report.Ratios.BreakEven);
        // 211 days from 1 September to 31 March.
        Assert.Equal(
            "Lower the price or give up: 1 piece on sale for over 90 days holds 40.00. row 2, dresser, 211 days, cost 40.00.",
            Assert.Single(report.Steps).Text);
    }

    [Fact]
    public void ALogWithoutAnythingGetsAReport()
    {
        QuarterReport report = QuarterReport.Of(new() { Date = new(2026, 2, 10) }, ReportPeriod.Parse("2026-Q1")!);
        Assert.True(report.IsSoFar);
        Assert.StartsWith("So far in 2026-Q1, up to 2026-02-10, you sold nothing.", QuarterText.Render(report), StringComparison.Ordinal);
        Assert.Null(report.Ratios.Stock.Turnover);
        Assert.Null(report.Ratios.SellThrough.Share);
    }

    [Fact]
    public void AQuarterThatTheCalendarHasPassedIsNeverCalledSoFar()
    {
        QuarterReport report = QuarterReport.Of(new() { Date = new(2026, 2, 10) }, ReportPeriod.Parse("2026-Q1")!) with { IsOver = true };
        string all = QuarterText.Render(report, all: true);
        Assert.False(report.IsSoFar);
        Assert.StartsWith("In 2026-Q1, as known on 2026-02-10, you sold nothing.", all, StringComparison.Ordinal);
        Assert.DoesNotContain("so far", all, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void AQuarterThatIsNotOverIsComparedWithAsManyDaysOfTheOneBefore()
    {
        // 10 February is day 41 of the quarter; day 41 of the last one is 10 November.
        QuarterReport report = QuarterReport.Of(new() { Date = new(2026, 2, 10) }, ReportPeriod.Parse("2026-Q1")!);
        Assert.Equal("2025-10-01..2025-11-10", report.AgainstBefore!.With.Name);
        Assert.Equal("2025-01-01..2025-02-10", report.AgainstYearEarlier!.With.Name);
    }

    [Fact]
    public void AYearIsComparedWithTheYearBeforeOnce()
    {
        QuarterReport report = QuarterReport.Of(new() { Date = new(2026, 12, 31) }, ReportPeriod.Parse("2026")!);
        Assert.Equal("2025", report.AgainstBefore!.With.Name);
        Assert.Null(report.AgainstYearEarlier);
    }

    [Theory]
    [InlineData("2026-03-31", "2026-Q1")]
    [InlineData("2026-04-20", "2026-Q1")]
    [InlineData("2026-02-10", "2025-Q4")]
    public void TheUsualQuarterIsTheLastThatIsOver(string asOf, string quarter) => Assert.Equal(
        quarter,
        QuarterReport.UsualPeriod(new()
        {
            Date = DateOnly.ParseExact(asOf, "yyyy-MM-dd"),
            Pieces = [new() { Id = "A", Type = "chair", BoughtOn = new(2025, 5, 1) }],
        }).Name);

    [Fact]
    public void TheUsualQuarterOfALogThatHasJustBegunIsTheCurrentOne() => Assert.Equal(
        "2026-Q1",
        QuarterReport.UsualPeriod(new()
        {
            Date = new(2026, 2, 10),
            Pieces = [new() { Id = "A", Type = "chair", BoughtOn = new(2026, 1, 5) }],
        }).Name);

    [Fact]
    public void ASpanThatHasNotBegunIsRefused() => Assert.Contains(
        "not after 2026-02-10",
        Assert.Throws<ArgumentOutOfRangeException>(
            () => QuarterReport.Of(new() { Date = new(2026, 2, 10) }, ReportPeriod.Parse("2026-Q2")!)).Message);

    private static QuarterReport Of(string pieces, string period, DateOnly asOf) =>
        QuarterReport.Of(LogFolder.ReadPieces(pieces).Log!.AsOf(asOf), ReportPeriod.Parse(period)!);
}
