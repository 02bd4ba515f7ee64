using System.Collections.Immutable;

namespace FlipAnalytics.Tests;

/// <summary>What a count makes of the books, and what was wasted or never bought: worked by hand.</summary>
public sealed class StockCountTests
{
    private static readonly DateOnly January = new(2025, 1, 1);

    /// <summary>
    /// 32 fl oz at 24.00, then 32 at 32.00; 40 used, 24 left. Counted 16: 8 missing, at 1.00 from the second can first in first
    /// out; at the average of 0.875, 4 of each, 3.00 and 4.00. Counted 32: 8 found, put back likewise.
    /// </summary>
    [Theory]
    [InlineData(CostingMethod.Fifo, 16, 8.00, "0/0/0 8/8/16")]
    [InlineData(CostingMethod.Average, 16, 7.00, "20/4/8 20/4/8")]
    [InlineData(CostingMethod.Fifo, 32, -8.00, "0/0/0 8/-8/32")]
    [InlineData(CostingMethod.Average, 32, -7.00, "20/-4/16 20/-4/16")]
    public void ACountPutsTheBooksRightAndTheDifferenceIsACostOfItsDay(
        CostingMethod method, decimal counted, decimal missing, string cans)
    {
        CostBook book = Book(method, [Can(0, 32, 24), Can(5, 32, 32)], [Use("P1", 10, 40)], [Count(20, counted)]);
        CostLine line = Assert.Single(book.SuppliesOnNoPiece);
        Assert.Equal((CostKind.Supplies, Day(20), missing, missing > 0 ? "paint missing at the count" : "paint found at the count"),
            (line.Kind, line.Date, line.Amount, line.What));
        Assert.Equal(("counts.csv", 9), (line.Origin.File, line.Origin.Row));
        Assert.StartsWith($"24 fl oz by the books, {counted} counted: ", line.Origin.Rule, StringComparison.Ordinal);
        // Used, counted away, left; of the first can all is used under first in, first out.
        string[] expected = cans.Replace("0/0/0", "32/0/0", StringComparison.Ordinal).Split(' ');
        Assert.Equal(expected, book.CansOn(Day(20)).Select(can => FormattableString.Invariant($"{can.Used:0.###}/{can.CountedAway:0.###}/{can.Left:0.###}")));
        Assert.Equal(method == CostingMethod.Fifo ? 32m : 35m, book["P1"].Known(CostKind.Supplies));
        Assert.Equal(new CostTotal(
            CostKind.Supplies, Spent: 56, OnPieces: method == CostingMethod.Fifo ? 32 : 35,
            Left: (method == CostingMethod.Fifo ? 24 : 21) - missing, Unassigned: missing, Stated: 0), book.Total(CostKind.Supplies));
    }

    /// <summary>The evening before the count the books still say 24 fl oz.</summary>
    [Fact]
    public void BeforeItsDayACountChangesNothing()
    {
        CostBook book = Book(CostingMethod.Fifo, [Can(0, 32, 24), Can(5, 32, 32)], [Use("P1", 10, 40)], [Count(20, 16)]);
        Assert.Equal([(0m, 0m), (24m, 24m)], book.CansOn(Day(19)).Select(can => (can.Left!.Value, can.ValueLeft)));
        Assert.Equal([(0m, 0m), (16m, 16m)], book.CansOn(Day(20)).Select(can => (can.Left!.Value, can.ValueLeft)));
        Assert.Single(book.CansOn(Day(4)));
    }

    /// <summary>64 were bought, 80 counted: the 40 used are found again, at what they had cost; of the other 16 nothing is known.</summary>
    [Theory]
    [InlineData(CostingMethod.Fifo)]
    [InlineData(CostingMethod.Average)]
    public void NoMoreIsFoundThanWasBought(CostingMethod method)
    {
        CostBook book = Book(method, [Can(0, 32, 24), Can(5, 32, 32)], [Use("P1", 10, 40)], [Count(20, 80)]);
        Assert.Equal(56m, book.SuppliesLeft.Single().Value);
        Assert.Equal(method == CostingMethod.Fifo ? -32m : -35m, Assert.Single(book.SuppliesOnNoPiece).Amount);
        Assert.Contains(book.Notes, note => note.StartsWith(
            "counts.csv, line 9: 16 fl oz more of paint was counted than was bought by then", StringComparison.Ordinal));
    }

