namespace FlipAnalytics.Tests;

/// <summary>
/// What happens between buying and selling, each worked by hand with its journal entries. Rules: IFRS 15 (paragraph 47
/// sales tax, 106 deposits, B34 to B38 agents) and IAS 2 (paragraph 10 cost, 34 expense), from memory.
/// </summary>
public class EventsByHandTests
{
    private static readonly DateOnly Start = new(2026, 1, 1);

    /// <summary>
    /// 2 February: money 107, to sales 100 and sales tax owed 7. 20 April: sales tax owed 7, to money 7. In the quarter of the
    /// sale the tax is no profit; held over its end it is money in hand that belongs to the tax office.
    /// </summary>
    [Fact]
    public void Sales_tax_is_in_the_money_but_never_in_the_profit()
    {
        SalesLog log = Log(
            [Sold("P1", 40, 100, new(2026, 2, 2)) with { SalesTax = 7 }],
            money: [new(new(2026, 4, 20), MoneyKind.SalesTax, null, 7, null)]);
        QuarterReport first = Quarter(log, 1);
        Assert.Equal((60, 67), (first.Profit.Net, first.Cash.Change));
        Assert.Equal(7, Term(first, "sales tax taken and not paid over"));
        Assert.Contains("No profit, on 2026-03-31: 7.00 of sales tax to pay over.", QuarterText.Render(first), StringComparison.Ordinal);
        QuarterReport second = Quarter(log, 2);
        Assert.Equal((0, -7), (second.Profit.Net, second.Cash.Change));
        Assert.Equal(-7, Term(second, "sales tax taken and not paid over"));
    }

    /// <summary>
    /// 20 March: money 30, to owed to the buyer 30. 10 April, sold for 100 with 10 for delivery: owed to the buyer 110, to
    /// sales 100 and delivery charged 10. 12 April: money 80, to owed to (by) the buyer 80.
    /// </summary>
    [Fact]
    public void A_deposit_is_money_of_its_day_and_profit_of_the_sale()
    {
        SalesLog log = Log(
            [Sold("P1", 40, 100, new(2026, 4, 10)) with { DeliveryCharged = 10 }],
            money:
            [
                new(new(2026, 3, 20), MoneyKind.Payment, "P1", 30, null),
                new(new(2026, 4, 12), MoneyKind.Payment, "P1", 80, null),
            ]);
        QuarterReport first = Quarter(log, 1);
        Assert.Equal((0, 30 - 40), (first.Profit.Net, first.Cash.Change));
        Assert.Equal(30, Term(first, "paid by buyers before the sale, or still owed"));
        QuarterReport second = Quarter(log, 2);
        Assert.Equal((70, 80), (second.Profit.Net, second.Cash.Change));
        Assert.Equal(-30, Term(second, "paid by buyers before the sale, or still owed"));
    }

    /// <summary>
    /// Sold for 100 of which 40 % is ours: money 100, to commission 40 and owed to its owner 60; when it is paid: owed 60, to
    /// money 60. The piece was never ours, so nothing of it is stock or cost of pieces sold.
    /// </summary>
    [Fact]
    public void Of_a_piece_sold_for_somebody_else_only_the_commission_is_ours()
    {
        Piece piece = new()
        {
            Id = "P1",
            Type = "dresser",
            Commission = 0.4m,
            BoughtOn = new(2026, 1, 10),
            SoldOn = new(2026, 3, 10),
            SoldPrice = 100,
            Hours = 2,
        };
        QuarterReport atOnce = Quarter(Log([piece]), 1);
        Assert.Equal((40, 40, 40), (atOnce.Profit.Sales, atOnce.Profit.Net, atOnce.Cash.Change));
        Assert.Equal(0, atOnce.Profit.CostOfPiecesSold);
        SalesLog paidLater = Log([piece], money: [new(new(2026, 4, 5), MoneyKind.PaidOwner, "P1", 60, null)]);
        QuarterReport later = Quarter(paidLater, 1);
        Assert.Equal((40, 100), (later.Profit.Net, later.Cash.Change));
        Assert.Equal(60, Term(later, "owed to owners of pieces sold for them"));
        FlipResult flip = Assert.Single(FlipResult.Sold(CostBook.Of(paidLater), HoursLedger.Of(paidLater)));
        Assert.Equal((40, 20), (flip.FullProfit, flip.FullWage));
    }

    /// <summary>A commission of 0.333 on 9.99 is 3.32667: 3.33 is ours and 6.66 its owner's, to the cent.</summary>
    [Fact]
    public void Commission_and_the_owners_share_add_up_to_the_price()
    {
        Piece piece = Sold("P1", null, 9.99m, new(2026, 3, 10)) with { Commission = 0.333m };
        CostBook book = CostBook.Of(Log([piece]));
        Assert.Equal(3.33m, book["P1"].SalePrice);
        Assert.Equal([6.66m, -6.66m], book.Held.Select(line => line.Amount));
    }

    /// <summary>
    /// A dresser of 60 gives its handles, at 15, to another, of 20: pieces (the other) 15, to pieces (the dresser) 15. Sold,
    /// the one had cost 45 and the other 35; together still 80.
    /// </summary>
    [Fact]
    public void A_part_that_is_moved_takes_its_cost_along()
    {
        SalesLog log = Log(
            [Sold("P1", 60, 100, new(2026, 3, 1)), Sold("P2", 20, 90, new(2026, 4, 1))],
            moves: [new(new(2026, 2, 1), "P1", "P2", 15, "handles")]);
        Assert.Equal(55, Quarter(log, 1).Profit.Net);
        Assert.Equal(35, Quarter(log, 1).Closing.Cost);
        Assert.Equal(55, Quarter(log, 2).Profit.Net);
    }

