using System.Globalization;

namespace FlipAnalytics.Tests;

/// <summary>
/// Pieces that come back and money given back, each worked by hand with its journal entries. Rules: IFRS 15, paragraphs B20 to B27
/// (what is given back is no revenue; goods that come back are an asset at what they had cost), and Weygandt, Kimmel and Kieso,
/// Accounting Principles, chapter 5 (sales returns and allowances, perpetual system), from memory.
/// </summary>
public class ReturnsByHandTests
{
    private static readonly DateOnly Start = new(2026, 1, 1);

    /// <summary>
    /// The chapter's case: goods sold for 3,800 that had cost 2,400; of them goods sold for 300 that had cost 140 come back.
    /// Sales returns 300, to money 300; stock 140, to cost of goods sold 140. Net sales 3,500, cost 2,260, gross profit 1,240.
    /// </summary>
    [Fact]
    public void The_textbook_s_return_takes_the_price_off_the_sales_and_the_cost_off_the_cost_of_goods_sold()
    {
        SalesLog log = Log(
            [Piece("P1", 2_260) with { SoldOn = new(2026, 2, 4), SoldPrice = 3_500, Fees = 0 }, Piece("P2", 140)],
            new SaleReturn("P2", new(2026, 2, 8), 300) { SoldOn = new(2026, 2, 4), SoldPrice = 300, Fees = 0 });
        QuarterReport quarter = Quarter(log, 1);
        Assert.Equal((3_800, 300, 2_260, 1_240), (
            quarter.Profit.Sales, quarter.Profit.Returns, quarter.Profit.CostOfPiecesSold, quarter.Profit.GrossProfit));
        Assert.Equal(140, quarter.Closing.Cost);
        var journal = Journal.Of(log, quarter.Period);
        Assert.Equal(
            ["2026-02-08 returned P2, dresser: assets:money -300, income:returns 300", "2026-02-08 came back, P2, dresser: expenses:cost of pieces sold:purchase -140, assets:pieces:P2 140"],
            Entries(journal, new(2026, 2, 8)));
    }

