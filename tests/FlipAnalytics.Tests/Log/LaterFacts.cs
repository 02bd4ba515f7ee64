using System.Collections.Immutable;

namespace FlipAnalytics.Tests;

/// <summary>
/// A log as it might have gone on otherwise after a day: what is dated later is kept, changed or taken away, and more is added
/// where the log goes on to have nothing. What has no date, or an earlier one, is as it was.
/// </summary>
internal sealed class LaterFacts(SalesLog log, DateOnly day, int choice)
{
    private int asked;

    private enum Fate
    {
        Kept,
        Changed,
        Gone,
    }

    /// <summary>
    /// The same log with all that is dated later, or of a piece bought later, at the end of its table, so that no line of an
    /// earlier fact moves.
    /// </summary>
    public static SalesLog Last(SalesLog log, DateOnly day)
    {
        HashSet<string> notBought = log.Pieces.Where(piece => piece.BoughtOn > day).Select(piece => piece.Id)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        return log with
        {
            Pieces = Order(log.Pieces, piece => piece.BoughtOn > day),
            AskingPrices = Order(log.AskingPrices, change => IsLater(change.Date, change.PieceId)),
            Hours = Order(log.Hours, entry => IsLater(entry.Date, entry.PieceId)),
            Supplies = Order(log.Supplies, purchase => purchase.BoughtOn > day),
            Uses = Order(log.Uses, use => IsLater(use.Date, use.PieceId)),
            Counts = Order(log.Counts, count => count.Date > day),
            Trips = Order(log.Trips, trip => trip.Date > day),
            Tools = Order(log.Tools, tool => tool.BoughtOn > day),
            Overheads = Order(log.Overheads, overhead => overhead.Month > day),
            Moves = Order(log.Moves, move => IsLater(move.Date, move.From, move.To)),
            Money = Order(log.Money, entry => IsLater(entry.Date, entry.PieceId)),
            Returns = Order(log.Returns, back => IsLater(back.ReturnedOn, back.PieceId)),
        };

        bool IsLater(DateOnly? date, params string?[] pieces) =>
            date > day || pieces.Any(piece => piece is not null && notBought.Contains(piece));
    }

    /// <summary>The log that went on otherwise.</summary>
    public SalesLog Otherwise()
    {
        ILookup<string, SaleReturn> returns = log.Returns.ToLookup(back => back.PieceId, StringComparer.OrdinalIgnoreCase);
        List<Piece> pieces = [];
        List<SaleReturn> backs = [.. log.Returns.Where(back => back.ReturnedOn <= day)];
        foreach (Piece piece in log.Pieces)
        {
            SaleReturn[] later = [.. returns[piece.Id].Where(back => back.ReturnedOn > day)];
            if (piece.BoughtOn > day)
            {
                if (Next() == Fate.Gone)
                    continue;
                pieces.Add(piece with { BoughtPrice = 12, Type = "bench" });
                backs.AddRange(later);
            }
            else if (later.Length > 0)
            {
                pieces.Add(CameBack(piece, later, backs));
            }
            else
            {
                pieces.Add(returns[piece.Id].Any() ? piece : Ended(piece, backs));
            }
        }

        HashSet<string> ids = pieces.Select(piece => piece.Id).ToHashSet(StringComparer.OrdinalIgnoreCase);
        string? some = pieces.FirstOrDefault(piece => !(piece.BoughtOn > day))?.Id;
        bool Has(string? id) => id is null || ids.Contains(id);
        DateOnly then = day.AddDays(2);
        pieces.Add(new() { Id = "Later", Type = "dresser", BoughtOn = then, BoughtPrice = 8, Hours = 40, SuppliesCost = 70, Lot = "L0", Trip = "T0" });
        return log with
        {
            Pieces = [.. pieces],
            Returns = [.. backs.Where(back => Has(back.PieceId))],
            AskingPrices = [.. Fated(log.AskingPrices.Where(a => Has(a.PieceId)), a => a.Date, a => a with { Price = a.Price + 1 }), new("Later", then, 99)],
            Hours = [.. Fated(log.Hours.Where(h => Has(h.PieceId)), h => h.Date, h => h with { Hours = h.Hours + 1 }),
                new(some, then, WorkTask.Painting, 30), new(null, then, WorkTask.Sourcing, 9)],
            Supplies = [.. Fated(log.Supplies, s => s.BoughtOn, s => s with { Price = 77 }), new("paint", null, then, 3, "quart", 60, null, null)],
            Uses = [.. Fated(log.Uses.Where(u => Has(u.PieceId)), u => u.Date, u => u with { Quantity = 2 }), new(some, then, "paint", 1, "quart", null, null)],
            Counts = [.. Fated(log.Counts, c => c.Date, c => c with { Quantity = 0.5m }), new(then, "paint", 0, "quart", null)],
            Trips = [.. Fated(log.Trips, t => t.Date, t => t with { Distance = 900, OtherCost = 5 }, isKept: t => pieces.Any(
                piece => string.Equals(piece.Trip, t.Name, StringComparison.OrdinalIgnoreCase))), new("Later", then, 50, 3, 4, null)],
            Tools = [.. Fated(log.Tools, t => t.BoughtOn, t => t with { Price = 500 }), new("later", then, 80, null, 4, null)],
            Overheads = [.. Fated(log.Overheads, o => o.Month, o => o with { Amount = 900 }), new(new DateOnly(then.Year, then.Month, 1).AddMonths(1), "rent", 700)],
            Moves = [.. Fated(log.Moves.Where(m => Has(m.From) && Has(m.To)), m => m.Date, m => m with { Cost = 1 }),
                .. some is null ? Array.Empty<CostMove>() : [new(then, some, "Later", 2, null)]],
            Money = [.. Fated(log.Money.Where(m => Has(m.PieceId)), m => m.Date, m => m with { Amount = 3 }), new(then, MoneyKind.Taken, null, 50, null)],
        };
    }

