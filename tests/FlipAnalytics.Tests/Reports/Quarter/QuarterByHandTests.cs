namespace FlipAnalytics.Tests;

/// <summary>The first quarter of 2026 of a small workshop, reckoned by hand in the comments.</summary>
public sealed class QuarterByHandTests
{
    private static readonly SalesLog Log = new()
    {
        Date = new(2026, 4, 20),
        Workshop = new()
        {
            TargetWage = 15,
            HoursPerWeek = 10,
            Mileage = [new(new(2025, 1, 1), 0.50m)],
        },
        Pieces =
        [
            // In stock at New Year: 40 paid, 10 of an outing (20 miles at 0.50). Sold in the quarter.
            Piece("A", "dresser", 2025, 12, 20, 40) with
            {
                Trip = "T1", Width = 48, Depth = 18, ReadyOn = new(2026, 1, 10), ListedOn = new(2026, 1, 12),
                AskingPrice = 300, SoldOn = new(2026, 2, 10), SoldPrice = 280, Fees = 28, Hours = 8,
                DeliveryCharged = 30, DeliveryCost = 25,
            },
            // Bought and sold in the quarter; no outing.
            Piece("B", "nightstand", 2026, 1, 5, 20) with
            {
                ReadyOn = new(2026, 1, 25), ListedOn = new(2026, 1, 26), SoldOn = new(2026, 3, 1), SoldPrice = 90, Fees = 0, Hours = 4,
            },
            // On sale at the end.
            Piece("C", "dresser", 2026, 2, 1, 50) with
            {
                Width = 36, Depth = 20, ReadyOn = new(2026, 2, 20), ListedOn = new(2026, 2, 21), AskingPrice = 260, Hours = 6,
            },
            // In the workshop at the end.
            Piece("D", "chair", 2026, 3, 20, 5),
            // Kept, and thrown away.
            Piece("E", "chair", 2025, 11, 1, 12) with { LeftOn = new(2026, 1, 15), LeftAs = LeftAs.Kept },
            Piece("F", "lamp", 2025, 11, 2, 7) with { LeftOn = new(2026, 3, 15), LeftAs = LeftAs.Scrapped },
            // Sold after the quarter and known by now: still on sale at its end.
            Piece("G", "chair", 2026, 3, 1, 9) with
            {
                ReadyOn = new(2026, 4, 2), ListedOn = new(2026, 4, 3), SoldOn = new(2026, 4, 10), SoldPrice = 60, Fees = 0, Hours = 2,
            },
        ],
        Supplies = [new("paint", null, new(2025, 12, 28), 4, "quart", 80, null, null)],
        Uses =
        [
            // 80 / 4 = 20 a quart: 20 on A, 10 on B, 20 on C in the quarter; 5 on G after it; 25 left.
            new("A", new(2026, 1, 8), "paint", 1, "quart", null, null),
            new("B", new(2026, 1, 20), "paint", 0.5m, "quart", null, null),
            new("C", new(2026, 2, 18), "paint", 1, "quart", null, null),
            new("G", new(2026, 4, 1), "paint", 0.25m, "quart", null, null),
        ],
        Trips =
        [
            new("T1", new(2025, 12, 20), 20, 2, null, null),
            // Fruitless: 8 miles at 0.50 and 3 of parking; 1.5 hours.
            new("T2", new(2026, 2, 14), 8, 1.5m, 3, null),
        ],
        Tools = [new("sander", new(2026, 1, 2), 96, null, null, 24)],
        Overheads = [new(new(2026, 1, 1), "rent", 30), new(new(2026, 2, 1), "rent", 30), new(new(2026, 3, 1), "rent", 30)],
        Hours = [new(null, new(2026, 3, 3), WorkTask.Other, 2.5m)],
    };

    private static readonly QuarterReport Report = QuarterReport.Of(Log, ReportPeriod.Parse("2026-Q1")!);

    [Fact]
    public void NetProfitIsWhatThePiecesSoldLeftLessToolsAndOverheads()
    {
        QuarterProfit profit = Report.Profit;
        Assert.Equal(370, profit.Sales); // 280 + 90
        Assert.Equal(30, profit.DeliveryCharged);
        Assert.Equal(60, profit.Purchases); // 40 + 20
        Assert.Equal(30, profit.Supplies); // 20 + 10
        Assert.Equal(10, profit.Outings); // 20 × 0.50
        Assert.Equal(300, profit.GrossProfit); // 370 + 30 − 100
        Assert.Equal(28, profit.Fees);
        Assert.Equal(25, profit.Delivery);
        Assert.Equal(7, profit.WrittenOff); // F; E was kept, which is no loss
        Assert.Equal(12, profit.ToolWear); // 96 / 24 a month, January to March
        Assert.Equal(97, profit.Overheads); // 3 × 30, and the fruitless outing 8 × 0.50 + 3
        Assert.Equal(131, profit.Net); // 300 − 28 − 25 − 7 − 12 − 97
    }

