using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests.Plots;

/// <summary>The plots of wages, of a quarter and of the gaps of a log, from logs worked by hand.</summary>
public sealed class ReportPlotTests
{
    // Gain: (100 − 20 − 0 − 0) / 8 h = 10. Loss: (60 − 90) / 2 h = −15. Together 50 / 10 h = 5.
    private static readonly SalesLog TwoFlips = new()
    {
        Date = new(2026, 6, 30),
        Workshop = new() { TargetWage = 15 },
        Pieces =
        [
            Sold("Gain", new(2026, 2, 10), 20, 100, 8),
            Sold("Loss", new(2026, 5, 10), 90, 60, 2),
        ],
    };

    [Fact]
    public void TheWagePlotSaysWhatTheFlipsPaidAndWhichLost()
    {
        Figure figure = WagePlot.Of(WagesReport.Of(TwoFlips));
        Assert.Equal("Your 2 flips paid 5.00 an hour (full wage), short of the 15.00 you want, though luck may be why", figure.Title);
        Assert.EndsWith(
            "1 flip lost money: Loss. By quarter: 2026-Q1 10.00 over 1 flip; 2026-Q2 -15.00 over 1 flip.",
            figure.Alternative, StringComparison.Ordinal);
        Assert.Equal(
            ["Loss", "all 5.00", "wanted 15.00", "each quarter"],
            figure.Texts.Select(text => text.Text).Where(text => text is "Loss" or "each quarter" || text.StartsWith("all ", StringComparison.Ordinal) || text.StartsWith("wanted ", StringComparison.Ordinal)));
    }

    [Fact]
    public void AWageFarBeyondTheOthersStandsAtTheEdgeWithItsNumber()
    {
        // (120 + 65 mod 60 − 30 − 6 − 15) / 0.2 h = 370; the other flips pay up to about 25.
        Figure figure = WagePlot.Of(MadeUp.Wages(40));
        Assert.Contains(figure.Texts, text => text.Text.ReplaceLineEndings(" ").Contains(
            "beyond it, farthest P5 with 370.00.", StringComparison.Ordinal));
    }

    [Fact]
    public void AFlipWithoutADayOfSaleIsCountedButNotDrawn()
    {
        SalesLog log = TwoFlips with { Pieces = [TwoFlips.Pieces[0], TwoFlips.Pieces[1] with { SoldOn = null }] };
        Assert.Contains(WagePlot.Of(WagesReport.Of(log)).Texts, text => text.Text.ReplaceLineEndings(" ").Contains(
            "Without hours, price or day, so not drawn: 1 flip.", StringComparison.Ordinal));
        log = log with { Pieces = [log.Pieces[1]] };
        Assert.EndsWith("fill in sold_on.", LayoutCheck.Sentence(WagePlot.Of(WagesReport.Of(log))), StringComparison.Ordinal);
    }

    [Fact]
    public void TheQuarterGoesFromTheSalesToWhatWasMade()
    {
        QuarterReport report = QuarterReport.Of(TwoFlips, ReportPeriod.Parse("2026-Q1")!);
        Assert.Equal<WaterfallStep>(
            [new("sales", 100), new("paid for the pieces sold", -20), new("what you made", 80)], [.. report.Profit.Waterfall()]);
        Figure figure = QuarterPlot.Of(report);
        Assert.Equal("In 2026-Q1 you made 80.00 for 8 hours: 10.00 an hour (wage of the quarter). It paid less than you want: 5.00 below 15.00", figure.Title);
        Assert.Contains("sales 100, paid for the pieces sold -20, what you made 80", figure.Alternative, StringComparison.Ordinal);
        Assert.Contains("2026-Q1: 80.00, 1 sold; 2025-Q4, the one before: the log begins later", figure.Alternative, StringComparison.Ordinal);
        // The piece sold in May was bought 30 days before, so nothing is in stock in March.
        Assert.EndsWith("No piece in stock on 2026-03-31.", figure.Alternative, StringComparison.Ordinal);
    }