    private static ImmutableArray<T> Order<T>(ImmutableArray<T> facts, Func<T, bool> isLater) => [.. facts.OrderBy(isLater)];

    // Neither chance nor the same for all: a digit of a number in base 3, over and over.
    private Fate Next() => (Fate)(choice / (int)Math.Pow(3, asked++ % 8) % 3);

    private IEnumerable<T> Fated<T>(IEnumerable<T> facts, Func<T, DateOnly?> date, Func<T, T> change, Func<T, bool>? isKept = null) =>
        from fact in facts
        let fate = date(fact) > day ? Next() : Fate.Kept
        where fate != Fate.Gone || isKept?.Invoke(fact) == true
        select fate == Fate.Changed ? change(fact) : fact;

    // The sale that stood on the day was undone later, or was not.
    private Piece CameBack(Piece piece, SaleReturn[] later, List<SaleReturn> backs)
    {
        SaleReturn? stood = later.FirstOrDefault(back => back.CameBack && back.SoldOn <= day);
        Fate fate = Next();
        if (fate != Fate.Gone)
        {
            backs.AddRange(fate == Fate.Kept ? later : later.Select(back => back with { Refund = back.Refund + 1, Cost = 2 }));
            return piece;
        }

        return stood is null ? NotAfter(piece) : NotAfter(piece) with
        {
            SoldOn = stood.SoldOn,
            SoldPrice = stood.SoldPrice,
            SalesTax = stood.SalesTax,
            Fees = stood.Fees,
            DeliveryCharged = stood.DeliveryCharged,
            DeliveryCost = stood.DeliveryCost,
            LeftOn = null,
            LeftAs = null,
        };
    }

    private Piece NotAfter(Piece piece)
    {
        Piece then = piece.SoldOn > day ? Unsold(piece) : piece;
        return then.LeftOn > day ? then with { LeftOn = null, LeftAs = null } : then;
    }

    private Piece Ended(Piece piece, List<SaleReturn> backs)
    {
        Piece then = piece;
        then = (piece.ReadyOn, Next()) switch
        {
            ({ } ready, Fate.Changed) when ready > day => then with { ReadyOn = ready.AddDays(3) },
            ({ } ready, Fate.Gone) when ready > day => then with { ReadyOn = null },
            (null, Fate.Changed) => then with { ReadyOn = day.AddDays(1) },
            _ => then,
        };
        then = (piece.ListedOn, Next()) switch
        {
            ({ } listed, Fate.Changed) when listed > day => then with { AskingPrice = 61 },
            ({ } listed, Fate.Gone) when listed > day => then with { ListedOn = null, AskingPrice = null },
            (null, Fate.Changed) when piece.AskingPrice is null && !piece.IsSold && !piece.IsGone => then with { ListedOn = day.AddDays(1), AskingPrice = 50 },
            _ => then,
        };
        Fate end = Next();
        if (piece.SoldOn > day)
            return end switch { Fate.Kept => then, Fate.Changed => then with { SoldPrice = 222, Fees = 7 }, _ => Unsold(then) };
        if (piece.LeftOn > day)
            return end switch { Fate.Kept => then, Fate.Changed => then with { LeftAs = LeftAs.Kept }, _ => then with { LeftOn = null, LeftAs = null } };
        if (piece.State is PieceState.OnSale or PieceState.InTheWorkshop && end != Fate.Kept)
            return end == Fate.Changed ? then with { SoldOn = day.AddDays(20), SoldPrice = 180 } : then with { LeftOn = day.AddDays(9), LeftAs = LeftAs.Broken };
        if (piece.SoldOn is null || piece.SoldPrice is null || end != Fate.Changed)
            return then;
        backs.Add(new(piece.Id, day.AddDays(8), 20)
        {
            SoldOn = piece.SoldOn,
            SoldPrice = piece.SoldPrice,
            SalesTax = piece.SalesTax,
            Fees = piece.Fees,
            DeliveryCharged = piece.DeliveryCharged,
            DeliveryCost = piece.DeliveryCost,
        });
        return Unsold(then);
    }

    private static Piece Unsold(Piece piece) => piece with
    {
        SoldOn = null,
        SoldPrice = null,
        SalesTax = null,
        Fees = null,
        DeliveryCharged = null,
        DeliveryCost = null,
    };
}
