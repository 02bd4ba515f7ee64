namespace FlipAnalytics.Tests;

/// <summary>The year 2025 of a small workshop, reckoned by hand in the comments.</summary>
public sealed class YearByHandTests
{
    private static readonly SalesLog Log = new()
    {
        Date = new(2026, 2, 15),
        Workshop = new()
        {
            Symbol = "$",
            Mileage = [new(new(2024, 1, 1), 0.50m)],
        },
        Pieces =
        [
            // Bought in 2024 for 40, on an outing of 20 miles at 0.50; sold in 2025.
            Piece("A", "dresser", new(2024, 11, 20), 40) with
            {
                Trip = "T1", SoldOn = new(2025, 2, 10), SoldPrice = 280, Fees = 28, DeliveryCharged = 30, DeliveryCost = 25,
            },
            // Bought and sold in 2025; 5 of the outing T2, which brought two pieces home.
            Piece("B", "nightstand", new(2025, 3, 5), 20) with { Trip = "T2", SoldOn = new(2025, 6, 1), SoldPrice = 90, Fees = 0 },
            // In stock at the end of 2025, sold in 2026 as is known by now.
            Piece("C", "bookcase", new(2025, 3, 5), 50) with
            {
                Title = "oak bookcase", Trip = "T2", SoldOn = new(2026, 1, 20), SoldPrice = 200, Fees = 0,
            },
            // Kept and scrapped in 2025, both bought in 2024.
            Piece("D", "chair", new(2024, 12, 1), 12) with { LeftOn = new(2025, 1, 15), LeftAs = LeftAs.Kept },
            Piece("E", "lamp", new(2024, 12, 2), 7) with { LeftOn = new(2025, 9, 15), LeftAs = LeftAs.Scrapped },
            // Sold, nobody knows when: in no year.
            Piece("F", "stool", new(2025, 4, 1), 9) with { SoldPrice = 33, Fees = 0 },
        ],
        Supplies = [new("paint", null, new(2024, 12, 28), 4, "quart", 80, null, null), new("wax", null, new(2025, 5, 2), 2, "tin", 25, null, null)],
        Uses =
        [
            // Paint 80 / 4 = 20 a quart: 20 on A in 2025, 10 on B, 20 on C; 30 is left. Wax 12.50 a tin: one on B; 12.50 is left.
            new("A", new(2025, 1, 8), "paint", 1, "quart", null, null),
            new("B", new(2025, 4, 20), "paint", 0.5m, "quart", null, null),
            new("C", new(2025, 10, 18), "paint", 1, "quart", null, null),
            new("B", new(2025, 5, 10), "wax", 1, "tin", null, null),
        ],
        Trips =
        [
            new("T1", new(2024, 11, 20), 20, 2, null, null),
            // 16 miles at 0.50 and 2 of parking, for B and C alike.
            new("T2", new(2025, 3, 5), 16, 2, 2, null),
            // Brought nothing home: 8 miles at 0.50 and 3 of parking.
            new("T3", new(2025, 8, 14), 8, 1.5m, 3, null),
        ],
        Tools = [new("sander", new(2025, 1, 2), 96, null, null, 48), new("clamp", new(2024, 5, 1), 24, null, null, 24)],
        Overheads = [new(new(2025, 1, 1), "rent", 30), new(new(2025, 7, 1), "rent", 30), new(new(2025, 7, 1), "insurance", 11), new(new(2026, 1, 1), "rent", 30)],
    };

    private static readonly YearReport Report = YearReport.Of(Log, ReportPeriod.Parse("2025")!);

    [Fact]
    public void CostOfGoodsSoldStandsInFiveLines()
    {
        YearCostOfGoods goods = Report.CostOfGoods;
        // Evening of 2024-12-31: A 40 + 10, D 12, E 7; paint 80.
        Assert.Equal((69, 80), (goods.OpeningPieces, goods.OpeningInCans));
        // Bought: B 20, C 50, F 9; less 12 kept, 7 written off and 9 sold on an unknown day.
        Assert.Equal(79, goods.PiecesBought);
        Assert.Equal(51, goods.Purchases);
        // Wax 25 and the outing T2, 8 + 2.
        Assert.Equal(35, goods.OtherCosts);
        // Evening of 2025-12-31: C 50 + 5 + 20; paint 80 − 50, wax 12.50.
        Assert.Equal((75, 42.5m), (goods.ClosingPieces, goods.ClosingInCans));
        Assert.Equal(5, goods.OutingsInClosing);
        // 149 + 51 + 35 − 117.50; that is A 40 + 10 + 20 and B 20 + 5 + 10 + 12.50.
        Assert.Equal(117.5m, goods.CostOfGoodsSold);
        Assert.Equal(Report.Profit.CostOfPiecesSold, goods.CostOfGoodsSold);
    }

