using System.Globalization;
using System.Text.RegularExpressions;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>A line of the quarter opens into its parts, down to file and row, and they add up to it.</summary>
public sealed partial class QuarterTrailTests
{
    private const int Logs = 200;

    private static readonly SalesLog Demo =
        SalesLogReader.Read(House.Repository.PathOf("data-demo")).Log!.AsOf(new(2026, 3, 31));

    public static TheoryData<string> Words => [.. QuarterLine.All.Select(line => line.Word)];

    [Fact]
    public void OfEveryLogThePartsOfEveryLineAddUpToItAndFitAScreen() => QuarterLaws.Cases.Sample(
        given =>
        {
            QuarterBooks books = new(given.Log);
            var report = QuarterReport.Of(given.Log, ReportPeriod.Of(given.From, given.To));
            Assert.Empty(QuarterLine.All.SelectMany(line => Breaches(QuarterTrail.Of(books, report, line), given.Log.Workshop)));
        },
        iter: Logs);

    [Theory]
    [MemberData(nameof(Words))]
    public void EveryLineOfTheDemoLogIsTheReportsFigureAndEveryPartStandsInItsFile(string word)
    {
        Dictionary<string, string[]> files = [];
        foreach (string name in new[] { "2024-Q3", "2025-Q1", "2025", "2026-Q1" })
        {
            ReportPeriod period = ReportPeriod.Parse(name)!;
            QuarterTrail trail = QuarterTrail.Of(Demo, period, word);
            Assert.Equal(FigureOf(QuarterReport.Of(Demo, period), word), trail.Total);
            Assert.Equal(0, trail.Difference);
            foreach (QuarterTrailPart part in trail.Parts.Where(part => part.Row is not null))
            {
                if (!files.TryGetValue(part.File!, out string[]? lines))
                    files[part.File!] = lines = File.ReadAllLines(House.Repository.PathOf(Path.Combine("data-demo", part.File!)));
                string line = lines[part.Row!.Value - 1];
                string told = $"{part.Id} {part.Group} {part.What} {part.Rule}";
                // The first cell of the row is the piece, the trip, the tool or the item; of overheads the second, behind the month.
                string[] cells = line.Replace("\"", "", StringComparison.Ordinal).Split(',');
                string named = part.File == "overheads.csv" ? cells[1] : cells[0];
                if (part.File != "hours.csv" || named.Length > 0)
                    Assert.Contains(named, told, StringComparison.OrdinalIgnoreCase);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Words))]
    public void TheAmountsAtTheMarginAddUpToTheLineWhetherCutOrNot(string word)
    {
        QuarterTrail trail = QuarterTrail.Of(Demo, ReportPeriod.Parse("2025")!, word);
        foreach (bool all in new[] { false, true })
        {
            string text = QuarterTrailText.Render(trail, Demo.Workshop, all);
            decimal sum = text.Split('\n').Select(line => AtTheMargin().Match(line)).Where(match => match.Success)
                .Sum(match => decimal.Parse(match.Groups[1].Value, NumberStyles.Number, CultureInfo.InvariantCulture));
            Assert.Equal(trail.Total, sum);
        }
    }

    [Fact]
    public void AYearOfSalesIsCutAtAScreenAndSaysHowManyAreLeft()
    {
        QuarterTrail trail = QuarterTrail.Of(Demo, ReportPeriod.Parse("2025")!, "sales");
        string text = QuarterTrailText.Render(trail, Demo.Workshop);
        int shown = text.Split('\n').Count(line => line.Contains("[pieces.csv", StringComparison.Ordinal));
        Assert.InRange(text.Split('\n').Length, 30, 40);
        Assert.Contains($"--all shows the other {trail.Parts.Length - shown}.", text, StringComparison.Ordinal);
        decimal[] hidden = [.. trail.Parts.Where(part => !text.Contains($"[pieces.csv, line {part.Row}]", StringComparison.Ordinal)).Select(part => part.Amount)];
        Assert.True(hidden.Max() <= trail.Parts.Select(part => part.Amount).OrderDescending().ElementAt(shown - 1));
        Assert.DoesNotContain("--all", QuarterTrailText.Render(trail, Demo.Workshop, all: true), StringComparison.Ordinal);
    }

    [Fact]
    public void FeesSayWhetherTheyAreWrittenDownOrFollowFromARule()
    {
        QuarterTrail trail = Opened("fees");
        Assert.Equal(26.30m, trail.Total);
        Assert.Equal(
            [
                ("D1 dresser, online", new DateOnly(2026, 2, 10), "workshop.toml", null, 21.30m),
                ("C1 chair, stall", new DateOnly(2026, 2, 12), "pieces.csv", 3, 5m),
            ],
            trail.Parts.Select(part => (part.What, part.Date!.Value, part.File!, part.Row, part.Amount)));
        Assert.Equal("10 % of 210 and 0.30, the rule for online.", trail.Parts[0].Rule);
        Assert.Equal("As written down.", trail.Parts[1].Rule);
    }