    /// <summary>1 quart is 32 fl oz; half a pint and 4 fl oz on two shelves are 12, so 8 of 20 are missing, at 0.75.</summary>
    [Fact]
    public void RowsOfOneDayAddUpInAnyUnit()
    {
        CostBook book = Book(
            CostingMethod.Fifo, [Can(0, 32, 24)], [Use("P1", 10, 12)],
            [Count(20, 0.5m) with { Unit = "pint" }, Count(20, 4) with { Unit = "fl oz" }]);
        Assert.Equal(6m, Assert.Single(book.SuppliesOnNoPiece).Amount);
        Assert.Equal(9m, book.SuppliesLeft.Single().Value);
    }

    [Fact]
    public void WhatWasUsedOnTheDayOfTheCountIsOffAlready()
    {
        CostBook book = Book(CostingMethod.Fifo, [Can(0, 32, 32)], [Use("P1", 20, 20), Use("P1", 21, 2)], [Count(20, 12)]);
        Assert.Empty(book.SuppliesOnNoPiece);
        Assert.Equal(10m, book.SuppliesLeft.Single().Value);
    }

    /// <summary>After an empty can is counted, what is used needs a new one; 12 fl oz more were never bought.</summary>
    [Fact]
    public void AnEmptyCanGivesNothingMore()
    {
        CostBook book = Book(CostingMethod.Fifo, [Can(0, 32, 32)], [Use("P1", 10, 20), Use("P1", 30, 12)], [Count(20, 0)]);
        Assert.Equal((12m, 0m), (Assert.Single(book.SuppliesOnNoPiece).Amount, book.SuppliesLeft.Single().Value));
        Assert.Null(book["P1"].Known(CostKind.Supplies));
        Assert.Contains(book.Notes, note => note.Contains("12 fl oz more was used by then than was bought", StringComparison.Ordinal));
    }

    /// <summary>
    /// 2 quarts at 40; P2 used 16 fl oz, 10.00; P1 states 20.00 and no use. 8 fl oz are counted, so 40 are missing, 25.00: 20.00 of
    /// it is what P1 states, 5.00 is lost. 40 spent is 30 on pieces, 5 left and 5 lost; nothing is stated beyond the cans.
    /// </summary>
    [Fact]
    public void WhatPiecesStateIsNoLossASecondTime()
    {
        SalesLog log = Log([Can(0, 64, 40)], [Use("P2", 10, 16)], [Count(20, 8)], Piece("P1", 2, 12) with { SuppliesCost = 20 }, Piece("P2", 2, 10));
        CostBook book = CostBook.Of(log);
        Assert.Equal(new CostTotal(CostKind.Supplies, Spent: 40, OnPieces: 30, Left: 5, Unassigned: 5, Stated: 0), book.Total(CostKind.Supplies));
        Assert.Equal((Day(20), "P1", 20m), (book.StatedByCounts.Single().Date, book.StatedByCounts[0].PieceId, book.StatedByCounts[0].Amount));
        Assert.EndsWith("Of its cost 20 is in what pieces.csv states.", Assert.Single(book.SuppliesOnNoPiece).Origin.Rule, StringComparison.Ordinal);

        // Worked on after the count, the piece took its paint from what is left: all that was missing is lost.
        CostBook later = CostBook.Of(log with { Pieces = [log.Pieces[0] with { ReadyOn = Day(25) }, log.Pieces[1]] });
        Assert.Equal(new CostTotal(CostKind.Supplies, Spent: 40, OnPieces: 30, Left: 5, Unassigned: 25, Stated: 20), later.Total(CostKind.Supplies));
    }

    /// <summary>P1 states 4.00 for what the can was charged 10.00 for; 8 fl oz of the 16 are found again, 5.00, all of it stated.</summary>
    [Fact]
    public void WhatPiecesStateLessIsNoGainASecondTime()
    {
        CostBook book = CostBook.Of(Log(
            [Can(0, 64, 40)], [Use("P1", 10, 16)], [Count(20, 56)], Piece("P1", 2, 10) with { SuppliesCost = 4 }));
        Assert.Empty(book.SuppliesOnNoPiece);
        Assert.Equal(new CostTotal(CostKind.Supplies, Spent: 40, OnPieces: 4, Left: 35, Unassigned: 0, Stated: -1), book.Total(CostKind.Supplies));
    }