    [Fact]
    public void PiecesWrittenOffStandApartAndAreNotInTheCost()
    {
        Assert.Equal(["kept for yourself", "sold, day unknown", "written off"], Report.CostOfGoods.TakenOut.Select(taken => taken.Why));
        Assert.Equal([12, 9, 7], Report.CostOfGoods.TakenOut.Select(taken => taken.Cost));
        Assert.Equal(7, Report.Profit.WrittenOff);
        Assert.Equal([("D", false, 12m), ("E", true, 7m)], Report.Left.Select(left => (left.Id, left.IsWrittenOff, left.Cost)));
    }

    [Fact]
    public void TheProfitIsReceiptsLessCostOfGoodsAndExpenses()
    {
        // 280 + 90 + 30 − 117.50 = 282.50; fees 28, delivery 25, rent 60, insurance 11, T3 7, written off 7;
        // sander 96 / 48 × 12 = 24, clamp 24 / 24 × 12 = 12.
        Assert.Equal(282.5m - 28 - 25 - 60 - 11 - 7 - 7 - 24 - 12, Report.Profit.Net);
        Assert.Equal(108.5m, Report.Lines.Sum(line => line.Effect));
        Assert.Equal("2025: you made $108.50 on 2 pieces.", YearSentences.Headline(Report));
        Assert.All(Report.Sums, sum => Assert.Equal(0, sum.Difference));
    }

    [Fact]
    public void DrivingIsListedAndSaidToBeInTheOtherLinesAlready()
    {
        Assert.Equal((8, 4, 24), (Report.Driving.InPieces, Report.Driving.InOverheads, Report.Driving.Distance));
        Assert.Equal(
            "Driving: 24 miles on 2 outings at $0.50 a mile = $12.00, already included above: $8.00 in the cost of pieces, $4.00 in outings that brought nothing home.",
            YearSentences.Driving(Report));
        Assert.Equal([("rent", 2, 60m), ("insurance", 1, 11m), ("fruitless outings", 1, 7m)],
            Report.Overheads.Select(item => (item.Item, item.Entries, item.Amount)));
    }

    /// <summary>To the 7 of T3: a supply run of 10 miles, 5; one to the tip of 4 and 1 of fees, 3; one for two buyers of 12, 6.</summary>
    [Fact]
    public void ADriveForSuppliesIsNoOutingThatBroughtNothingHome()
    {
        Trip drive = new("S1", new(2025, 4, 2), 10, 1, null, null) { Purpose = TripPurpose.Supplies };
        SalesLog log = Log with
        {
            Trips =
            [
                .. Log.Trips, drive, drive with { Name = "O1", Distance = 4, OtherCost = 1, Purpose = TripPurpose.Other },
                drive with { Name = "D1", Distance = 12, Purpose = TripPurpose.Delivery },
            ],
        };
        var report = YearReport.Of(log, Report.Period);
        Assert.Equal(
            [("fruitless outings", 1, 7m, true), ("delivery drives", 1, 6m, false), ("supply runs", 1, 5m, false), ("other drives", 1, 3m, false)],
            report.Overheads.Where(item => item.Purpose is not null).Select(item => (item.Item, item.Entries, item.Amount, item.IsFruitless)));
        Assert.Equal(
            [("outings that brought nothing home (1 outing)", 7m), ("delivery drives, supply runs, other drives (3 outings)", 14m)],
            report.Lines.Where(line => line.Name is "fruitless_outings" or "other_drives").Select(line => (line.What, line.Amount)));
        Assert.Equal(Report.Profit.Net - 14, report.Profit.Net);
        Assert.EndsWith(
            "= $25.00, already included above: $8.00 in the cost of pieces, $4.00 in outings that brought nothing home, $13.00 in supply runs and other drives.",
            YearSentences.Driving(report),
            StringComparison.Ordinal);
        Assert.Equal(["T3"], report.Driving.Outings.Where(outing => outing.IsFruitless).Select(outing => outing.Trip));
        Assert.Contains("S1: 10, $5.00; a supply run", YearText.Render(report, all: true), StringComparison.Ordinal);
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
    }

    [Fact]
    public void TheDocumentSaysInWordsHowAPieceLeftAndWhatAnOutingWasFor()
    {
        string document = YearJson.Render(Report);
        Assert.Contains("\"how\": \"kept\"", document, StringComparison.Ordinal);
        Assert.Contains("\"purpose\": \"sourcing\"", document, StringComparison.Ordinal);
    }