    // 30 miles at 0.70 and 6 are 27, a third of it on each of the three pieces.
    [Fact]
    public void CostOfSoldOpensPieceByPieceIntoPurchasesSuppliesAndOutings()
    {
        QuarterTrail trail = Opened("cost-of-sold");
        Assert.Equal(90.50m, trail.Total);
        Assert.Equal(
            [
                ("D1 dresser, sold 2026-02-10", "purchases", "pieces.csv", 2, 40m),
                ("D1 dresser, sold 2026-02-10", "supplies", "pieces.csv", 2, 22.50m),
                ("D1 dresser, sold 2026-02-10", "outings", "trips.csv", 2, 9m),
                ("C1 chair, sold 2026-02-12", "purchases", "pieces.csv", 3, 10m),
                ("C1 chair, sold 2026-02-12", "outings", "trips.csv", 2, 9m),
            ],
            trail.Parts.Select(part => (part.Group!, part.Sort!, part.File!, part.Row!.Value, part.Amount)));
        Assert.Equal(0, Opened("purchases").Total + Opened("supplies").Total + Opened("outings").Total - trail.Total);
    }

    [Fact]
    public void OverheadOpensItemByItemWithFruitlessOutingsApart()
    {
        QuarterTrail trail = Opened("overhead");
        Assert.Equal("overhead: $119.30 in 2026-Q1, from 3 items.", QuarterTrailText.Answer(trail, QuarterTrailLog.Of().Workshop));
        Assert.Equal(
            [("rent", 2, 50m), ("rent", 3, 50m), ("insurance", 4, 12.30m), ("outings that brought nothing home", 3, 7m)],
            trail.Parts.Select(part => (part.Group!, part.Row!.Value, part.Amount)));
    }

    // Half of February: 14 of 28 days of a rent of 50 and of an insurance of 12.30.
    [Fact]
    public void InASpanThatCutsAMonthOverheadSaysHowManyDaysCount()
    {
        QuarterTrail trail = QuarterTrail.Of(QuarterTrailLog.Of(), ReportPeriod.Parse("2026-02-15..2026-02-28")!, "overhead");
        Assert.Equal(
            [
                ("rent", 25m, "50 for 2026-02. 14 of its 28 days count here."),
                ("insurance", 6.15m, "12.30 for 2026-02. 14 of its 28 days count here."),
                ("outings that brought nothing home", 7m, "10 miles at 0.70, the rate of workshop.toml from 2025-01-01."),
            ],
            trail.Parts.Select(part => (part.Group!, part.Amount, part.Rule!)));
    }

    [Fact]
    public void ProfitOpensIntoLinesEachWithTheWordThatOpensIt()
    {
        QuarterTrail trail = Opened("profit");
        Assert.Equal(
            [
                ("sales", 270m), ("delivery-charged", 25m), ("cost-of-sold", -90.50m), ("fees", -26.30m), ("delivery", -18m),
                ("written-off", -15m), ("overhead", -119.30m),
            ],
            trail.Parts.Select(part => (part.Sort!, part.Amount)));
        Assert.All(trail.Parts, part => Assert.Equal(decimal.Abs(part.Amount), Opened(part.Sort!).Total));
        Assert.Contains("[--explain cost-of-sold]", QuarterTrailText.Render(trail, QuarterTrailLog.Of().Workshop), StringComparison.Ordinal);
    }

    // Half an hour of the outing went to each piece; the second outing brought nothing home.
    [Fact]
    public void HoursOpenByPieceWithOutingsAndGeneralHoursApart()
    {
        QuarterTrail trail = Opened("hours");
        Assert.Equal(
            [
                ("D1 dresser, sold 2026-02-10", "pieces.csv", 6m), ("D1 dresser, sold 2026-02-10", "trips.csv", 0.5m),
                ("C1 chair, sold 2026-02-12", "pieces.csv", 2m), ("C1 chair, sold 2026-02-12", "trips.csv", 0.5m),
                ("K1 desk, scrapped 2026-03-01", "pieces.csv", 1m), ("outings that brought nothing home", "trips.csv", 1m),
            ],
            trail.Parts.Select(part => (part.Group!, part.File!, part.Amount)));
    }

