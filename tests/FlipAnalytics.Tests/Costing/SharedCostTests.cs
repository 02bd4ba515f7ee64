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

    /// <summary>75 × 20 / 96 is 15.625; the half cent is rounded away from zero.</summary>
    [Fact]
    public void WearThatEndsInHalfACentIsRoundedUp() =>
        Assert.Equal(15.63m, ToolWear.Worn(75, null, 20, 96, Currency.Of("USD")));

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

    /// <summary>100 for three chairs: 33.34, 33.33 and 33.33 where nothing was expected of one of them.</summary>
    [Fact]
    public void ALotIsSharedEquallyWhereAnExpectedPriceIsUnknown()
    {
        Piece first = new() { Id = "A", Type = "chair", Lot = "barn", BoughtPrice = 100, ExpectedPrice = 80 };
        CostBook book = CostBook.Of(Log(0) with
        {
            Pieces = [first, first with { Id = "B", BoughtPrice = null }, first with { Id = "C", BoughtPrice = null, ExpectedPrice = null }],
        });
        Assert.Equal([33.34m, 33.33m, 33.33m], book.Pieces.Select(piece => piece.Of(CostKind.Purchase)));
        Assert.All(book.Pieces, piece => Assert.True(piece.PurchaseKnown));
    }

    [Fact]
    public void ALotWhosePiecesAllHaveAPriceOrNoneHasNothingToShare()
    {
        Piece priced = new() { Id = "A", Type = "chair", Lot = "barn", BoughtPrice = 100 };
        Piece unpriced = new() { Id = "C", Type = "chair", Lot = "shed" };
        CostBook book = CostBook.Of(Log(0) with { Pieces = [priced, priced with { Id = "B", BoughtPrice = 5 }, unpriced] });
        Assert.Equal([100m, 5m, 0m], book.Pieces.Select(piece => piece.Of(CostKind.Purchase)));
        Assert.False(book["C"].PurchaseKnown);
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

    /// <summary>Three empty outings of 1 each, shared by two pieces: 1.50 each in one line, and each on record by itself.</summary>
    [Fact]
    public void FruitlessTripsOfAMonthAreSharedTogether()
    {
        Trip trip = new("T1", January, 0, 1, 1, null);
        CostBook book = CostBook.Of(Log(2) with
        {
            Trips = [trip, trip with { Name = "T2" }, trip with { Name = "T3", Date = January.AddDays(20) }],
        });
        Assert.Equal(3, book.Overheads.Length);
        Assert.Equal([1.5m, 1.5m], book.Pieces.Select(piece => Assert.Single(piece.Lines).Amount));
        Assert.StartsWith("3 fruitless trips of 2025-01 for 3.", book.Pieces[0].Lines[0].Origin.Rule, StringComparison.Ordinal);
    }

    /// <summary>
    /// 6,000 miles on each of two outings at 45 pence, 25 beyond 10,000 (published rate, before 6 April 2026): the second
    /// comes to 4,000 × 0.45 + 2,000 × 0.25. The undated one took place when its piece was bought, and so came second.
    /// </summary>
    [Fact]
    public void AnUndatedTripCountsTowardsTheThresholdOnTheDayItsPieceWasBought()
    {
        SalesLog log = Log(0) with
        {
            Workshop = new() { Currency = Currency.Of("GBP") },
            Pieces = [Worked("A", 1, 2) with { Trip = "first" }, Worked("B", 1, 60) with { Trip = "second", BoughtOn = January.AddDays(50) }],
            Trips = [new("second", null, 6000, null, null, null), new("first", January, 6000, null, null, null)],
        };
        Assert.Equal([2700m, 2300m], CostBook.Of(log).Pieces.Select(piece => piece.Of(CostKind.Trip)));
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(null, 0)]
    public void AToolWithALifeOfNothingIsOneWithoutALife(int? pieces, int? months)
    {
        CostBook book = CostBook.Of(Log(1) with { Tools = [new("jig", January, 40, null, pieces, months)] });
        Assert.Equal(40m, book.ToolsLeft[0].Value);
        Assert.Contains(book.Notes, note => note.StartsWith("jig has no life", StringComparison.Ordinal));
    }

    [Fact]
    public void ADeliveryChargedForWithoutItsCostLeavesNetProceedsUnknown()
    {
        Piece sold = Worked("A", 1, 2) with { SoldOn = January.AddDays(5), SoldPrice = 100, Fees = 0, DeliveryCharged = 20 };
        PieceCost piece = CostBook.Of(Log(0) with { Pieces = [sold] })["A"];
        Assert.Equal((null, 120m), (piece.NetProceeds, piece.NetProceedsAtMost));
        Assert.Equal(115m, CostBook.Of(Log(0) with { Pieces = [sold with { DeliveryCost = 5 }] })["A"].NetProceeds);
    }

    [Fact]
    public void ASaleWithoutADayCountsOnTheLastDayOnRecord()
    {
        Piece sold = Worked("A", 1, 20) with { ListedOn = January.AddDays(10), SoldPrice = 100 };
        Assert.Equal(January.AddDays(20), CostBook.Of(Log(0) with { Pieces = [sold] })["A"].EndedOn);
        Assert.Equal(January.AddDays(10), CostBook.Of(Log(0) with { Pieces = [sold with { ReadyOn = null }] })["A"].EndedOn);
    }

    [Fact]
    public void FeesOfAPieceThatIsNotSoldAreSaidNotToCount()
    {
        CostBook book = CostBook.Of(Log(0) with { Pieces = [Worked("A", 1, 2) with { Fees = 3 }] });
        Assert.Equal(0m, book.TotalSpent);
        Assert.StartsWith("A is not sold", Assert.Single(book.Notes, note => note.StartsWith('A')), StringComparison.Ordinal);
    }

    [Fact]
    public void OfTwoPiecesOfOneIdTheFirstIsFoundAndBothAreInTheBooks()
    {
        CostBook book = CostBook.Of(Log(0) with
        {
            Pieces = [Worked("A", 1, 2) with { BoughtPrice = 5 }, Worked("a", 1, 3) with { BoughtPrice = 7 }],
        });
        Assert.Equal((5m, 12m), (book["a"].Total, book.TotalSpent));
        Assert.Throws<ArgumentException>(() => book["B"]);
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
            new StockMovement(new(2025, 2, 1), new(2025, 2, 28), Opening: 240, Added: 8, CameBack: 0, Sold: 60, WrittenOff: 60, Kept: 60, Closing: 68),
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