    [Fact]
    public void ToolsAndStockAreListedAsTheyStandOnTheLastDay()
    {
        Assert.Equal(
            [("sander", true, 24m, 72m), ("clamp", false, 12m, 4m)],
            Report.Tools.Select(tool => (tool.Item, tool.IsBoughtInYear, tool.Wear, tool.Value)));
        Assert.Equal(
            "Tools bought: $96.00 (sander $96.00 on 2025-01-02); of this only the wear is in the profit.", YearSentences.ToolsBought(Report));
        Assert.Equal(new YearStockPiece("C", "oak bookcase", new(2025, 3, 5), 50, 20, 5), Assert.Single(Report.Stock));
        Assert.Equal([new("paint", 30), new YearSupply("wax", 12.5m)], Report.Supplies.AsEnumerable());
    }

    [Fact]
    public void WhatIsNotInTheYearIsSaidWithItsReason()
    {
        YearTally sales = Report.Tally.Single(row => row.What == "sales");
        Assert.Equal((370, 0, 200, 33), (sales.InYear, sales.Before, sales.After, sales.WithoutDay));
        Assert.Equal("Not counted in 2025, for want of a day or a sale: sales $33.00.", YearSentences.NotCounted(Report));
    }

    [Fact]
    public void FeesAndDeliveryOfAPieceThatIsNotSoldAreOnNoLineAndAreSaidToBe()
    {
        SalesLog log = Log with { Pieces = [.. Log.Pieces, Piece("G", "desk", new(2025, 11, 1), 30) with { Fees = 5, DeliveryCost = 7 }] };
        var report = YearReport.Of(log, Report.Period);
        Assert.Equal((0, 12), (report.Tally[^1].InYear, report.Tally[^1].WithoutDay));
        Assert.Equal(Report.Profit.Net, report.Profit.Net);
        Assert.Equal(
            "Not counted in 2025, for want of a day or a sale: sales $33.00, fees, delivery and sales tax of pieces not sold $12.00.",
            YearSentences.NotCounted(report));
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
    }

    [Fact]
    public void TheSheetIsOneOfThatDayWhereFactsAreKnownUpToADayInTheYear()
    {
        var report = YearReport.Of(Log.AsOf(new(2025, 3, 31)), ReportPeriod.Parse("2025")!);
        // A alone is sold: 310 − 70 − 28 − 25; rent 30, sander 6, clamp 3.
        Assert.Equal("2025 so far, up to 2025-03-31: you made $148.00 on 1 piece.", YearSentences.Headline(report));
        Assert.Equal(new(2025, 3, 31), report.Reckoned.To);
    }

    [Fact]
    public void TheYearMeantWhereNoneIsNamedIsTheLastThatIsOver()
    {
        Assert.Equal("2025", YearReport.UsualPeriod(Log).Name);
        Assert.Equal("2025", YearReport.UsualPeriod(Log.AsOf(new(2025, 12, 31))).Name);
        Assert.Equal("2024", YearReport.UsualPeriod(Log.AsOf(new(2025, 12, 30))).Name);
        Assert.Equal("2024", YearReport.UsualPeriod(Log.AsOf(new(2024, 11, 30))).Name);
    }

    [Fact]
    public void WearOfHalfACentIsRoundedAwayFromZeroAndTheRestIsLeft()
    {
        // 75 over 96 pieces: after 20 of them 15.625, so 15.63 is worn and 59.37 left.
        SalesLog log = new()
        {
            Date = new(2025, 12, 31),
            Pieces = [.. Enumerable.Range(1, 20).Select(n => Piece(FormattableString.Invariant($"P{n}"), "chair", new(2025, 1, n), 1) with { Hours = 1, ReadyOn = new(2025, 2, n) })],
            Tools = [new("iron", new(2024, 12, 31), 75, null, 96, null)],
        };
        YearTool iron = Assert.Single(YearReport.Of(log, ReportPeriod.Parse("2025")!).Tools);
        Assert.Equal((15.63m, 59.37m), (iron.Wear, iron.Value));
    }

    [Fact]
    public void AYearInYenHasNoMinorDigits()
    {
        SalesLog log = Log with { Workshop = Log.Workshop with { Currency = Currency.Of("JPY"), Symbol = "¥" } };
        var report = YearReport.Of(log, ReportPeriod.Parse("2025")!);
        Assert.All(report.Lines, line => Assert.Equal(decimal.Truncate(line.Amount), line.Amount));
        // A tin of wax is 25 / 2 = 12.5, so 13 on B; the profit is lower by half.
        Assert.Equal("2025: you made ¥108 on 2 pieces.", YearSentences.Headline(report));
        Assert.Equal(108, report.Profit.Net);
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
    }

    private static Piece Piece(string id, string type, DateOnly bought, decimal price) => new()
    {
        Id = id,
        Type = type,
        BoughtOn = bought,
        BoughtPrice = price,
    };
}
