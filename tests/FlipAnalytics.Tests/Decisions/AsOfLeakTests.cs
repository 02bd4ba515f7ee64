using System.Collections.Immutable;
using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Nothing that happened after a date changes what the tool would have said on it.</summary>
public class AsOfLeakTests
{
    private static readonly Gen<(ulong Seed, int DaysBack, int Change)> Cases =
        Gen.Select(Gen.ULong[1, 1000], Gen.Int[10, 250], Gen.Int[2, 9]);

    [Fact]
    public void No_later_fact_changes_any_answer_for_any_candidate() => Cases.Sample(
        c =>
        {
            var (asKnown, rewritten) = Logs(c);
            return Workbench.Text(Workbench.Decide(asKnown, Workbench.Various))
                == Workbench.Text(Workbench.Decide(rewritten, Workbench.Various));
        },
        iter: 10, threads: 1);

    [Fact]
    public void No_later_fact_changes_any_fit() => Cases.Sample(
        c =>
        {
            var (asKnown, rewritten) = Logs(c);
            return Workbench.Fits.All(
                fit => Workbench.FitOrSentence(asKnown, fit) == Workbench.FitOrSentence(rewritten, fit));
        },
        iter: 2, threads: 1);

    [Fact]
    public void An_earlier_sale_does_change_the_answer()
    {
        SalesLog log = Workbench.Demo(40, 3);
        int sold = log.Pieces.IndexOf(log.Pieces.First(p => p.SoldPrice > 0));
        SalesLog dearer = log with
        {
            Pieces = log.Pieces.SetItem(sold, log.Pieces[sold] with { SoldPrice = 3 * log.Pieces[sold].SoldPrice }),
        };
        Assert.NotEqual(
            Workbench.Decide(log, Workbench.Dresser).Ceiling, Workbench.Decide(dearer, Workbench.Dresser).Ceiling);
    }

    private static (SalesLog AsKnown, SalesLog Rewritten) Logs((ulong Seed, int DaysBack, int Change) c)
    {
        SalesLog log = Workbench.Demo(60, c.Seed);
        DateOnly day = log.Date.AddDays(-c.DaysBack);
        SalesLog rewritten = Rewritten(log, day, c.Change);
        Assert.NotEqual(Workbench.Text(log.Pieces), Workbench.Text(rewritten.Pieces));
        return (log.AsOf(day), rewritten.AsOf(day));
    }

    private static SalesLog Rewritten(SalesLog log, DateOnly day, int times) => log with
    {
        Pieces = [.. log.Pieces.Select(p => Rewritten(p, day, times)), Later(day, times)],
        AskingPrices = Change(log.AskingPrices, a => a.Date > day, a => a with { Price = times * a.Price }),
        Hours = Change(log.Hours, h => h.Date > day, h => h with { Hours = times * h.Hours }),
        Supplies = Change(log.Supplies, s => s.BoughtOn > day, s => s with { Price = times * s.Price }),
        Uses = Change(log.Uses, u => u.Date > day, u => u with { Quantity = times * u.Quantity }),
        Counts = Change(log.Counts, c => c.Date > day, c => c with { Quantity = times * c.Quantity }),
        Trips = Change(log.Trips, t => t.Date > day, t => t with { Distance = times * t.Distance }),
        Tools = Change(log.Tools, t => t.BoughtOn > day, t => t with { Price = times * t.Price }),
        Overheads = Change(log.Overheads, o => o.Month > day, o => o with { Amount = times * o.Amount }),
    };

    private static Piece Rewritten(Piece piece, DateOnly day, int times)
    {
        Piece then = piece;
        bool isWorkUnknown = new[] { piece.ReadyOn, piece.ListedOn, piece.SoldOn, piece.LeftOn }
            .Where(end => end is not null).Min() > day;
        if (isWorkUnknown)
            then = then with { Hours = 7 * times, SuppliesCost = 30 * times, Colour = "mustard", Finish = "gloss" };
        if (piece.ListedOn > day)
            then = then with { AskingPrice = 90 * times };
        if (piece.SoldOn > day)
        {
            then = then with
            {
                SoldOn = piece.SoldOn.Value.AddDays(times),
                SoldPrice = times * piece.SoldPrice,
                Channel = "auction",
                Fees = 11 * times,
                DeliveryCharged = 3 * times,
                DeliveryCost = 40 * times,
            };
        }

        // It still left, only later: hours of a piece that never ended in any way would count as known, on any day.
        if (piece.LeftOn > day)
            then = then with { LeftOn = piece.LeftOn.Value.AddDays(times), LeftAs = LeftAs.Parts };
        return piece.BoughtOn > day
            ? then with { Type = "dresser", StickerPrice = 5, BoughtPrice = 4 * times, Width = 9 * times, Count = times }
            : then;
    }

    private static Piece Later(DateOnly day, int times) => new()
    {
        Id = "L1",
        Type = "dresser",
        BoughtOn = day.AddDays(1),
        BoughtPrice = 1,
        ListedOn = day.AddDays(3),
        AskingPrice = 400 * times,
        SoldOn = day.AddDays(4),
        SoldPrice = 390 * times,
        Hours = times,
    };

    private static ImmutableArray<T> Change<T>(ImmutableArray<T> facts, Func<T, bool> isLater, Func<T, T> change) =>
        [.. facts.Select(fact => isLater(fact) ? change(fact) : fact)];
}
