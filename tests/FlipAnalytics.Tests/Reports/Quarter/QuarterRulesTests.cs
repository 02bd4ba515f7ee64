using System.Text.Json;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>The last line of a quarter's page says which rules of thumb its figures rest on, and no other.</summary>
public sealed class QuarterRulesTests
{
    private static readonly ReportPeriod Quarter = ReportPeriod.Parse("2026-Q1")!;

    private static readonly SalesLog Plain = new()
    {
        Date = new(2026, 3, 31),
        Pieces = [Piece("A") with { SoldOn = new(2026, 3, 1), SoldPrice = 150, Fees = 0, Hours = 3 }, Piece("B")],
    };

    [Fact]
    public void ALogThatLeavesNoChoiceRestsOnNoRule()
    {
        var report = QuarterReport.Of(Plain, Quarter);
        Assert.Empty(report.Rules);
        Assert.DoesNotContain("Rules of thumb", QuarterText.Render(report), StringComparison.Ordinal);
    }

    public static TheoryData<string> Rules => [.. QuarterRules.All];

    /// <summary>Each log below leaves one choice; where two rules go together the other is named beside it.</summary>
    [Theory]
    [MemberData(nameof(Rules))]
    public void EachRuleIsNamedWhereItIsUsed(string rule)
    {
        (SalesLog log, string[] others) = With(rule);
        Assert.Equal(QuarterRules.All.Where(known => known == rule || others.Contains(known)), QuarterReport.Of(log, Quarter).Rules);
    }

    /// <summary>A piece sold before the quarter and a purchase after it make no figure of the quarter.</summary>
    [Fact]
    public void WhatAnotherQuarterRestsOnIsNotNamed()
    {
        (SalesLog log, _) = With("outings equally");
        log = log with { Pieces = [.. log.Pieces.Select(piece => piece with { BoughtOn = new(2025, 11, 2), SoldOn = new(2025, 12, 1), SoldPrice = 90 })] };
        Assert.Equal(["driving by rate"], QuarterReport.Of(log, Quarter).Rules.AsEnumerable());
        Assert.Empty(QuarterReport.Of(log with { Trips = [log.Trips[0] with { Date = new(2025, 11, 2) }] }, Quarter).Rules);
    }

    [Fact]
    public void TheReadmeSaysWhatEachRuleIs()
    {
        string readme = House.Repository.Read("README.md");
        string section = readme[readme.IndexOf("### Rules of thumb", StringComparison.Ordinal)..];
        string table = string.Concat(section.Split('\n').TakeWhile(line => !line.StartsWith("## ", StringComparison.Ordinal))
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Select(line => line.Split('|')[1] + ", "));
        Assert.Equal(QuarterRules.All, table.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Skip(1));
    }