    /// <summary>
    /// 50 sheets at 30.00; 20 are left on day 12, so 30, 18.00, fell on 2 and 4 hours. After that an hour costs 18 / 6, and P3
    /// took 1: 3.00, a quarter of what was left.
    /// </summary>
    [Fact]
    public void OfSandpaperTheCountSaysWhatWasUsedUp()
    {
        CostBook book = CostBook.Of(Log(
            [Box(0, 30)], [], [new(Day(12), "sandpaper", 20, null, null, 9)], Piece("P1", 2, 5), Piece("P2", 4, 10), Piece("P3", 1, 25)));
        Assert.Equal([6m, 12m, 3m], book.Pieces.Select(piece => piece.Of(CostKind.Supplies)));
        Assert.Empty(book.SuppliesOnNoPiece);
        Assert.Equal((9m, 15m), (book.SuppliesLeft[0].Value, book.SuppliesLeft[0].Quantity));
        Assert.Contains("until 2025-01-13, when there was 20 sheet counted", book["P1"].Lines[0].Origin.Rule, StringComparison.Ordinal);
        SupplyCan can = Assert.Single(book.CansOn(Day(12)));
        Assert.Equal((30m, 0m, 20m, 12m), (can.Used, can.CountedAway, can.Left, can.ValueLeft));
    }

    /// <summary>Without a count the first box is all charged when the second comes; the count says that 60 of 100 sheets are left.</summary>
    [Fact]
    public void ACountKeepsABoxThatWasNotUsedUpBeforeTheNext()
    {
        SalesLog log = Log([Box(0, 30), Box(10, 40)], [], [new(Day(20), "sandpaper", 60, null, null, 9)], Piece("P1", 2, 5), Piece("P2", 2, 15));
        CostBook book = CostBook.Of(log);
        // 40 of the first box are used, 24.00; 10 of it at 0.60 and 50 at 0.80 are left.
        Assert.Equal([12m, 12m], book.Pieces.Select(piece => piece.Of(CostKind.Supplies)));
        Assert.Equal(46m, book.SuppliesLeft[0].Value);
        Assert.Equal([30m, 30m], CostBook.Of(log with { Counts = [] }).Pieces.Select(piece => piece.Of(CostKind.Supplies)));
    }

    [Fact]
    public void WhatIsMissingThoughNobodyWorkedIsLost()
    {
        CostBook book = CostBook.Of(Log([Box(0, 30)], [], [new(Day(12), "sandpaper", 20, null, null, 9)]));
        Assert.Equal((18m, "sandpaper missing at the count"), (Assert.Single(book.SuppliesOnNoPiece).Amount, book.SuppliesOnNoPiece[0].What));
        Assert.Equal(12m, book.SuppliesLeft[0].Value);
    }

    /// <summary>10 counted, then 25 on a later day with nothing bought between: 15 are found, at 0.60.</summary>
    [Fact]
    public void MoreThanTheLastCountLeftIsFound()
    {
        CostBook book = CostBook.Of(Log(
            [Box(0, 30)], [], [new(Day(12), "sandpaper", 10, null, null), new(Day(20), "sandpaper", 25, null, null)], Piece("P1", 2, 5)));
        Assert.Equal((24m, -9m, 15m), (book["P1"].Of(CostKind.Supplies), Assert.Single(book.SuppliesOnNoPiece).Amount, book.SuppliesLeft[0].Value));
    }

    [Fact]
    public void ACountThatCannotBeComparedIsSaidAndChangesNothing()
    {
        SalesLog log = Log([Can(0, 32, 24)], [Use("P1", 10, 8)], [Count(20, 1) with { Unit = "kg" }], Piece("P1", 2, 10));
        CostBook book = CostBook.Of(log);
        Assert.Equal(18m, book.SuppliesLeft.Single().Value);
        Assert.Contains(book.Notes, note => note.StartsWith(
            "counts.csv, line 9: paint was counted in kg but bought in fl oz, and the two do not convert", StringComparison.Ordinal));
        CostBook boxes = CostBook.Of(Log([Box(0, 30) with { Quantity = null }], [], [new(Day(12), "sandpaper", 10, null, null, 9)], Piece("P1", 2, 5)));
        Assert.Contains(boxes.Notes, note => note.Contains("supplies.csv does not say how much of it was bought", StringComparison.Ordinal));
    }

    /// <summary>How much was in the box nobody knows, but it is empty: all of it fell on the piece worked on until then.</summary>
    [Fact]
    public void EmptyCanBeCountedWithoutAnyQuantity()
    {
        SalesLog log = Log(
            [Box(0, 30) with { Quantity = null }], [], [new(Day(12), "sandpaper", 0, null, null, 9)], Piece("P1", 2, 5), Piece("P2", 2, 25));
        Assert.Equal([30m, 0m], CostBook.Of(log).Pieces.Select(piece => piece.Of(CostKind.Supplies)));
        Assert.Equal([15m, 15m], CostBook.Of(log with { Counts = [] }).Pieces.Select(piece => piece.Of(CostKind.Supplies)));
    }

