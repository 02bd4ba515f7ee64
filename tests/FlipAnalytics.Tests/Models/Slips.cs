using System.Collections.Immutable;

namespace FlipAnalytics.Tests;

/// <summary>Slips of the pen in one piece of a good log, and how far they move what may be paid for other pieces.</summary>
internal static class Slips
{
    private const int OtherPieces = 20;

    /// <summary>Every slip by name; null where the piece has nothing to slip in.</summary>
    public static ImmutableArray<(string Name, Func<SalesLog, Piece, SalesLog?> Make)> All { get; } =
    [
        Of("sale x100", p => p with { SoldPrice = p.SoldPrice * 100 }),
        Of("sale /100", p => p with { SoldPrice = p.SoldPrice / 100 }),
        Of("sale x10", p => p with { SoldPrice = p.SoldPrice * 10 }),
        Of("sale /10", p => p with { SoldPrice = p.SoldPrice / 10 }),
        ("hours x60", (log, p) => WithHours(log, p, 60)),
        ("hours x100", (log, p) => WithHours(log, p, 100)),
        ("hours /10", (log, p) => WithHours(log, p, 0.1m)),
        Of("width x2.54", p => p with { Width = p.Width * 2.54m }),
        Of("width x10", p => p with { Width = p.Width * 10 }),
        Of("width /12", p => p with { Width = p.Width / 12 }),
        Of("all dimensions x2.54", p => p with { Width = p.Width * 2.54m, Depth = p.Depth * 2.54m, Height = p.Height * 2.54m }),
        Of("fees x100", p => p with { Fees = p.Fees * 100 }),
        Of("fees x10", p => p with { Fees = p.Fees * 10 }),
        ("supplies x100", WithSupplies),
        Of("delivery cost x100", p => p with { DeliveryCost = (p.DeliveryCost ?? 30) * 100 }),
        Of("delivery charge x100", p => p with { DeliveryCharged = (p.DeliveryCharged ?? 30) * 100 }),
        Of("count x100", p => p with { Count = (p.Count ?? 1) * 100 }),
        Of("asking x10", p => p with { AskingPrice = p.AskingPrice * 10 }),
        Of("bought x100", p => p with { BoughtPrice = p.BoughtPrice * 100 }),
        Of("sold day and month swapped", p => p with { SoldOn = Swapped(p.SoldOn) }),
        Of("sold two years early", p => p with { SoldOn = p.SoldOn?.AddYears(-2) }),
        Of("listed a year early", p => p with { ListedOn = p.ListedOn?.AddYears(-1) }),
    ];

    /// <summary>How far each ceiling of other pieces moves, as a share of it, least first; empty where the slip changes nothing.</summary>
    /// <param name="seed">Of the log.</param>
    /// <param name="flips">Pieces in it.</param>
    /// <param name="make">The slip.</param>
    public static ImmutableArray<double> Moves(int flips, ulong seed, Func<SalesLog, Piece, SalesLog?> make)
    {
        DemoLogResult demo = DemoLog.Generate(flips, seed);
        ImmutableArray<Candidate> others = [.. demo.Truth.Offers(100, 1000 + seed).Select(offer => Candidate.Of(offer.Seen))];
        // A share of next to nothing says nothing.
        var before = Decide(demo.Log, others).Where(d => d.Ceiling >= d.SalePrice!.Mean / 5).Take(OtherPieces)
            .ToImmutableArray();
        var slipped = demo.Log.Pieces.Where(p => p.SoldPrice > 0).Skip((int)(seed * 7 % 30))
            .Select(p => make(demo.Log, p)).FirstOrDefault(log => log is not null);
        if (slipped is null)
            return [];
        var after = Decide(slipped, [.. before.Select(d => d.Candidate)]);
        return [.. before.Zip(after, (b, a) => (double)Math.Abs(a.Ceiling!.Value / b.Ceiling!.Value - 1)).Order()];
    }

    private static ImmutableArray<PurchaseDecision> Decide(SalesLog log, IReadOnlyList<Candidate> candidates) =>
        new MostToPay(FittedModels.Of(log), new()).Decide(candidates);

    private static (string Name, Func<SalesLog, Piece, SalesLog?> Make) Of(string name, Func<Piece, Piece> slip)
    {
        return (name, Make);

        SalesLog? Make(SalesLog log, Piece piece)
        {
            Piece slipped = slip(piece);
            return slipped == piece ? null : log with { Pieces = log.Pieces.Replace(piece, slipped) };
        }
    }

    private static SalesLog? WithHours(SalesLog log, Piece piece, decimal factor)
    {
        if (piece.Hours is not null)
            return log with { Pieces = log.Pieces.Replace(piece, piece with { Hours = piece.Hours * factor }) };
        return !log.Hours.Any(h => h.PieceId == piece.Id) ? null : log with
        {
            Hours = [.. log.Hours.Select(h => h.PieceId == piece.Id ? h with { Hours = h.Hours * factor } : h)],
        };
    }

    private static SalesLog? WithSupplies(SalesLog log, Piece piece) => piece.SuppliesCost is null or 0 ? null : log with
    {
        Pieces = log.Pieces.Replace(piece, piece with { SuppliesCost = piece.SuppliesCost * 100 }),
    };

    private static DateOnly? Swapped(DateOnly? day) =>
        day is { Day: <= 12 } d && d.Day != d.Month ? new DateOnly(d.Year, d.Day, d.Month) : day;
}