    [Fact]
    public void StockStandsByDaysSinceBought() => Assert.Contains(
        "by days since bought: 1 piece that cost 90.00. 0-30 days: 90.00, 1 piece; 31-90 days: none;",
        QuarterPlot.Of(QuarterReport.Of(TwoFlips with { Date = new(2026, 4, 20) }, ReportPeriod.Parse("2026-04")!)).Alternative,
        StringComparison.Ordinal);

    [Fact]
    public void ALossIsCalledOne()
    {
        QuarterReport report = QuarterReport.Of(TwoFlips, ReportPeriod.Parse("2026-Q2")!);
        Assert.Equal(new("what you lost", -30), report.Profit.Waterfall()[^1]);
        Assert.Contains("2026-Q2: -30.00, 1 sold; 2026-Q1, the one before: 80.00, 1 sold", QuarterPlot.Of(report).Alternative, StringComparison.Ordinal);
    }

    [Fact]
    public void TheGapsOfALogStandFirst()
    {
        LogCheck check = LogCheck.Of(LogFolder.ReadPieces(
            """
            id,type,bought_price,listed_on,sold_on,sold_price,hours,notes
            P1,desk,10,2025-01-20,2025-02-01,90,5,
            P2,chair,5,2025-01-22,,,,
            P3,table,5,,,,,cracked
            """));
        ColumnFilling Of(string column) => check.Filling.Single(filling => filling.Column == column);
        Assert.Equal(new("sold_price", "sold", 1, 1, 0, null, false), Of("sold_price"));
        Assert.Equal(new("hours", "offered", 2, 1, 0, "hours.csv", false), Of("hours"));
        Assert.Equal(new("bought_price", "all", 3, 3, 0, "the price of their lot", false), Of("bought_price"));
        Assert.Equal(new("left_on", "gone", 0, 0, 0, null, false), Of("left_on"));
        Assert.Equal(2, Of("notes").Missing);
        Figure figure = LogPlot.Of(check);
        Assert.StartsWith("Most often missing: width (3 of 3), depth (3 of 3), height (3 of 3)", figure.Title, StringComparison.Ordinal);
        Assert.Contains("hours 1 of 2 offered", figure.Alternative, StringComparison.Ordinal);
        Assert.DoesNotContain("left_on", figure.Alternative, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatAnotherTableTellsIsNoGap()
    {
        SalesLog log = TwoFlips with
        {
            Pieces = [.. TwoFlips.Pieces.Select(piece => piece with { Hours = null, Fees = null, Channel = "Market" })],
            Hours = [new("gain", new(2026, 2, 1), WorkTask.Painting, 8)],
            Workshop = new() { Fees = new Workshop().Fees.Add("market", new(0.1m, 0)) },
        };
        ColumnFilling Of(string column) => ColumnFilling.OfPieces(log).Single(filling => filling.Column == column);
        Assert.Equal((0, 1, 1), (Of("hours").Written, Of("hours").Elsewhere, Of("hours").Missing));
        Assert.Equal((2, 0), (Of("fees").Elsewhere, Of("fees").Missing));
    }

    [Fact]
    public void TicksOfDaysStandAtTheFirstOfMonthsOrYears()
    {
        Assert.Equal(["2026-02", "2026-03"], Labels(new(2026, 1, 20), new(2026, 3, 10)));
        Assert.Equal(["2024-07", "2025-01", "2025-07", "2026-01"], Labels(new(2024, 3, 1), new(2026, 4, 1)));
        Assert.Equal(["1996", "2000", "2004", "2008", "2012", "2016", "2020", "2024"], Labels(new(1996, 3, 1), new(2024, 6, 1)));
        Assert.NotEmpty(Labels(DateOnly.MinValue, DateOnly.MaxValue));

        static string[] Labels(DateOnly first, DateOnly last) => [.. Scale.Days([first, last]).Ticks.Select(tick => tick.Label)];
    }

    private static Piece Sold(string id, DateOnly day, decimal bought, decimal sold, decimal hours) => new()
    {
        Id = id,
        Type = "desk",
        BoughtOn = day.AddDays(-30),
        BoughtPrice = bought,
        ListedOn = day.AddDays(-20),
        SoldOn = day,
        SoldPrice = sold,
        Fees = 0,
        DeliveryCost = 0,
        SuppliesCost = 0,
        Hours = hours,
    };
}