    [Fact]
    public void TheHoursAreThoseOfThePiecesSoldAndTheGeneralOnes()
    {
        // A 8 + 2 on its outing, B 4; general: 2.5 and 1.5 on the fruitless outing.
        Assert.Equal(12, Report.Hours.BenchOfSold);
        Assert.Equal(2, Report.Hours.OutingsOfSold);
        Assert.Equal(4, Report.Hours.General);
        // Worked from January to March: A 8, B 4, C 6, general 4; the outing of A was in December, G was worked on in April.
        Assert.Equal(22, Report.Hours.Worked);
        Assert.Equal(new QuarterWage(2, 2, 131, 18, 7.28m), Report.Hours.Wage); // 131 / 18 = 7.2777…
        Assert.Equal("In 2026-Q1 you made 131 for 18 hours: 7.28 an hour (wage of the quarter).", QuarterSentences.Headline(Report));
    }

    [Fact]
    public void WithoutTheHoursOfOnePieceTheOtherBearsHalfOfWhatBelongsToNone()
    {
        SalesLog log = Log with { Pieces = [.. Log.Pieces.Select(piece => piece.Id == "B" ? piece with { Hours = null } : piece)] };
        // A left 280 + 30 − 40 − 20 − 10 − 28 − 25 = 187; half of 7 + 12 + 97 is 58. Hours: 8 + 2 and half of 4.
        Assert.Equal(new QuarterWage(1, 2, 129, 12, 10.75m), QuarterReport.Of(log, Report.Period).Hours.Wage);
    }

    [Fact]
    public void MoneyInAndOutIsWhatChangedHands()
    {
        QuarterCash cash = Report.Cash;
        Assert.Equal(400, cash.In); // 370 + 30
        // Pieces 20 + 50 + 5 + 9, the sander 96, parking 3, rent 90, delivery 25, fees 28; the paint was bought in December.
        Assert.Equal(84 + 96 + 3 + 90 + 25 + 28, cash.Out);
        Assert.Equal(74, cash.Change);
        Assert.Equal(4, cash.DrivingReckoned);
    }

    [Fact]
    public void StockAtBothEndsIsThereByStateAndAge()
    {
        // New Year: A 40 + 10, E 12, F 7; 80 in paint; no sander yet.
        Assert.Equal((69, 80, 0), (Report.Opening.Cost, Report.Opening.InCans, Report.Opening.Tools));
        // 31 March: C 50 + 20 on sale; D 5 and G 9 in the workshop; 80 − 50 in paint; 96 − 12 of the sander.
        Assert.Equal((84, 30, 84), (Report.Closing.Cost, Report.Closing.InCans, Report.Closing.Tools));
        // C stands on 36 × 20 / 144 = 5 ft²; D and G have no size.
        Assert.Equal(
            [new("in the workshop", 2, 14, 0, 2), new QuarterStockGroup("on sale", 1, 70, 5, 0)], Report.Closing.ByState.AsEnumerable());
        // D 11 days, G 30, C 58.
        Assert.Equal([2, 1, 0, 0, 0], Report.Closing.ByAge.Select(age => age.Pieces));
    }

    [Fact]
    public void ProfitAndCashDifferByWhatWasPutIntoStockAndTools() => Assert.Equal(
        [
            // Pieces 69 → 84, cans 80 → 30, tools 0 → 84; the chair kept had cost 12. 131 − 15 + 50 − 84 + 4 − 12 = 74.
            new("net profit", 131), new("more tied up in pieces", -15), new("less tied up in cans", 50),
            new("more tied up in tools", -84), new("driving, reckoned but not paid", 4), new QuarterTerm("pieces you kept", -12),
        ],
        Report.Sums.Single(sum => sum.Name == "from profit to cash").Terms.AsEnumerable());

    [Fact]
    public void RatiosFollowTheirDefinitions()
    {
        // No piece was on sale at New Year; A, B and C were listed; A and B sold.
        Assert.Equal(new(0, 3, 2), Report.Ratios.SellThrough);
        // Evenings: New Year 69. January: A 40 + 10 + 20, B 20 + 10, F 7 = 107. February: B 30, C 70, F 7 = 107. March 84.
        Assert.Equal(91.75m, Report.Ratios.Stock.AverageStock);
        Assert.Equal(100m / 91.75m, Report.Ratios.Stock.Turnover);
        Assert.Equal(91.75m / 100 * 90, Report.Ratios.Stock.DaysOfStock);
        Assert.Equal(300m / 91.75m, Report.Ratios.Stock.ReturnOnStock);
        // Overheads and wear 97 + 12 = 109; two flips left 300 − 53 = 247, or 123.50 each.
        Assert.Equal(new BreakEven(109, 123.5m), Report.Ratios.BreakEven);
        Assert.Equal(1, Report.Ratios.BreakEven!.WholeFlips);
        Assert.Equal(new QuarterCounts(4, 3, 3, 2, 0, 1, 0, 1, 0, 0, 0, 0), Report.Counts);
    }

    [Fact]
    public void EverySumComesOut() => Assert.All(Report.Sums, sum => Assert.Equal(0, sum.Difference));

    private static Piece Piece(string id, string type, int year, int month, int day, decimal price) =>
        new() { Id = id, Type = type, BoughtOn = new(year, month, day), BoughtPrice = price };
}
