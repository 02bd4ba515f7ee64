using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Returns of a messy log: pieces that came back, some more than once, and money given back on sales that stand.</summary>
internal static class MessyReturns
{
    private static readonly Gen<int?> Units = Gen.Int[-4_000, 30_000].Select(n => n < -2_000 ? (int?)null : Math.Max(0, n));

    private static readonly Gen<int> Price = Gen.Int[1, 30_000];

    // Days from the purchase to the sale and from there to the return; what of it the log can hold is left to the assembly.
    public static readonly Gen<SaleReturn> Any = Gen.Select(
        Gen.Int[0, 7], Gen.Int[0, 200], Gen.Int[0, 60], Gen.Int[0, 9], Gen.Select(Units, Price, Units, Units, Units),
        (piece, toSold, toBack, kind, money) => new SaleReturn(
            FormattableString.Invariant($"{(piece % 2 == 0 ? "P" : "p")}{piece}"), MessyLogs.FirstDay.AddDays(toSold + toBack), money.Item1 ?? 0)
        {
            SalesTax = kind is 0 or 1 ? money.Item3 : null,
            SoldOn = kind == 9 ? null : MessyLogs.FirstDay.AddDays(toSold),
            SoldPrice = kind == 9 ? null : money.Item2,
            Fees = kind == 9 ? null : money.Item4,
            DeliveryCharged = kind is 2 or 3 ? money.Item3 : null,
            DeliveryCost = kind is 3 or 4 ? money.Item5 : null,
            Cost = kind is 5 or 9 ? money.Item5 : null,
        });

    // What reading lets through: a piece comes back after it was sold, is not sold twice at once, and has not left before.
    public static IEnumerable<SaleReturn> Possible(Piece[] pieces, SaleReturn[] backs)
    {
        Dictionary<int, DateOnly> lastBack = [];
        foreach (SaleReturn back in backs.OrderBy(back => back.ReturnedOn))
        {
            int place = back.PieceId[1] - '0';
            if (place >= pieces.Length)
                continue;
            Piece piece = pieces[place];
            int later = (piece.BoughtOn ?? MessyLogs.FirstDay.AddDays(200)).DayNumber - MessyLogs.FirstDay.DayNumber;
            SaleReturn moved = back with
            {
                SoldOn = back.SoldOn?.AddDays(later),
                ReturnedOn = back.CameBack ? back.ReturnedOn.AddDays(later) : back.ReturnedOn.AddDays(later) > piece.SoldOn ? back.ReturnedOn.AddDays(later)
                    : piece.SoldOn ?? back.ReturnedOn.AddDays(later),
            };
            if (lastBack.TryGetValue(place, out DateOnly before) && (moved.SoldOn ?? moved.ReturnedOn) < before)
                continue;
            if (moved.CameBack ? piece.SoldOn == moved.SoldOn || moved.SoldOn < piece.ListedOn || (piece.SoldOn ?? piece.LeftOn) < moved.ReturnedOn : !piece.IsSold)
                continue;
            if (moved.CameBack)
                lastBack[place] = moved.ReturnedOn;
            yield return moved;
        }
    }

    public static SaleReturn InUnits(SaleReturn back, decimal unit) => back with
    {
        Refund = back.Refund * unit,
        SalesTax = back.SalesTax * unit,
        SoldPrice = back.SoldPrice * unit,
        Fees = back.Fees * unit,
        DeliveryCharged = back.DeliveryCharged * unit,
        DeliveryCost = back.DeliveryCost * unit,
        Cost = back.Cost * unit,
    };
}
