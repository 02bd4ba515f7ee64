using System.Collections.Immutable;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Cans add up whatever is in the log: what was bought of each is used, wasted, counted away or left, on any day.</summary>
public sealed class CanLawsTests
{
    private const int Logs = 2_000;

    private static readonly Gen<SalesLog> Any = Gen.OneOf(MessyLogs.Any, CostingLogs.Any);

    [Fact]
    public void WhatWasBoughtIsUsedWastedCountedAwayOrLeftInEveryCanOnAnyDay() => Gen.Select(Any, Gen.Int[-200, 1_500]).Sample(
        (log, day) =>
        {
            foreach (SupplyCan can in CostBook.Of(log).CansOn(MessyLogs.FirstDay.AddDays(day)))
            {
                Assert.False(can.BoughtOn > MessyLogs.FirstDay.AddDays(day));
                Assert.Equal(can.Cost ?? 0, can.CostUsed + can.CostWasted + can.CostCountedAway + can.ValueLeft);
                Assert.All(
                    new[] { can.CostUsed, can.CostWasted, can.CostCountedAway, can.ValueLeft },
                    amount => Assert.Equal(log.Workshop.Currency.Round(amount), amount));
                Assert.True(can is { CostUsed: >= 0, CostWasted: >= 0, ValueLeft: >= 0 }, $"{can}");
                if (can.Left is null)
                    continue;
                Assert.Equal(can.Bought, can.Used + can.Wasted + can.CountedAway + can.Left);
                Assert.True(can is { Used: >= 0, Wasted: >= 0, Left: >= 0 }, $"{can}");
            }
        },
        iter: Logs);

    /// <summary>The accounts keep running sums of their own; the list adds up what left each can, day by day.</summary>
    [Fact]
    public void TheCansTogetherAreWhatTheLedgerSaysIsLeft() => Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            ImmutableArray<SupplyCan> cans = book.CansOn(DateOnly.MaxValue);
            Assert.Equal(log.Supplies.Length, cans.Length);
            Assert.Equal(book.SuppliesLeft.Sum(stock => stock.Value), cans.Sum(can => can.ValueLeft));
            Assert.Equal(
                book.Pieces.Sum(piece => piece.SuppliesByLedger), cans.Sum(can => can.CostUsed));
            Assert.Equal(
                book.SuppliesOnNoPiece.Sum(line => line.Amount) + book.StatedByCounts.Sum(piece => piece.Amount),
                cans.Sum(can => can.CostWasted + can.CostCountedAway));
            foreach (var item in book.SuppliesLeft.GroupBy(stock => stock.Item, StringComparer.OrdinalIgnoreCase))
            {
                SupplyCan[] own = [.. cans.Where(can => can.Item.Equals(item.Key, StringComparison.OrdinalIgnoreCase))];
                if (item.Count() == 1 && item.First().Quantity is { } left && own.All(can => can.Unit == own[0].Unit && can.Left is not null))
                    Assert.InRange(left - own.Sum(can => can.Left!.Value), -0.0000001m, 0.0000001m);
            }
        },
        iter: Logs);

    [Fact]
    public void ACountToComeIsNotKnownYet() => Gen.Select(Any, Gen.Int[0, 1_100]).Sample(
        (log, day) =>
        {
            DateOnly date = MessyLogs.FirstDay.AddDays(day);
            SalesLog without = log with { Counts = [.. log.Counts.Where(count => count.Date <= date)] };
            Assert.Equal<SupplyCan>(
                CostBook.Of(without.AsOf(date)).CansOn(date), CostBook.Of(log.AsOf(date)).CansOn(date));
        },
        iter: 200);

    /// <summary>A count that finds what the books say changes nothing, whatever the method.</summary>
    [Fact]
    public void ACountThatAgreesWithTheBooksChangesNothing() => Any.Sample(
        log =>
        {
            SalesLog plain = log with { Counts = [] };
            CostBook book = CostBook.Of(plain);
            // Tracked items alone: of what is spread a count tells what nobody knew.
            var tracked = log.Uses.Where(use => use.PieceId is not null && use.Date <= log.Date).Select(use => use.Item)
                .ToHashSet(StringComparer.OrdinalIgnoreCase);
            if (log.Uses.Any(use => use.Date is null) || log.Supplies.Any(purchase => purchase.Quantity is null))
                return;
            SalesLog counted = plain with
            {
                Counts =
                [
                    .. book.SuppliesLeft.Where(stock => stock.Quantity > 0 && tracked.Contains(stock.Item))
                        .Select(stock => new StockCount(log.Date, stock.Item, stock.Quantity!.Value, stock.Unit ?? "", null)),
                ],
            };
            if (counted.Counts.Any(count => count.Unit is ""))
                return;
            CostBook after = CostBook.Of(counted);
            Assert.Equal(book.SuppliesOnNoPiece, after.SuppliesOnNoPiece, (a, b) => a.Amount == b.Amount);
            Assert.Equal<SupplyCan>(book.CansOn(log.Date), after.CansOn(log.Date));
        },
        iter: 500);
}