    [Fact]
    public void TheDemosPageHasTheWayToTheMoneyTheAgeOfStockThreeThingsToDoAndTheRulesLast()
    {
        SalesLog log = SalesLogReader.Read(House.Repository.PathOf("data-demo")).Log!.AsOf(new(2026, 3, 31));
        foreach (string span in new[] { "2026-Q1", "2025-Q4", "2025-Q3", "2025-Q2", "2025-Q1", "2025" })
        {
            var report = QuarterReport.Of(log, ReportPeriod.Parse(span)!);
            string page = QuarterText.Render(report);
            string said = string.Join(' ', page.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            Assert.InRange(TextLines.LineCount(page), 20, TextLines.ScreenLines);
            Assert.Contains(QuarterSentences.ProfitToCash(report, isAfterTheMoney: true)!, said, StringComparison.Ordinal);
            Assert.Contains("Since bought: 0-30 days", said, StringComparison.Ordinal);
            Assert.Equal(Math.Min(3, report.Steps.Length), page.Split('\n').Count(line => line.StartsWith("  - ", StringComparison.Ordinal)));
            Assert.EndsWith($" {QuarterRules.Sentence(report.Rules)}", said, StringComparison.Ordinal);
            Assert.EndsWith(
                QuarterRules.Sentence(report.Rules)!,
                string.Join(' ', QuarterText.Render(report, all: true).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
                StringComparison.Ordinal);
        }

        using var document = JsonDocument.Parse(QuarterJson.Render(QuarterReport.Of(log, Quarter)));
        Assert.Equal("outings equally", document.RootElement.GetProperty("rules")[0].GetString());
    }

    [Fact]
    public void WhateverIsInTheLogTheRulesAreSomeOfThoseInTheReadme() => QuarterLaws.Cases.Sample(
        given =>
        {
            var report = QuarterReport.Of(given.Log, ReportPeriod.Of(given.From, given.To));
            Assert.Equal(QuarterRules.All.Where(report.Rules.Contains), report.Rules);
            Assert.Equal(report.Cash.DrivingReckoned != 0 || report.Rules.Contains("driving by rate"), report.Rules.Contains("driving by rate"));
        },
        iter: 200);

    private static (SalesLog Log, string[] Others) With(string rule)
    {
        Piece a = Plain.Pieces[0], b = Plain.Pieces[1];
        SalesLog paint = Plain with
        {
            Supplies = [new("paint", null, new(2026, 1, 2), 2, "quart", 40, 100, "ft2/quart", 2)],
            Uses = [new("A", new(2026, 2, 1), "paint", 1, "quart", null, null, 2)],
        };
        SalesLog rent = Plain with { Overheads = [new(new(2026, 2, 1), "rent", 30, 2)] };
        return rule switch
        {
            "lots by expected price" => (Lot(100, 50), []),
            "lots equally" => (Lot(100, null), []),
            "outings equally" => (Plain with
            {
                Workshop = new() { Mileage = [new(new(2025, 1, 1), 0.5m)] },
                Pieces = [a with { Trip = "T" }, b with { Trip = "T" }],
                Trips = [new("T", new(2026, 1, 10), 12, null, 1, null, 2)],
            }, ["driving by rate"]),
            "driving by rate" => (Plain with
            {
                Workshop = new() { Mileage = [new(new(2025, 1, 1), 0.5m)] },
                Trips = [new("T", new(2026, 1, 10), 12, null, null, null, 2)],
            }, []),
            "oldest can first" => (paint, []),
            "cans at their average" => (paint with { Workshop = new() { Costing = CostingMethod.Average } }, []),
            "15 % lost of coats" => (paint with { Uses = [new("A", new(2026, 2, 1), "paint", null, null, 2, 20, 2)] }, ["oldest can first"]),
            "sandpaper by hours" => (paint with { Pieces = [a with { ReadyOn = new(2026, 2, 1) }, b], Uses = [] }, []),
            "wear by months" => (Tools(new Tool("sander", new(2026, 1, 1), 30, null, null, 30, 2)), []),
            "wear by pieces" => (Tools(new Tool("brush", new(2026, 1, 1), 30, null, 30, null, 2)), []),
            "wear by months and pieces" => (Tools(
                new Tool("sander", new(2026, 1, 1), 30, null, null, 30, 2), new Tool("brush", new(2026, 1, 1), 30, null, 30, null, 3)), []),
            "part of a month by days" => (rent with { Date = new(2026, 2, 10) }, []),
            "rent by hours" => (rent with { Pieces = [a with { ReadyOn = new(2026, 2, 1) }, b] }, []),
            "booth rent by days for sale" => (Plain with
            {
                Pieces = [a with { ListedOn = new(2026, 2, 1), Channel = "booth" }, b],
                Overheads = [new(new(2026, 2, 1), "rent", 30, 2) { Channel = "booth" }],
            }, []),
            "unknown hours averaged" => (rent with { Pieces = [a with { ReadyOn = new(2026, 2, 1) }, b with { ReadyOn = new(2026, 2, 2) }] }, ["rent by hours"]),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "A rule without a log that uses it."),
        };

        SalesLog Lot(decimal? first, decimal? second) => Plain with
        {
            Pieces = [a with { Lot = "L", ExpectedPrice = first }, b with { Lot = "L", BoughtPrice = null, ExpectedPrice = second }],
        };

        SalesLog Tools(params Tool[] tools) => Plain with { Pieces = [a with { ReadyOn = new(2026, 2, 1) }, b], Tools = [.. tools] };
    }

    private static Piece Piece(string id) => new() { Id = id, Type = "desk", BoughtOn = new(2026, 1, 10), BoughtPrice = 40 };
}
