using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>Supplies in the quarter: what is in cans, what was lost, and what a count settles.</summary>
public sealed class QuarterCansTests
{
    private static readonly ReportPeriod Quarter = ReportPeriod.Parse("2026-Q1")!;

    // 4 quarts at 80.00: 1 on A, 20.00; a quarter dried up, 5.00; 2.75 by the books, 2 counted: 15.00 missing, 40.00 left.
    private static readonly SalesLog Counted = new()
    {
        Date = new(2026, 4, 5),
        Pieces =
        [
            new()
            {
                Id = "A", Type = "dresser", BoughtOn = new(2026, 1, 5), BoughtPrice = 40, ReadyOn = new(2026, 1, 20),
                ListedOn = new(2026, 1, 21), SoldOn = new(2026, 2, 20), SoldPrice = 200, Fees = 0, Hours = 8,
            },
        ],
        Supplies = [new("paint", null, new(2025, 12, 28), 4, "quart", 80, null, null, 2)],
        Uses =
        [
            new("A", new(2026, 1, 8), "paint", 1, "quart", null, null, 2),
            new(null, new(2026, 2, 1), "paint", 0.25m, "quart", null, null, 3),
        ],
        Counts = [new(new(2026, 3, 31), "paint", 2, null, null, 2)],
    };

    // B says what its paint cost and nothing of the can: 4 quarts by the books, less what A used.
    private static readonly SalesLog Stated = Counted with
    {
        Pieces = [.. Counted.Pieces, new() { Id = "B", Type = "chair", BoughtOn = new(2026, 2, 1), BoughtPrice = 5, ReadyOn = new(2026, 2, 10), SuppliesCost = 12, Hours = 1 }],
        Uses = [Counted.Uses[0]],
        Counts = [],
    };

    [Fact]
    public void WasteAndWhatACountMissesAreALineOfTheProfit()
    {
        var report = QuarterReport.Of(Counted, Quarter);
        Assert.Equal(20, report.Profit.SuppliesLost);
        Assert.Equal(200 - 40 - 20 - 20, report.Profit.Net);
        Assert.Equal((80, 40), (report.Opening.InCans, report.Closing.InCans));
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
        Assert.Equal(
            [("in cans at the start", 80m), ("used", -20m), ("wasted, or missing at a count", -20m)],
            report.Sums.Single(sum => sum.Name == "supplies in cans").Terms.Select(term => (term.What, term.Amount)));
        Assert.Equal(report.Profit.Net, report.Hours.Wage!.Profit);
        Assert.Equal(-20, report.Hours.Bridge!.Lines.Single(line => line.Name == "supplies_lost").Profit);
        Assert.Equal(0, report.Hours.Bridge.Difference);
    }

