using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Rent of a booth is shared by the pieces for sale there, by their days in the month; each sum worked by hand.</summary>
public sealed class BoothRentTests
{
    private static readonly DateOnly March = new(2026, 3, 1);

    /// <summary>60 for March: A from the 1st to its sale on the 20th is 20 days, B from the 22nd on is 10; 40 and 20.</summary>
    [Fact]
    public void ThePiecesOfTheBoothShareItsRentByTheirDaysThere()
    {
        CostBook book = CostBook.Of(Log(
            AtTheBooth("A", 1) with { SoldOn = Day(20), SoldPrice = 150 },
            AtTheBooth("B", 22) with { Hours = 1 },
            AtTheBooth("C", 5) with { Channel = "online", Hours = 9 }));
        Assert.Equal([40m, 20m, 0m], Overheads(book));
        Assert.Empty(book.OverheadsUnshared);
        Assert.Equal((March, new DateOnly(2026, 3, 31)), (book.Overheads[0].Date, book.Overheads[0].Until));
        CostLine share = Assert.Single(book["A"].Lines, line => line.Kind == CostKind.Overhead);
        Assert.Equal(
            new CostOrigin("overheads.csv", 2, "60 for 2026-03, for channel booth. Shared by days on sale in 2026-03 over 2 pieces of channel booth."),
            share.Origin);
        Assert.Equal(Day(20), share.Date);
    }

    /// <summary>Three pieces of 31 days each: a third of 100 is 33.33, and the cent left goes to the first of the log.</summary>
    [Fact]
    public void TheCentLeftGoesToTheFirstOfTheLog() => Assert.Equal(
        [33.34m, 33.33m, 33.33m],
        Overheads(CostBook.Of(Log(AtTheBooth("A", 1), AtTheBooth("B", 1), AtTheBooth("C", 1)) with
        {
            Overheads = [new(March, "booth", 100) { Channel = "BOOTH" }],
        })));

    /// <summary>
    /// Listed in January: all 31 days of March. Ready on the 3rd and never listed: 29 days. With a price and a day of purchase, the
    /// 28th: 4 days. Given away on the 10th: 10 days. 31 + 29 + 4 + 10 = 74.
    /// </summary>
    [Fact]
    public void DaysRunFromTheListingElseTheWorkElseThePurchaseToTheDayItLeft()
    {
        Piece piece = AtTheBooth("A", 1);
        CostBook book = CostBook.Of(Log(
            piece with { ListedOn = new(2026, 1, 5) },
            piece with { Id = "B", ListedOn = null, ReadyOn = Day(3) },
            piece with { Id = "C", ListedOn = null, BoughtOn = Day(28), AskingPrice = 90 },
            piece with { Id = "D", LeftOn = Day(10), LeftAs = LeftAs.Given }) with
        {
            Overheads = [new(March, "booth", 74) { Channel = "booth" }],
        });
        Assert.Equal([31m, 29m, 4m, 10m], Overheads(book));
    }

    /// <summary>Nothing but their sales is written down: 60 for two is 30 each.</summary>
    [Fact]
    public void WhereNoDaysAreKnownThoseSoldThereShareEqually()
    {
        Piece piece = new() { Id = "A", Type = "stool", Channel = "booth", SoldOn = Day(9), SoldPrice = 30 };
        CostBook book = CostBook.Of(Log(piece, piece with { Id = "B", SoldOn = Day(30) }, piece with { Id = "C", SoldOn = new(2026, 4, 2) }));
        Assert.Equal([30m, 30m, 0m], Overheads(book));
        Assert.EndsWith(
            "Shared equally over 2 pieces of channel booth sold in 2026-03: their days on sale are not known.",
            Assert.Single(book["B"].Lines).Origin.Rule,
            StringComparison.Ordinal);
    }

    /// <summary>One left before March, one came after it, one is still in the workshop, one ended on an unknown day.</summary>
    [Fact]
    public void ABoothWithNothingForSaleIsIdle()
    {
        Piece piece = AtTheBooth("A", 1);
        CostBook book = CostBook.Of(Log(
            piece with { ListedOn = new(2026, 2, 1), SoldOn = new(2026, 2, 28), SoldPrice = 80 },
            piece with { Id = "B", ListedOn = new(2026, 4, 1) },
            piece with { Id = "C", ListedOn = null, BoughtOn = new(2026, 2, 1) },
            piece with { Id = "D", SoldPrice = 80 },
            piece with { Id = "E", Channel = "online", Hours = 4, ReadyOn = Day(4) }));
        Assert.All(Overheads(book), share => Assert.Equal(0, share));
        CostLine idle = Assert.Single(book.OverheadsUnshared);
        Assert.Equal(60m, idle.Amount);
        Assert.EndsWith("No piece of channel booth was for sale in 2026-03.", idle.Origin.Rule, StringComparison.Ordinal);
    }

    /// <summary>
    /// On 10 March the sale of A on the 20th is not known yet, nor is that C came on the 15th. A and B have been there for 10 days by
    /// then, and D for 5: of 60 that is 24, 24 and 12.
    /// </summary>
    [Fact]
    public void AMonthThatIsNotOverIsSharedByTheDaysSoFar()
    {
        SalesLog log = Log(
            AtTheBooth("A", 1) with { SoldOn = Day(20), SoldPrice = 150 }, AtTheBooth("B", 1), AtTheBooth("C", 15), AtTheBooth("D", 6));
        Assert.Equal([24m, 24m, 0m, 12m], Overheads(CostBook.Of(log.AsOf(Day(10)))));
    }

