using System.Collections.Immutable;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Books add up whatever is in the log: both methods, currencies of 0, 2 and 3 digits, any date.</summary>
public sealed class CostBookLawsTests
{
    private const int Logs = 2_000;

    // Readable logs, and such with contradictions that reading would have set aside.
    private static readonly Gen<SalesLog> Any = Gen.OneOf(MessyLogs.Any, CostingLogs.Any);

    [Fact]
    public void EveryUnitSpentIsSomewhereOnce() => Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            decimal bought = log.Pieces.Sum(p => p.BoughtPrice ?? 0) + log.Supplies.Sum(p => p.Price ?? 0)
                + log.Tools.Sum(tool => tool.Price ?? 0) + log.Overheads.Sum(o => o.Amount)
                + log.Trips.Sum(trip => trip.OtherCost ?? 0) - book.Cash.Where(c => c.IsReckoned).Sum(c => c.Amount)
                + log.Pieces.Where(p => p.IsSold).Sum(p => p.DeliveryCost ?? 0)
                + log.Returns.Sum(back => (back.Cost ?? 0) + (back.DeliveryCost ?? 0))
                + book.Pieces.Sum(piece => piece.Of(CostKind.Fees));
            decimal somewhere = book.Pieces.Sum(piece => piece.Total) - book.Pieces.Sum(piece => piece.SuppliesDifference)
                + book.SuppliesLeft.Sum(stock => stock.Value) + book.ToolsLeft.Sum(tool => tool.Value)
                + book.SuppliesOnNoPiece.Sum(line => line.Amount) + book.StatedByCounts.Sum(piece => piece.Amount)
                + book.OverheadsUnshared.Sum(line => line.Amount) + book.ToolsIdle.Sum(line => line.Amount);
            Assert.Equal(bought, book.TotalSpent);
            Assert.Equal(bought, somewhere);
            Assert.All(book.Totals, total => Assert.Equal(0, total.Difference));
        },
        iter: Logs);

    [Fact]
    public void MoneyOutIsWhatWasSpentAndMoneyInIsWhatWasSoldFor() => Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            Assert.Equal(book.TotalSpent, -book.Cash.Where(c => c.Kind is not null).Sum(c => c.Amount));
            Assert.Equal(
                book.Pieces.Where(p => p.Piece.IsSold).Sum(p => (p.SalePrice ?? 0) + (p.Piece.DeliveryCharged ?? 0))
                    + book.Pieces.Sum(p => p.KeptOfReturns) + book.Held.Sum(line => line.Amount),
                book.Cash.Where(c => c.Kind is null).Sum(c => c.Amount));
        },
        iter: Logs);

    [Fact]
    public void EveryLineIsAWholeNumberOfUnitsAndHasItsOrigin() => Any.Sample(
        log => Assert.All(CostBook.Of(log).Pieces.SelectMany(piece => piece.Lines), line =>
        {
            Assert.Equal(log.Workshop.Currency.Round(line.Amount), line.Amount);
            Assert.EndsWith(".", line.Origin.Rule, StringComparison.Ordinal);
            Assert.True(line.Date is null || line.Date <= log.Date);
        }),
        iter: Logs);

    [Fact]
    public void NothingGoesBelowZeroOrBelowSalvage() => Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            Assert.All(book.SuppliesLeft, stock => Assert.True(stock.Value >= 0 && !(stock.Quantity < 0)));
            Assert.All(log.Tools.Where(tool => tool.Price is not null).Zip(book.ToolsLeft), pair =>
                Assert.True(pair.Second.Value >= Math.Min(pair.First.Price!.Value, pair.First.Salvage ?? 0)));
        },
        iter: Logs);

    /// <summary>Quarts and pints alone, so that what was bought and used can be added up here.</summary>
    [Fact]
    public void UsingMoreThanWasBoughtNeverPassesInSilence() => Gen.Select(
        Gen.Int[1, 30].Array[1, 5], Gen.Int[1, 40].Array[1, 5], Gen.Enum<CostingMethod>()).Sample(
        (bought, used, method) =>
        {
            DateOnly day = new(2025, 1, 1);
            CostBook book = CostBook.Of(new()
            {
                Date = new(2026, 1, 1),
                Workshop = new() { Costing = method },
                Pieces = [new() { Id = "P1", Type = "dresser", BoughtOn = day }],
                Supplies = [.. bought.Select(n => new SupplyPurchase("paint", null, day, n, "quart", n, null, null))],
                Uses = [.. used.Select((n, i) => new SupplyUse("P1", day.AddDays(i), "paint", n, "pint", null, null))],
            });
            decimal short_ = used.Sum() / 2m - bought.Sum();
            Assert.Equal(short_ > 0, book.Notes.Length > 0);
            Assert.Equal(short_ > 0, !book["P1"].IsKnown(CostKind.Supplies));
            Assert.Equal(Math.Max(0, -short_), decimal.Round(book.SuppliesLeft[0].Quantity!.Value, 6));
        },
        iter: Logs);

    [Fact]
    public void StockMovesAddUpOverAnyPeriodAndJoinWithoutAGap() => Gen.Select(
        Any, Gen.Int[0, 1_000].Array[3, 3]).Sample(
        (log, days) =>
        {
            CostBook book = CostBook.Of(log);
            DateOnly[] at = [.. days.Order().Select(new DateOnly(2023, 12, 1).AddDays)];
            StockMovement first = book.Stock(at[0], at[1]);
            StockMovement next = book.Stock(at[1].AddDays(1), at[2].AddDays(1));
            Assert.Equal(0, first.Difference);
            Assert.Equal(0, next.Difference);
            Assert.Equal(first.Closing, next.Opening);
            StockMovement both = book.Stock(first.From, next.To);
            Assert.Equal(
                (first.Opening, first.Added + next.Added, first.CameBack + next.CameBack, next.Closing),
                (both.Opening, both.Added, both.CameBack, both.Closing));
            Assert.Equal(
                (first.Sold + next.Sold, first.WrittenOff + next.WrittenOff, first.Kept + next.Kept),
                (both.Sold, both.WrittenOff, both.Kept));
        },
        iter: Logs);

    /// <summary>Over all time everything that pieces cost came in, and what did not leave is still here.</summary>
    [Fact]
    public void OverAllTimeStockIsWhatThePiecesCost() => Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            ImmutableArray<CostKind> all = [.. Enum.GetValues<CostKind>()];
            StockMovement ever = book.Stock(DateOnly.MinValue, DateOnly.MaxValue, all);
            Assert.Equal(0, ever.Opening);
            Assert.Equal(book.Pieces.Sum(piece => piece.Total), ever.Added);
            Assert.Equal(book.Pieces.Where(p => p.Piece.IsSold).Sum(piece => piece.Total), ever.Sold - ever.CameBack);
            Assert.Equal(book.Pieces.Where(p => p.Piece is { IsSold: false, IsGone: false }).Sum(p => p.Total), ever.Closing);
        },
        iter: Logs);

    [Fact]
    public void MoneyInLessMoneyOutOfAPieceIsItsNetProceedsLessItsPrice() => Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            // What moved from piece to piece, drives to the buyer and money of others belong to pieces otherwise.
            ILookup<string, decimal> cash = book.Cash.Where(c => c.PieceId is not null)
                .ToLookup(c => c.PieceId!, c => c.Amount, StringComparer.OrdinalIgnoreCase);
            ILookup<string, decimal> held = book.Held.Where(line => line.PieceId is not null)
                .ToLookup(line => line.PieceId!, line => line.Amount, StringComparer.OrdinalIgnoreCase);
            Assert.All(book.Pieces, piece => Assert.Equal(
                (piece.NetProceedsAtMost ?? piece.KeptOfReturns - piece.Of(CostKind.Fees) - piece.Of(CostKind.Delivery)) - piece.Of(CostKind.Purchase)
                    + piece.Lines.Where(line => line.Origin.File == "moves.csv" || (line.Origin.File, line.Kind) == ("trips.csv", CostKind.Delivery)).Sum(line => line.Amount)
                    + held[piece.Piece.Id].Sum(),
                cash[piece.Piece.Id].Sum()));
        },
        iter: Logs);
}
