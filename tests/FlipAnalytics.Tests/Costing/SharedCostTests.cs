namespace FlipAnalytics.Tests;

/// <summary>Costs of more than one piece: tools, trips, overhead; and what a sale costs.</summary>
public sealed class SharedCostTests
{
    private static readonly DateOnly January = new(2025, 1, 1);

    /// <summary>90 less 30 over 4 pieces is 15 each; the fifth bears nothing, and 30 stays.</summary>
    [Fact]
    public void AToolWearsDownToSalvageAndNoFurther()
    {
        CostBook book = CostBook.Of(Log(5) with { Tools = [new("sander", January, 90, 30, 4, null)] });
        Assert.Equal([15m, 15m, 15m, 15m, 0m], book.Pieces.Select(piece => piece.Of(CostKind.Tools)));
        Assert.Equal((30m, 60m), (book.ToolsLeft[0].Value, book.ToolsLeft[0].Worn));
    }

    /// <summary>120 over 12 months is 10 a month; the second month had two pieces of 1 and 3 hours, the third none.</summary>
    [Fact]
    public void AToolByMonthsIsBorneByTheHoursOfEachMonthAndIdleMonthsByNobody()
    {
        SalesLog log = Log(3) with
        {
            Date = new(2025, 3, 15),
            Tools = [new("drill", new(2025, 1, 20), 120, null, null, 12)],
            Pieces = [Worked("A", 2, 0), Worked("B", 1, 35), Worked("C", 3, 40)],
        };
        CostBook book = CostBook.Of(log);
        Assert.Equal([10m, 2.5m, 7.5m], book.Pieces.Select(piece => piece.Of(CostKind.Tools)));
        Assert.Equal(new(2025, 3, 1), Assert.Single(book.ToolsIdle).Date);
        Assert.Equal(90m, book.ToolsLeft[0].Value);
    }

    [Fact]
    public void AToolWithoutALifeKeepsItsValueAndIsSaidSo()
    {
        CostBook book = CostBook.Of(Log(1) with { Tools = [new("jig", January, 40, null, null, null)] });
        Assert.Equal(40m, book.ToolsLeft[0].Value);
        Assert.Contains(book.Notes, note => note.StartsWith("jig has no life", StringComparison.Ordinal));
    }

    [Fact]
    public void ATripThatBroughtNothingHomeIsOverheadOfItsMonth()
    {
        CostBook book = CostBook.Of(Log(2) with { Trips = [new("T1", January, 10, 1, 3, null)] });
        CostLine trip = Assert.Single(book.Overheads);
        Assert.Equal((CostKind.Overhead, 10m), (trip.Kind, trip.Amount));
        Assert.Equal([5m, 5m], book.Pieces.Select(piece => piece.Of(CostKind.Overhead)));
        Assert.All(book.Pieces, piece => Assert.Equal("trips.csv", piece.Lines[0].Origin.File));
    }

    [Fact]
    public void OverheadFollowsTheHoursOfTheMonth()
    {
        SalesLog log = Log(0) with
        {
            Pieces = [Worked("A", null, 50), Worked("B", 2, 3)],
            Hours = [new("A", new(2025, 1, 9), WorkTask.Sanding, 6), new("A", new(2025, 2, 9), WorkTask.Painting, 4)],
            Overheads = [new(January, "rent", 80), new(new(2025, 2, 1), "rent", 80), new(new(2025, 5, 1), "rent", 80)],
        };
        CostBook book = CostBook.Of(log);
        Assert.Equal([140m, 20m], book.Pieces.Select(piece => piece.Of(CostKind.Overhead)));
        Assert.Equal(80m, Assert.Single(book.OverheadsUnshared).Amount);
    }

    [Fact]
    public void UnknownFeesLeaveNetProceedsUnknown()
    {
        SalesLog log = Log(0) with
        {
            Pieces = [Worked("A", 1, 2) with { SoldOn = January.AddDays(5), SoldPrice = 100, DeliveryCharged = 20, DeliveryCost = 12.5m }],
        };
        PieceCost piece = CostBook.Of(log)["a"];
        Assert.Equal((null, 107.5m), (piece.NetProceeds, piece.NetProceedsAtMost));
        Assert.False(piece.PurchaseKnown);
    }

    /// <summary>
    /// Bought in January for 50 with 10 of supplies; the second sold in February, the third scrapped, the fourth kept.
    /// </summary>
    [Fact]
    public void OpeningAndAddedIsSoldWrittenOffKeptAndClosing()
    {
        Piece[] pieces =
        [
            .. "ABCD".Select(id => Worked($"{id}", 1, 10) with { BoughtPrice = 50, SuppliesCost = 10 }),
            Worked("E", 1, 45) with { BoughtOn = new(2025, 2, 3), BoughtPrice = 7, SuppliesCost = 1 },
        ];
        pieces[1] = pieces[1] with { SoldOn = new(2025, 2, 1), SoldPrice = 120, Fees = 0 };
        pieces[2] = pieces[2] with { LeftOn = new(2025, 2, 10), LeftAs = LeftAs.Scrapped };
        pieces[3] = pieces[3] with { LeftOn = new(2025, 2, 11), LeftAs = LeftAs.Kept };
        CostBook book = CostBook.Of(Log(0) with { Pieces = [.. pieces] });
        Assert.Equal(
            new StockMovement(new(2025, 2, 1), new(2025, 2, 28), Opening: 240, Added: 8, Sold: 60, WrittenOff: 60, Kept: 60, Closing: 68),
            book.Stock(new(2025, 2, 1), new(2025, 2, 28)));
        Assert.Equal(200m, book.Stock(new(2025, 2, 1), new(2025, 2, 28), CostKind.Purchase).Opening);
        Assert.Throws<ArgumentOutOfRangeException>(() => book.Stock(new(2025, 2, 2), new(2025, 2, 1)));
    }

    [Fact]
    public void ALogWithoutAnythingGivesEmptyBooks()
    {
        CostBook book = CostBook.Of(new() { Date = January });
        Assert.Empty(book.Pieces);
        Assert.Equal(0, book.TotalSpent);
        Assert.Empty(book.Notes);
    }

    private static SalesLog Log(int pieces) => new()
    {
        Date = new(2025, 6, 1),
        Pieces = [.. Enumerable.Range(1, pieces).Select(i => Worked($"P{i}", 2, i))],
    };

    private static Piece Worked(string id, decimal? hours, int day) => new()
    {
        Id = id,
        Type = "dresser",
        BoughtOn = January,
        ReadyOn = January.AddDays(day),
        Hours = hours,
    };
}