    /// <summary>
    /// Sold in March for 100 with 10 for delivery, cost 40, delivery 6, fees 5: that quarter left 59. Given back in April 105, and
    /// 8 for the carriage: returns 105, delivery 8, cost of pieces sold -40, so 73 lost. Sold again in July for 90, fees 4: 46 left.
    /// All in all 32: takings 200 less 105 given back, less 40, 6, 8, 5 and 4.
    /// </summary>
    [Fact]
    public void A_sale_and_its_return_count_in_their_own_quarters_and_the_next_sale_in_its_own()
    {
        SalesLog log = Log(
            [Piece("P1", 40) with { SoldOn = new(2026, 7, 20), SoldPrice = 90, Fees = 4, Hours = 2 }],
            new SaleReturn("P1", new(2026, 4, 9), 105)
            {
                SoldOn = new(2026, 3, 12),
                SoldPrice = 100,
                Fees = 5,
                DeliveryCharged = 10,
                DeliveryCost = 6,
                Cost = 8,
            });
        QuarterReport first = Quarter(log, 1), second = Quarter(log, 2), third = Quarter(log, 3);
        Assert.Equal((1, 100, 10, 40, 5, 6, 59), (
            first.Profit.Pieces, first.Profit.Sales, first.Profit.DeliveryCharged, first.Profit.CostOfPiecesSold, first.Profit.Fees,
            first.Profit.Delivery, first.Profit.Net));
        Assert.Equal((110 - 40 - 11, 0), (first.Cash.Change, first.Closing.Cost));
        Assert.Equal((0, 105, -40, 8, -73), (
            second.Profit.Pieces, second.Profit.Returns, second.Profit.CostOfPiecesSold, second.Profit.Delivery, second.Profit.Net));
        Assert.Equal((-113, 40), (second.Cash.Change, second.Closing.Cost));
        Assert.Equal((90, 40, 46, 0), (third.Profit.Sales, third.Profit.CostOfPiecesSold, third.Profit.Net, third.Closing.Cost));
        FlipResult flip = Assert.Single(FlipResult.Sold(CostBook.Of(log), HoursLedger.Of(log)));
        Assert.Equal((32, 16), (flip.FullProfit, flip.FullWage));
        Assert.Contains(
            "In 2026-Q2 you sold nothing, gave 105 back for returns, and lost 73.00.",
            QuarterText.Render(second).ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(0, WageTrail.Of(log, "P1").MoneyDifference);
    }

    /// <summary>
    /// Bought for 40; on 2 March sold for 100, given back and thrown away: the piece leaves twice that day, and its account, which the
    /// journal says is empty, is empty after the second time alone.
    /// </summary>
    [Fact]
    public void A_piece_sold_brought_back_and_thrown_away_on_one_day_is_worth_nothing_at_its_end()
    {
        DateOnly day = new(2026, 3, 2);
        SalesLog log = Log(
            [Piece("P1", 40) with { LeftOn = day, LeftAs = LeftAs.Scrapped }],
            new SaleReturn("P1", day, 100) { SoldOn = day, SoldPrice = 100, Fees = 0 });
        var journal = Journal.Of(log, Period(1));
        JournalPosting[] ofPiece = [.. journal.Transactions.SelectMany(fact => fact.Postings).Where(posting => posting.Account == "assets:pieces:P1")];
        Assert.Equal([(40, null), (40, null), (-40, null), (-40, 0)], ofPiece.Select(posting => (posting.Amount, posting.Balance)).ToArray());
        Assert.Equal(-40, Quarter(log, 1).Profit.Net);
    }

    /// <summary>Before it came back nobody could know: on 31 March the piece is sold, as the row of the return tells.</summary>
    [Fact]
    public void Until_it_comes_back_the_piece_is_sold()
    {
        SaleReturn back = new("P1", new(2026, 4, 9), 100) { SoldOn = new(2026, 3, 12), SoldPrice = 100, Fees = 5 };
        SalesLog log = Log([Piece("P1", 40)], back);
        SalesLog then = log.AsOf(new(2026, 3, 31));
        Assert.Equal((PieceState.Sold, new DateOnly(2026, 3, 12), 100m, 5m), (
            then.Pieces[0].State, then.Pieces[0].SoldOn!.Value, then.Pieces[0].SoldPrice!.Value, then.Pieces[0].Fees!.Value));
        Assert.Empty(then.Returns);
        Assert.Equal(Quarter(log, 1).Profit, QuarterReport.Of(then, Period(1)).Profit);
        Assert.NotEqual(PieceState.Sold, log.AsOf(new(2026, 4, 9)).Pieces[0].State);
    }

    /// <summary>What is told of a quarter that was kept is the return, though pieces.csv no longer has the sale either.</summary>
    [Fact]
    public void A_return_that_came_after_the_quarter_was_kept_is_told_as_the_return()
    {
        SaleReturn back = new("P1", new(2026, 3, 20), 100, 2) { SoldOn = new(2026, 3, 12), SoldPrice = 100, Fees = 5 };
        SalesLog now = Log([Piece("P1", 40) with { Row = 2 }], back);
        SalesLog kept = Log([Piece("P1", 40) with { Row = 2, SoldOn = new(2026, 3, 12), SoldPrice = 100, Fees = 5 }]);
        QuarterSinceKept since = QuarterSinceKept.Of(
            new(QuarterKept.Of(QuarterReport.Of(kept, Period(1)), kept), null), QuarterReport.Of(now, Period(1)), now)!;
        QuarterLineSinceKept net = Assert.Single(since.Lines, line => line.Line == "net");
        Assert.Equal((55, -5), (net.Kept, net.Now));
        Assert.Equal(("returns.csv", 2), (Assert.Single(net.Causes).File, net.Causes[0].Line));
    }

    /// <summary>A scratch found later: 15 of 100 given back, the sale stands. Returns 15, to money 15; no cost moves.</summary>
    [Fact]
    public void An_allowance_lowers_the_takings_and_leaves_the_sale_as_it_is()
    {
        SalesLog log = Log(
            [Piece("P1", 40) with { SoldOn = new(2026, 3, 30), SoldPrice = 100, Fees = 0, Hours = 3 }],
            new SaleReturn("P1", new(2026, 4, 2), 15));
        Assert.Equal((60, 0), (Quarter(log, 1).Profit.Net, Quarter(log, 1).Profit.Returns));
        Assert.Equal((-15, 15, 0), (Quarter(log, 2).Profit.Net, Quarter(log, 2).Profit.Returns, Quarter(log, 2).Profit.CostOfPiecesSold));
        Assert.Equal(15, Assert.Single(FlipResult.Sold(CostBook.Of(log), HoursLedger.Of(log))).FullWage);
    }

    /// <summary>
    /// Sold for 100 and 7 of sales tax, 30 paid as a deposit, 40 more on the day; brought back with 37 still due. Given back: 60 and
    /// the tax of 7. Owed by the buyer 37 is no longer due, so returns are 60 + 37 = 97 and 3 of the sale is kept: money 70 - 67.
    /// </summary>
    [Fact]
    public void What_the_buyer_still_owed_is_no_longer_due_when_the_piece_comes_back()
    {
        SalesLog log = Log(
            [Piece("P1", 40)],
            new SaleReturn("P1", new(2026, 3, 20), 60) { SalesTax = 7, SoldOn = new(2026, 3, 10), SoldPrice = 100, Fees = 0 }) with
        {
            Money =
            [
                new(new(2026, 3, 1), MoneyKind.Payment, "P1", 30, null),
                new(new(2026, 3, 10), MoneyKind.Payment, "p1", 40, null),
            ],
        };
        QuarterReport quarter = Quarter(log, 1);
        Assert.Equal((100, 97, 0, 3), (quarter.Profit.Sales, quarter.Profit.Returns, quarter.Profit.CostOfPiecesSold, quarter.Profit.Net));
        Assert.Equal(3 - 40, quarter.Cash.Change);
        Assert.All(quarter.Held, held => Assert.Equal(0, held.Closing));
    }

    /// <summary>Of 100 sold for somebody else 40 were ours; when it comes back both shares go back, and nothing is left.</summary>
    [Fact]
    public void When_a_piece_of_somebody_else_comes_back_its_owner_gives_back_the_owner_s_share()
    {
        SalesLog log = Log(
            [Piece("P1", null) with { Commission = 0.4m }],
            new SaleReturn("P1", new(2026, 3, 20), 100) { SoldOn = new(2026, 3, 10), SoldPrice = 100, Fees = 0 });
        QuarterReport quarter = Quarter(log, 1);
        Assert.Equal((40, 40, 0, 0), (quarter.Profit.Sales, quarter.Profit.Returns, quarter.Profit.Net, quarter.Cash.Change));
    }

    [Theory]
    [InlineData("P1,2026-04-01,50,,,", "sold_price")]
    [InlineData("P1,2026-04-01,50,2026-03-01,,", "sold_price")]
    [InlineData("P1,2026-04-01,50,,80,", "sold_on")]
    [InlineData("P1,2026-02-01,50,2026-03-01,80,", "returned_on")]
    [InlineData("P1,2026-04-01,50,2025-03-01,80,", "sold_on")]
    [InlineData("P2,2026-04-01,50,2026-03-05,90,", "sold_on")]
    [InlineData("P2,2026-04-01,50,2026-02-01,90,", "returned_on")]
    [InlineData("P2,2026-03-01,50,,,", "returned_on")]
    [InlineData("P2,2026-04-01,50,,,3", "sold_price")]
    [InlineData("P9,2026-04-01,50,2026-03-05,90,", "id")]
    public void A_return_that_cannot_be_is_set_aside_with_what_to_do(string row, string column)
    {
        using LogFolder folder = new();
        File.WriteAllText(Path.Combine(folder.Path, "pieces.csv"),
            "id,type,bought_on,bought_price,sold_on,sold_price\nP1,dresser,2026-01-01,40,,\nP2,dresser,2026-01-01,40,2026-03-05,90\n");
        File.WriteAllText(Path.Combine(folder.Path, "returns.csv"), $"id,returned_on,refund,sold_on,sold_price,fees\n{row}\n");
        LogReading reading = folder.Read();
        LogProblem problem = Assert.Single(reading.Problems, problem => problem.Severity == Severity.Error);
        Assert.Equal(("returns.csv", 2, column), (problem.File, problem.Row, problem.Column));
        Assert.Empty(reading.Log!.Returns);
    }

    private static string[] Entries(Journal journal, DateOnly day) =>
    [
        .. journal.Transactions.Where(transaction => transaction.Date == day).Select(transaction =>
            $"{transaction.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} {transaction.Description}: "
            + string.Join(", ", transaction.Postings.Select(posting => FormattableString.Invariant($"{posting.Account} {posting.Amount}")))),
    ];

    private static Piece Piece(string id, decimal? bought) => new() { Id = id, Type = "dresser", BoughtOn = Start, BoughtPrice = bought };

    private static ReportPeriod Period(int quarter) => ReportPeriod.Parse(FormattableString.Invariant($"2026-Q{quarter}"))!;

    private static QuarterReport Quarter(SalesLog log, int quarter)
    {
        var report = QuarterReport.Of(log, Period(quarter));
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
        return report;
    }

    private static SalesLog Log(Piece[] pieces, params SaleReturn[] returns) =>
        new() { Date = new(2026, 12, 31), Pieces = [.. pieces], Returns = [.. returns] };
}