    /// <summary>
    /// A: from the 1st to its sale on the 4th and, brought back on the 10th and gone again on the 15th, 6 days more: 10. B came back on
    /// the day of its sale, the 6th, and is still there: 31, no day twice. C, for sale since January, was with its buyer all March.
    /// D, back since the 20th, was listed anew on the 23rd: 9. 10 + 31 + 9 = 50.
    /// </summary>
    [Fact]
    public void WhileABuyerHasThePieceItIsNotForSale()
    {
        SalesLog log = Log(
            AtTheBooth("A", 1) with { SoldOn = Day(15), SoldPrice = 150 }, AtTheBooth("B", 1),
            AtTheBooth("C", 1) with { ListedOn = new(2026, 1, 5) }, AtTheBooth("D", 23)) with
        {
            Overheads = [new(March, "booth", 50) { Channel = "booth" }],
            Returns =
            [
                Back("a", Day(4), Day(10)), Back("B", Day(6), Day(6)), Back("C", new(2026, 2, 3), new(2026, 4, 2)),
                Back("D", Day(2), Day(20)),
            ],
        };
        CostBook book = CostBook.Of(log);
        Assert.Equal([10m, 31m, 0m, 9m], Overheads(book));
        Assert.Equal(Day(15), Assert.Single(book["A"].Lines, line => line.Kind == CostKind.Overhead).Date);
    }

    /// <summary>The booth is paid by the month whoever stands there: only what each piece carries is another.</summary>
    [Fact]
    public void TheQuarterIsTheSameAsIfTheRentWereTheWholeWorkshops() => MessyLogs.Any.Sample(
        log =>
        {
            SalesLog plain = log with { Overheads = [.. log.Overheads.Select(row => row with { Channel = null })] };
            var period = ReportPeriod.QuarterOf(log.Date);
            QuarterReport report = QuarterReport.Of(log, period);
            QuarterReport same = QuarterReport.Of(plain, period);
            Assert.Equal((same.Profit, same.Cash.Change, same.Closing.Cost), (report.Profit, report.Cash.Change, report.Closing.Cost));
            Assert.Equal(0, report.Sums.Sum(sum => Math.Abs(sum.Difference)));
        },
        iter: 200);

    [Fact]
    public void TheRentIsOnPiecesOfItsChannelOrOnNone() => MessyLogs.Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            foreach (Overhead row in log.Overheads.Where(row => row.Channel is not null))
            {
                (Piece Piece, CostLine Line)[] shares =
                [
                    .. book.Pieces.SelectMany(cost => cost.Lines.Select(line => (cost.Piece, line)))
                        .Where(share => (share.line.Origin.File, share.line.Origin.Row) == ("overheads.csv", row.Row)),
                ];
                decimal idle = book.OverheadsUnshared
                    .Where(line => (line.Origin.File, line.Origin.Row) == ("overheads.csv", row.Row)).Sum(line => line.Amount);
                Assert.Equal(row.Amount, shares.Sum(share => share.Line.Amount) + idle);
                Assert.True(idle == 0 || shares.Length == 0);
                Assert.All(shares, share =>
                {
                    Assert.Equal(row.Channel, share.Piece.Channel, ignoreCase: true);
                    Assert.True(share.Line.Date >= row.Month && share.Line.Date < row.Month.AddMonths(1) && share.Line.Date <= log.Date);
                });
            }
        },
        iter: 500);

    [Fact]
    public void TheChannelOfARentIsTheWordThatPiecesUse()
    {
        using LogFolder folder = new();
        SalesLog log = folder
            .With("pieces.csv", "id,type,bought_price,listed_on,channel\nA,stool,5,2026-03-01,antique booth\n")
            .With("overheads.csv", "month,item,amount,channel\n2026-03,rent,60,Antique-Booths\n2026-03,insurance,9,\n")
            .Read().Log!;
        Assert.Equal(["antique booth", null], log.Overheads.Select(row => row.Channel));
        Assert.Contains("antique booth", LogWords.Of(log with { Pieces = [] })[WordKind.Channel].Find("antique boths").Words);
        CostBook book = CostBook.Of(log with { Date = new(2026, 3, 31) });
        Assert.Contains(book["A"].Lines, line => (line.Amount, line.Origin.Row) == (60m, 2));
    }

    private static decimal[] Overheads(CostBook book) => [.. book.Pieces.Select(piece => piece.Of(CostKind.Overhead))];

    private static DateOnly Day(int day) => new(2026, 3, day);

    private static SalesLog Log(params Piece[] pieces) => new()
    {
        Date = new(2026, 6, 1),
        Pieces = [.. pieces],
        Overheads = [new(March, "rent", 60, 2) { Channel = "booth" }],
    };

    private static SaleReturn Back(string id, DateOnly sold, DateOnly back) => new(id, back, 100) { SoldOn = sold, SoldPrice = 100 };

    private static Piece AtTheBooth(string id, int listed) =>
        new() { Id = id, Type = "dresser", Channel = "booth", ListedOn = Day(listed) };
}