    /// <summary>A set of four chairs bought for 80 is split; the two sold by themselves take 40 along.</summary>
    [Fact]
    public void A_set_that_is_split_later_shares_its_cost()
    {
        SalesLog log = Log(
            [Sold("P1", 80, 70, new(2026, 3, 1)) with { Count = 2 }, Sold("P2", 0, 60, new(2026, 3, 9)) with { Count = 2 }],
            moves: [new(new(2026, 2, 1), "P1", "P2", 40, null)]);
        CostBook book = CostBook.Of(log);
        Assert.Equal((40, 40), (book["P1"].Of(CostKind.Purchase), book["P2"].Of(CostKind.Purchase)));
        Assert.Equal(80, book.Total(CostKind.Purchase).Spent);
        Assert.Equal(0, book.Total(CostKind.Purchase).Difference);
    }

    /// <summary>
    /// 20 miles to the buyer at 0.50 on 2 April for a sale of 31 March: the 10 are a cost of the sale, in the first quarter,
    /// and reckoned on the day of the drive, in the second.
    /// </summary>
    [Fact]
    public void A_drive_to_the_buyer_is_a_delivery_cost_of_the_piece()
    {
        SalesLog log = Log(
            [Sold("P1", 40, 100, new(2026, 3, 31)) with { DeliveryCharged = 12 }],
            trips: [new("T1", new(2026, 4, 2), 20, 1.5m, null, null) { Purpose = TripPurpose.Delivery, PieceId = "P1" }]);
        QuarterReport first = Quarter(log, 1);
        Assert.Equal((10, 62), (first.Profit.Delivery, first.Profit.Net));
        Assert.True(CostBook.Of(log)["P1"].IsKnown(CostKind.Delivery));
        Assert.Equal(10, Term(first, "paid on another day than counted"));
        QuarterReport second = Quarter(log, 2);
        Assert.Equal((0, 10), (second.Profit.Net, second.Cash.DrivingReckoned));
        Assert.Equal(1.5m, HoursLedger.Of(log).Pieces[0].Outings);
    }

    /// <summary>10 miles for paint at 0.50 are 5 of overhead, and no fruitless outing.</summary>
    [Fact]
    public void A_supply_run_is_overhead_of_its_day()
    {
        SalesLog log = Log(
            [Sold("P1", 40, 100, new(2026, 3, 31))],
            trips: [new("T1", new(2026, 2, 2), 10, 1, null, null) { Purpose = TripPurpose.Supplies }]);
        CostBook book = CostBook.Of(log);
        CostLine run = Assert.Single(book.Overheads);
        Assert.Equal((5, "supply run T1"), (run.Amount, run.What));
        Assert.Equal(WorkTask.Other, Assert.Single(HoursLedger.Of(log).General).Task);
    }

    /// <summary>Taken out 500 for living, put in 200: owner 300, to money 300; no profit, no loss.</summary>
    [Fact]
    public void What_the_owner_takes_out_is_no_cost()
    {
        SalesLog log = Log(
            [Sold("P1", 40, 100, new(2026, 3, 31))],
            money: [new(new(2026, 2, 2), MoneyKind.Taken, null, 500, null), new(new(2026, 2, 3), MoneyKind.PutIn, null, 200, null)]);
        QuarterReport report = Quarter(log, 1);
        Assert.Equal((60, 60 - 300), (report.Profit.Net, report.Cash.Change));
        Assert.Equal(-300, Term(report, "put in or taken out by you"));
    }

    [Fact]
    public void A_sale_at_nothing_is_pointed_to_left_as()
    {
        LogReading reading = LogFolder.ReadPieces("id,type,bought_price,sold_on,sold_price\nP1,dresser,40,2026-03-01,0\n");
        LogProblem problem = Assert.Single(reading.Problems, p => p.Column == "sold_price");
        Assert.Contains("left_as", problem.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_commission_written_as_a_percentage_sets_the_row_aside_with_the_mend()
    {
        LogReading reading = LogFolder.ReadPieces("id,type,bought_price,commission\nP1,dresser,,40\n");
        LogProblem problem = Assert.Single(reading.Problems, p => p.Column == "commission");
        Assert.Equal("more than zero, at most 1", problem.Expected);
        Assert.Contains("0.4 for 40 %", problem.Remedy, StringComparison.Ordinal);
    }

    private static decimal Term(QuarterReport report, string what) =>
        report.Sums.Single(sum => sum.Name == QuarterSums.ProfitToCashName).Terms
            .Where(term => term.What == what).Sum(term => term.Amount);

    private static QuarterReport Quarter(SalesLog log, int quarter)
    {
        DateOnly from = new(2026, 3 * quarter - 2, 1);
        var report = QuarterReport.Of(log, ReportPeriod.Of(from, from.AddMonths(3).AddDays(-1)));
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
        return report;
    }

    private static Piece Sold(string id, decimal? bought, decimal price, DateOnly day) => new()
    {
        Id = id,
        Type = "dresser",
        BoughtOn = Start,
        BoughtPrice = bought,
        SoldOn = day,
        SoldPrice = price,
        Fees = 0,
    };

    private static SalesLog Log(Piece[] pieces, MoneyEntry[]? money = null, CostMove[]? moves = null, Trip[]? trips = null) => new()
    {
        Date = new(2026, 12, 31),
        Workshop = new() { Mileage = [new(Start, 0.5m)] },
        Pieces = [.. pieces],
        Money = [.. money ?? []],
        Moves = [.. moves ?? []],
        Trips = [.. trips ?? []],
    };
}