    /// <summary>A quart at 32.00: 8 fl oz on a piece, 12 dried up, which no piece carries.</summary>
    [Fact]
    public void WasteIsACostOfItsDayThatNoPieceCarries()
    {
        CostBook book = Book(CostingMethod.Fifo, [Can(0, 32, 32)], [Use("P1", 10, 8), Use(null, 14, 12)], []);
        CostLine line = Assert.Single(book.SuppliesOnNoPiece);
        Assert.Equal((Day(14), 12m, "paint wasted"), (line.Date, line.Amount, line.What));
        Assert.EndsWith("No piece carries it.", line.Origin.Rule, StringComparison.Ordinal);
        Assert.Equal(8m, book["P1"].Known(CostKind.Supplies));
        SupplyCan can = Assert.Single(book.CansOn(Day(14)));
        Assert.Equal((8m, 12m, 12m, 12m), (can.Used, can.Wasted, can.Left, can.ValueLeft));
    }

    /// <summary>Of 50 sheets at 30.00, 10 got wet, 6.00; the piece worked on bears the other 24.00.</summary>
    [Fact]
    public void WasteOfSandpaperIsOffBeforeItIsSpread()
    {
        CostBook book = CostBook.Of(Log(
            [Box(0, 30)], [new(null, Day(3), "sandpaper", 10, "sheet", null, null)], [], Piece("P1", 2, 5)));
        Assert.Equal((24m, 6m), (book["P1"].Of(CostKind.Supplies), Assert.Single(book.SuppliesOnNoPiece).Amount));
    }

    [Fact]
    public void WasteWithoutADayCountsOnThatOfThePurchase()
    {
        CostBook book = Book(CostingMethod.Fifo, [Can(3, 32, 32)], [Use("P1", 10, 8), Use(null, 14, 12) with { Date = null }], []);
        Assert.Equal(Day(3), Assert.Single(book.SuppliesOnNoPiece).Date);
    }

    /// <summary>Used on day 2, bought on day 9: the can is charged, but no earlier than it was there, and it is said.</summary>
    [Fact]
    public void PaintUsedBeforeItWasBoughtMakesNoNegativeStock()
    {
        CostBook book = Book(CostingMethod.Fifo, [Can(9, 32, 32)], [Use("P1", 2, 8)], []);
        Assert.Equal(8m, book["P1"].Known(CostKind.Supplies));
        Assert.Empty(book.CansOn(Day(5)));
        Assert.Equal(24m, Assert.Single(book.CansOn(Day(9))).ValueLeft);
        Assert.Contains(book.Notes, note => note.Contains(
            "was used before the day it was first bought, 2025-01-10; it is taken from that purchase. Write down the purchase that came before, or correct the day.",
            StringComparison.Ordinal));
    }

    private static DateOnly Day(int day) => January.AddDays(day);

    private static SupplyPurchase Can(int day, decimal ounces, decimal price) =>
        new("paint", "paint", Day(day), ounces, "fl oz", price, null, null);

    private static SupplyPurchase Box(int day, decimal price) =>
        new("sandpaper", "abrasive", Day(day), 50, "sheet", price, null, null);

    private static SupplyUse Use(string? piece, int day, decimal ounces) => new(piece, Day(day), "paint", ounces, "fl oz", null, null);

    private static StockCount Count(int day, decimal ounces) => new(Day(day), "paint", ounces, null, null, 9);

    private static Piece Piece(string id, decimal hours, int ready) =>
        new() { Id = id, Type = "dresser", BoughtOn = January, ReadyOn = Day(ready), Hours = hours };

    private static CostBook Book(CostingMethod method, SupplyPurchase[] purchases, SupplyUse[] uses, StockCount[] counts)
    {
        SalesLog log = Log(purchases, uses, counts, Piece("P1", 5, 15));
        return CostBook.Of(log with { Workshop = log.Workshop with { Costing = method } });
    }

    private static SalesLog Log(SupplyPurchase[] purchases, SupplyUse[] uses, StockCount[] counts, params ImmutableArray<Piece> pieces) =>
        new() { Date = Day(60), Pieces = pieces, Supplies = [.. purchases], Uses = [.. uses], Counts = [.. counts] };
}