    /// <summary>80.00 of paint: 20.00 on the dresser, 20.00 lost, 40.00 left; with the 40.00 paid for it, 120.00 in the files.</summary>
    [Fact]
    public void TheSumsOfTheWagesSayWhatWasLost()
    {
        var wages = WagesReport.Of(Counted);
        string text = string.Join(' ', WagesText.Render(wages, null, all: true).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(
            "Costs: these flips 60.00 + in cans and tools 40.00 + supplies lost 20.00 = all in the files 120.00; off by 0.00.",
            text, StringComparison.Ordinal);
        var costs = WagesTables.Reconciliation(wages).Rows
            .Where(row => ((string)row[0]!).StartsWith("cost of", StringComparison.Ordinal)).GroupBy(row => (string)row[0]!);
        Assert.All(costs, cost => Assert.Equal(0m, cost.Sum(row => (decimal)row[2]!)));
    }

    [Fact]
    public void TheListByCanIsInTheTextTheTableAndTheDocument()
    {
        var report = QuarterReport.Of(Counted, Quarter);
        SupplyCan can = Assert.Single(report.Cans);
        Assert.Equal(
            new SupplyCan("paint", new(2025, 12, 28), 4, "quart", 1, 0.25m, 0.75m, 2, 80, 20, 5, 15, 40, 2), can);
        string all = QuarterText.Render(report, all: true);
        Assert.Contains("- supplies wasted, or missing at a count", all, StringComparison.Ordinal);
        Assert.Contains("  paint, 4 quart of 2025-12-28                                 1          1          2      40.00\n", all, StringComparison.Ordinal);
        Assert.DoesNotContain("can by can", QuarterText.Render(report), StringComparison.Ordinal);
        Assert.All(all.Split('\n'), line => Assert.True(line.Length <= 100, line));
        ReportTable table = QuarterTables.Of(report).Single(table => table.Name == "supplies-by-can");
        Assert.Equal(report.Cans.Length, table.Rows.Length);
        using var document = JsonDocument.Parse(QuarterJson.Render(report));
        Assert.Equal(40m, document.RootElement.GetProperty("cans")[0].GetProperty("value_left").GetDecimal());
    }

    /// <summary>Piece B states 12.00; nobody knows whether it is off the 60.00 in the can.</summary>
    [Fact]
    public void WhatPiecesStateWithoutACanIsADoubtAndNoOtherNumber()
    {
        var report = QuarterReport.Of(Stated, Quarter);
        Assert.Equal((60, 12), (report.Closing.InCans, report.Closing.StatedBeyondCans));
        foreach (bool all in new[] { false, true })
        {
            string text = string.Join(' ', QuarterText.Render(report, all).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            Assert.Contains(
                all ? "Of what is in cans 12.00 may be gone: pieces state supplies that no can was charged for. A count (counts.csv) settles it."
                    : "Of what is in cans 12.00 may be gone; a count (counts.csv) settles it.",
                text, StringComparison.Ordinal);
            Assert.DoesNotContain("at most", text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("2026-02-09", 2.5, 12)] // counted before the work on B
    [InlineData("2026-02-10", 2.5, 0)] // on its day: 0.5 quart missing, 10.00 of the 12.00
    [InlineData("2026-03-31", 3, 0)] // nothing missing: the 12.00 came from no can of these
    [InlineData("2026-04-01", 3, 12)] // after the quarter
    public void ACountAfterThePiecesEndsTheDoubt(string day, decimal left, decimal doubt)
    {
        SalesLog log = Stated with { Counts = [new(DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), "paint", left, null, null, 2)] };
        var report = QuarterReport.Of(log, Quarter);
        Assert.Equal(doubt, report.Closing.StatedBeyondCans);
        Assert.Equal(doubt == 0, QuarterSentences.CansInDoubt(report) is null);
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
    }

    /// <summary>0.75 quart is missing, 15.00; 12.00 of it is what B states, so 3.00 is lost, and the stock of pieces is as it was.</summary>
    [Fact]
    public void WhatPiecesStateIsNotLostAsWell()
    {
        SalesLog log = Stated with { Counts = [new(new(2026, 3, 31), "paint", 2.25m, null, null, 2)] };
        var report = QuarterReport.Of(log, Quarter);
        Assert.Equal((3m, 12m, 45m), (report.Profit.SuppliesLost, report.Moved.StatedByCounts, report.Closing.InCans));
        Assert.Equal(17, report.Closing.Cost);
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
    }

    /// <summary>
    /// A chair sold on 5 January was painted, it says, on 20 January with a can bought on 10 January: its cost counts with the
    /// sale, the can gives it up when it is there, and no evening has less than nothing in cans.
    /// </summary>
    [Theory]
    [InlineData("2026-01-01..2026-01-07", 0, 8, 0)]
    [InlineData("2026-01-08..2026-01-31", 0, 0, 24)]
    [InlineData("2026-01-01..2026-01-31", 0, 8, 24)]
    public void ACanIsNeverBelowZeroThoughThePieceLeftBeforeItWasBought(string span, decimal opening, decimal used, decimal closing)
    {
        SalesLog log = new()
        {
            Date = new(2026, 2, 1),
            Pieces = [new() { Id = "A", Type = "chair", BoughtOn = new(2026, 1, 2), BoughtPrice = 5, SoldOn = new(2026, 1, 5), SoldPrice = 60, Fees = 0, Hours = 1 }],
            Supplies = [new("paint", null, new(2026, 1, 10), 32, "fl oz", 32, null, null, 2)],
            Uses = [new("A", new(2026, 1, 20), "paint", 8, "fl oz", null, null, 2)],
        };
        var report = QuarterReport.Of(log, ReportPeriod.Parse(span)!);
        Assert.Equal((opening, used, closing), (report.Opening.InCans, report.Profit.Supplies, report.Closing.InCans));
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
    }

    [Fact]
    public void WasteWithoutAnyDayIsInNoSpanAndSaidSo()
    {
        SalesLog log = Counted with
        {
            Supplies = [Counted.Supplies[0] with { BoughtOn = null }],
            Uses = [Counted.Uses[0], Counted.Uses[1] with { Date = null }],
            Counts = [],
        };
        var report = QuarterReport.Of(log, Quarter);
        Assert.Equal(0, report.Profit.SuppliesLost);
        Assert.Equal((1, 5m), (report.Undated.Single(facts => facts.What == "supplies wasted").Count, report.Undated.Single(facts => facts.What == "supplies wasted").Amount));
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
    }
}
