namespace FlipAnalytics.Tests;

/// <summary>What pieces used up, what is left in the cans, and what nobody can know.</summary>
public sealed class SuppliesLedgerTests
{
    private static readonly DateOnly January = new(2025, 1, 1);

    /// <summary>32 fl oz at 24.00, then 32 at 32.00; 40 used: 32.00 first in first out, 35.00 at the average.</summary>
    [Theory]
    [InlineData(CostingMethod.Fifo, 32.00, 24.00)]
    [InlineData(CostingMethod.Average, 35.00, 21.00)]
    public void AUseTakesItsCostFromTheCans(CostingMethod method, decimal cost, decimal left)
    {
        CostBook book = Book(
            [Can(0, 32, "fl oz", 24), Can(5, 1, "quart", 32)], [Measured(10, 40, "fl oz")], method);
        Assert.Equal(cost, book["P1"].Of(CostKind.Supplies));
        Assert.Equal(left, Assert.Single(book.SuppliesLeft).Value);
        Assert.Equal(0.75m, decimal.Round(book.SuppliesLeft[0].Quantity!.Value, 9));
        Assert.Equal("quart", book.SuppliesLeft[0].Unit);
    }

    /// <summary>A plain 60 × 18 × 32 dresser, 2 coats at 400 ft² a gallon, 15 % lost: 21.71 fl oz.</summary>
    [Fact]
    public void CoatsTakeTheirPaintByAreaAndCoverage()
    {
        CostBook book = Book(
            [Can(0, 128, "fl oz", 128) with { Coverage = 400, CoverageUnit = "ft2/gal" }],
            [new("P1", Day(1), "paint", null, null, 2, null)]);
        Assert.Equal(21.71m, book["P1"].Of(CostKind.Supplies));
        Assert.Contains("estimated from its dimensions", book["P1"].Lines[0].Origin.Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void AStatedAreaCountsBeforeTheDimensions()
    {
        CostBook book = Book(
            [Can(0, 1, "gal", 400) with { Coverage = 400 / 0.85m, CoverageUnit = "ft2/gal" }],
            [new("P1", Day(1), "paint", null, null, 2, 10)]);
        Assert.Equal(20m, book["P1"].Of(CostKind.Supplies));
    }

    [Fact]
    public void UsingMoreThanWasBoughtIsUnknownAndSaidSo()
    {
        CostBook book = Book([Can(0, 1, "quart", 20)], [Measured(1, 3, "pints")]);
        Assert.Equal(20m, book["P1"].Of(CostKind.Supplies));
        Assert.Null(book["P1"].Known(CostKind.Supplies));
        Assert.Contains(book.Notes, note => note.Contains("1 pints more was used by then than was bought", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("kg", "do not convert")]
    [InlineData("tin", "do not convert")]
    public void WhatDoesNotConvertHasNoCost(string unit, string reason)
    {
        CostBook book = Book([Can(0, 1, "quart", 20)], [Measured(1, 1, unit)]);
        Assert.Null(book["P1"].Known(CostKind.Supplies));
        Assert.Equal(20m, Assert.Single(book.SuppliesLeft).Value);
        Assert.Contains(book.Notes, note => note.Contains(reason, StringComparison.Ordinal));
    }

    [Fact]
    public void ACanWithoutAPriceMakesItsUsesUnknown()
    {
        CostBook book = Book([Can(0, 1, "quart", 20) with { Price = null }], [Measured(1, 1, "pint")]);
        Assert.Null(book["P1"].Known(CostKind.Supplies));
        Assert.Equal(0.5m, Assert.Single(book.SuppliesLeft).Quantity);
    }

    /// <summary>30 for the first box falls on 2 and 4 hours; the second box costs 5 an hour too, for 1 hour.</summary>
    [Fact]
    public void SandpaperIsSpreadByHoursUntilTheNextBox()
    {
        CostBook book = CostBook.Of(Log(
            [Box(0, 30), Box(20, 40)], [], Worked("P1", 2, 5), Worked("P2", 4, 10), Worked("P3", 1, 25)));
        Assert.Equal([10m, 20m, 5m], book.Pieces.Select(piece => piece.Of(CostKind.Supplies)));
        Assert.Equal((35m, 43.75m), (book.SuppliesLeft[0].Value, book.SuppliesLeft[0].Quantity));
    }

    [Fact]
    public void WithoutAnyHoursSandpaperIsSpreadEqually()
    {
        CostBook book = CostBook.Of(Log(
            [Box(0, 10)], [], Worked("P1", null, 5), Worked("P2", null, 10), Worked("P3", null, 11)));
        Assert.Equal([3.34m, 3.33m, 3.33m], book.Pieces.Select(piece => piece.Of(CostKind.Supplies)));
    }

    [Fact]
    public void ABoxBoughtBeforeAnyWorkIsStock()
    {
        CostBook book = CostBook.Of(Log([Box(0, 10)], [], new Piece { Id = "P1", Type = "dresser", BoughtOn = Day(1) }));
        Assert.Equal((10m, 50m), (book.SuppliesLeft[0].Value, book.SuppliesLeft[0].Quantity));
    }

    /// <summary>The first box lasted from day 0 to day 20 without work, so it and the second serve the piece of day 25.</summary>
    [Fact]
    public void ABoxNobodyUsedBeforeTheNextIsCarriedOn()
    {
        CostBook book = CostBook.Of(Log([Box(0, 10), Box(20, 12)], [], Worked("P1", 3, 25)));
        Assert.Equal(22m, book["P1"].Of(CostKind.Supplies));
    }

    [Fact]
    public void WhatIsStatedReplacesTheLedgerAndTheDifferenceHasItsOwnLine()
    {
        SalesLog log = Log([Can(0, 1, "quart", 20)], [Measured(1, 1, "pint")], Worked("P1", 2, 5) with { SuppliesCost = 17.5m });
        CostBook book = CostBook.Of(log);
        PieceCost piece = book["P1"];
        Assert.Equal((17.5m, 10m, 7.5m), (piece.Of(CostKind.Supplies), piece.SuppliesByLedger, piece.SuppliesDifference));
        Assert.Equal([10m, 7.5m], piece.Lines.Where(line => line.Kind == CostKind.Supplies).Select(line => line.Amount));
        Assert.Equal(
            new CostTotal(CostKind.Supplies, Spent: 20, OnPieces: 17.5m, Left: 10, Unassigned: 0, Stated: 7.5m),
            book.Total(CostKind.Supplies));
    }

    /// <summary>0.5 quart for 2 coats on 20 ft² is 80 ft² a quart, 94.1 before 15 % is lost.</summary>
    [Fact]
    public void MeasuredCoatsCorrectTheCoverage()
    {
        CostBook book = Book(
            [Can(0, 2, "quart", 20) with { Coverage = 150, CoverageUnit = "ft2/quart" }],
            [new("P1", Day(1), "paint", 0.5m, "quart", 2, 20)]);
        CoverageCheck check = Assert.Single(book.Coverage);
        Assert.Equal((150m, 94.1m, "ft2/quart", 1), (check.Assumed, check.Implied, check.Unit, check.Uses));
        Assert.Contains("write 94.1", check.Suggestion, StringComparison.Ordinal);

        CostBook corrected = Book(
            [Can(0, 2, "quart", 20) with { Coverage = 80 / 0.85m, CoverageUnit = "ft2/quart" }],
            [new("P1", Day(1), "paint", null, null, 2, 20)]);
        Assert.Equal(book["P1"].Of(CostKind.Supplies), corrected["P1"].Of(CostKind.Supplies));
    }

    [Fact]
    public void ACanLaterInTheDayCountsForTheUseOfThatDayAndTheFirstCanForAnyEarlierUse()
    {
        CostBook book = Book([Can(9, 1, "quart", 20), Can(12, 1, "quart", 30)], [Measured(1, 1, "quart"), Measured(12, 1, "quart")]);
        Assert.Equal(50m, book["P1"].Known(CostKind.Supplies));
    }

    [Fact]
    public void APieceWithoutARecordInALogOfUsesHasUnknownSupplies()
    {
        CostBook book = CostBook.Of(Log(
            [Can(0, 1, "quart", 20)], [Measured(1, 1, "pint")], Worked("P1", 2, 5), Worked("P2", 2, 6)));
        Assert.Equal([10m, null], book.Pieces.Select(piece => piece.Known(CostKind.Supplies)));
    }

    [Fact]
    public void AnUnusedColourWaitsForItsFirstUse()
    {
        SupplyPurchase navy = Can(0, 1, "quart", 25) with { Item = "navy", Coverage = 100, CoverageUnit = "ft2/quart" };
        CostBook book = Book([Can(0, 1, "quart", 20), navy], [Measured(1, 1, "quart")]);
        Assert.Equal([0m, 25m], book.SuppliesLeft.Select(stock => stock.Value));
    }

    /// <summary>Nobody knows what the first box cost, so it sets no rate: the second, 12, is charged in full, not for nothing.</summary>
    [Fact]
    public void ABoxWithoutAPriceSetsNoRateForTheNextAndLeavesItsPiecesUnknown()
    {
        CostBook book = CostBook.Of(Log(
            [Box(0, 30) with { Price = null }, Box(20, 12)], [], Worked("P1", 2, 5), Worked("P2", 4, 25)));
        Assert.Equal([null, 12m], book.Pieces.Select(piece => piece.Known(CostKind.Supplies)));
    }

    [Fact]
    public void WhatIsSpreadThoughNobodyOpenedItIsSaidByName()
    {
        SupplyPurchase rags = Box(1, 4) with { Item = "rags" };
        CostBook spread = CostBook.Of(Log([Box(0, 30), rags], [], Worked("P1", 2, 5)));
        Assert.Contains("No use of sandpaper or rags is written down", Assert.Single(spread.Notes), StringComparison.Ordinal);
        CostBook used = Book([Can(0, 1, "quart", 20), rags], [Measured(1, 1, "quart")]);
        Assert.Contains("No use of rags is written down", Assert.Single(used.Notes), StringComparison.Ordinal);
        Assert.Empty(CostBook.Of(Log([rags], [])).Notes);
    }

    /// <summary>The quantity is not written down, so the can cannot be measured out; only P1 used it, a day before.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData(0)]
    public void ACanWithoutAQuantityFallsOnThePieceThatUsedIt(int? quantity)
    {
        CostBook book = CostBook.Of(Log(
            [Can(6, 1, "quart", 20) with { Quantity = quantity }, Can(6, 1, "quart", 8) with { Item = "wax" }],
            [Measured(5, 1, "pint"), Measured(20, 1, "pint") with { PieceId = "P2", Item = "wax" }],
            Worked("P1", 2, 5), Worked("P2", 4, 25)));
        Assert.Equal([20m, 4m], book.Pieces.Select(piece => piece.Of(CostKind.Supplies)));
    }

    /// <summary>A can of no quantity has no average; its price falls on what was used, beside 1 of the 3 pints.</summary>
    [Fact]
    public void ACanOfNothingDoesNotUpsetTheAverage()
    {
        CostBook book = Book(
            [Can(0, 0, "pint", 5), Can(0, 3, "pint", 9) with { Price = null }], [Measured(1, 1, "pint")], CostingMethod.Average);
        Assert.Equal(5m, book["P1"].Of(CostKind.Supplies));
        Assert.Equal(2m, decimal.Round(book.SuppliesLeft[^1].Quantity!.Value, 9));
    }

    /// <summary>A piece ready on day 15, used without a day: the label of the can of day 10, 10 a coat of 10 ft², counts.</summary>
    [Fact]
    public void AnUndatedUseReachesAsFarAsTheCanOfItsTimeSays()
    {
        SupplyPurchase first = Can(0, 1, "quart", 20) with { Coverage = 1000 / 0.85m, CoverageUnit = "ft2/quart" };
        SupplyPurchase second = Can(10, 1, "quart", 20) with { Coverage = 20 / 0.85m, CoverageUnit = "ft2/quart" };
        CostBook book = Book([first, second], [new("P1", null, "paint", null, null, 1, 10)]);
        Assert.Equal(10m, book["P1"].Known(CostKind.Supplies));
    }

    /// <summary>Four cans in cans of quart, pint, fl oz and ml: 0.5 + 0.25 quart is 24 of the 32 fl oz first bought.</summary>
    [Fact]
    public void UnitsOfOneMeasureComeFromOneShelf()
    {
        CostBook book = Book(
            [Can(0, 32, "fl oz", 32), Can(1, 2, "pint", 64), Can(2, 946.352946m, "ml", 100)],
            [Measured(3, 0.5m, "quart"), Measured(4, 0.5m, "pint"), Measured(5, 40, "fl oz")]);
        Assert.Equal([16m, 8m, 72m], book["P1"].Lines.Select(line => line.Amount));
        Assert.Equal(100m, book.SuppliesLeft[0].Value);
    }

    private static DateOnly Day(int day) => January.AddDays(day);

    private static SupplyPurchase Can(int day, decimal quantity, string unit, decimal price) =>
        new("paint", "paint", Day(day), quantity, unit, price, null, null);

    private static SupplyPurchase Box(int day, decimal price) =>
        new("sandpaper", "abrasive", Day(day), 50, "sheet", price, null, null);

    private static SupplyUse Measured(int day, decimal quantity, string unit) =>
        new("P1", Day(day), "Paint", quantity, unit, null, null);

    private static Piece Worked(string id, decimal? hours, int day) => new()
    {
        Id = id,
        Type = "dresser",
        Width = 60,
        Depth = 18,
        Height = 32,
        BoughtOn = January,
        ReadyOn = Day(day),
        Hours = hours,
    };

    private static CostBook Book(SupplyPurchase[] purchases, SupplyUse[] uses, CostingMethod method = CostingMethod.Fifo)
    {
        SalesLog log = Log(purchases, uses, Worked("P1", 5, 15));
        return CostBook.Of(log with { Workshop = log.Workshop with { Costing = method } });
    }

    private static SalesLog Log(SupplyPurchase[] purchases, SupplyUse[] uses, params Piece[] pieces) =>
        new() { Date = Day(60), Pieces = [.. pieces], Supplies = [.. purchases], Uses = [.. uses] };
}