    [Fact]
    public void CashLeavesDrivingOutAndSaysSo()
    {
        QuarterTrail cash = Opened("cash");
        // 270 and 25 in; 80 for three pieces, 6 on the outing, 112.30 of overhead, 18 delivery, 26.30 fees out.
        Assert.Equal(52.40m, cash.Total);
        Assert.Contains(cash.Notes, note => note.StartsWith("Driving of $28.00 is reckoned, not paid", StringComparison.Ordinal));
        Assert.Equal([("driving, T1", 2, 21m), ("driving, T2", 3, 7m)],
            Opened("driving").Parts.Select(part => (part.What, part.Row!.Value, part.Amount)));
    }

    [Fact]
    public void StockOpensByPieceWithItsAge()
    {
        QuarterTrail trail = Opened("stock");
        Assert.Equal(["B1 bench, in the workshop, here 87 days"], trail.Parts.Select(part => part.Group!).Distinct());
        Assert.Equal(39m, trail.Total);
    }

    [Theory]
    [InlineData("Overheads", "overhead")]
    [InlineData("cost of sold", "cost-of-sold")]
    [InlineData("fee", "fees")]
    public void CaseNumberAndSpacesOfAWordDoNotMatter(string written, string word) => Assert.Equal(word, QuarterLine.Find(written)!.Word);

    [Theory]
    [InlineData("overhed", "overhead")]
    [InlineData("cogs", "cost-of-sold")]
    [InlineData("mileage", "driving")]
    [InlineData("rent", "overhead")]
    [InlineData("profti", "profit")]
    public void AnotherWordIsAnsweredWithTheNearestFirstAndAllOthers(string written, string meant)
    {
        string refusal = QuarterLine.Refusal(written)!;
        Assert.StartsWith($"The quarter has no line '{written}': did you mean {meant}? Others are ", refusal, StringComparison.Ordinal);
        Assert.All(QuarterLine.All, line => Assert.Contains(line.Word, refusal, StringComparison.Ordinal));
        Assert.Throws<ArgumentException>(() => QuarterTrail.Of(Demo, ReportPeriod.Parse("2025")!, written));
    }

    private static IEnumerable<string> Breaches(QuarterTrail trail, Workshop workshop)
    {
        string word = trail.Line.Word;
        if (trail.Difference != 0)
            yield return $"{word}: its parts are off by {trail.Difference}";
        string?[] groups = [.. trail.Parts.Select(part => part.Group)];
        if (groups.Distinct().Count() != groups.Where((group, i) => i == 0 || group != groups[i - 1]).Count())
            yield return $"{word}: the parts of a group do not stand together";
        foreach (QuarterTrailPart part in trail.Parts.Where(
            part => part is not { File: not null, Rule.Length: > 0 } && !(part.Sort is { } sort && QuarterLine.All.Any(line => line.Word == sort))))
        {
            yield return $"{word}: nothing says where {part.What} comes from";
        }

        foreach (bool all in new[] { false, true })
        {
            string[] lines = QuarterTrailText.Render(trail, workshop, all).Split('\n');
            if (lines.Any(line => line.Length > 100))
                yield return $"{word}: a line is too long";
            if (!all && lines.Length > 40)
                yield return $"{word}: {lines.Length} lines are no screen";
        }
    }

    private static QuarterTrail Opened(string word) => QuarterTrail.Of(QuarterTrailLog.Of(), ReportPeriod.Parse("2026-Q1")!, word);

    // The report's figures, looked up here again.
    private static decimal FigureOf(QuarterReport report, string word) => word switch
    {
        "sales" => report.Profit.Sales,
        "delivery-charged" => report.Profit.DeliveryCharged,
        "returns" => report.Profit.Returns,
        "cost-of-sold" => report.Profit.CostOfPiecesSold,
        "purchases" => report.Profit.Purchases,
        "supplies" => report.Profit.Supplies,
        "outings" => report.Profit.Outings,
        "gross-profit" => report.Profit.GrossProfit,
        "fees" => report.Profit.Fees,
        "delivery" => report.Profit.Delivery,
        "written-off" => report.Profit.WrittenOff,
        "supplies-lost" => report.Profit.SuppliesLost,
        "tools" => report.Profit.ToolWear,
        "overhead" => report.Profit.Overheads,
        "profit" => report.Profit.Net,
        "cash" => report.Cash.Change,
        "held" => report.Held.Sum(held => held.Closing),
        "driving" => report.Cash.DrivingReckoned,
        "stock" => report.Closing.Cost,
        "cans" => report.Closing.InCans,
        "book-value" => report.Closing.Tools,
        "hours" => report.Hours.Belonging,
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "A word of QuarterLine."),
    };

    /// <summary>An amount in the first column, which holds ten signs.</summary>
    [GeneratedRegex(@"^(?=.{10}  \S) *(-?[\d,]+\.\d\d)  \S", RegexOptions.CultureInvariant)]
    private static partial Regex AtTheMargin();
}
