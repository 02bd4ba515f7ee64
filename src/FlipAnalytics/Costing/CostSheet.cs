using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace FlipAnalytics;

/// <summary>The books while they are written: lines and gaps by piece, overheads, money in and out, notes.</summary>
internal sealed class CostSheet
{
    private readonly Dictionary<string, int> places = new(StringComparer.OrdinalIgnoreCase);
    private readonly decimal[] summed;

    public CostSheet(SalesLog log, WorkCalendar calendar)
    {
        Log = log;
        Calendar = calendar;
        Lines = [.. log.Pieces.Select(_ => new List<CostLine>())];
        summed = new decimal[log.Pieces.Length];
        Gaps = [.. log.Pieces.Select(_ => new List<CostGap>())];
        ILookup<string, SaleReturn> returns = log.Returns.OrderBy(back => back.ReturnedOn)
            .ToLookup(back => back.PieceId, StringComparer.OrdinalIgnoreCase);
        Returns = [.. log.Pieces.Select(piece => log.Returns.IsEmpty ? [] : returns[piece.Id].ToImmutableArray())];
        Undone = [.. Returns.Select(all => all.IsEmpty ? all : [.. all.Where(back => back.CameBack)])];
        Stays = [.. log.Pieces.Zip(Undone, (piece, undone) => new StockStays(piece, undone))];
        for (int i = 0; i < log.Pieces.Length; i++)
            places.TryAdd(log.Pieces[i].Id, i);
    }

    public SalesLog Log { get; }

    /// <summary>Whether pieces carry shares of tools and overheads.</summary>
    public bool SharesUpkeep { get; init; } = true;

    /// <summary>
    /// Whether each share of supplies is a line of its own, with what left the cans and was paid; without, a piece has one line for all
    /// of them, which is enough for its sum.
    /// </summary>
    public bool Itemizes { get; init; } = true;

    public Currency Currency => Log.Workshop.Currency;

    public WorkCalendar Calendar { get; }

    public ImmutableArray<List<CostLine>> Lines { get; }

    public ImmutableArray<List<CostGap>> Gaps { get; }

    /// <summary>Rows of <c>returns.csv</c>, by piece and day.</summary>
    public ImmutableArray<ImmutableArray<SaleReturn>> Returns { get; }

    /// <summary>Those with which a piece came back.</summary>
    public ImmutableArray<ImmutableArray<SaleReturn>> Undone { get; }

    /// <summary>When each piece was in stock.</summary>
    public ImmutableArray<StockStays> Stays { get; }

    public List<CostLine> Overheads { get; } = [];

    public List<CashMovement> Cash { get; } = [];

    public List<string> Notes { get; } = [];

    /// <summary>
    /// Takes out the lines of a piece, by kind, then by day, those without a day first; else in the order they were written.
    /// </summary>
    public ImmutableArray<CostLine> TakeInOrder(int place)
    {
        CostLine[] lines = [.. Lines[place]];
        Lines[place].Clear();
        Lines[place].TrimExcess();
        // Kind, day and place in one number: sorting each piece by the lines themselves takes several times as long.
        var keys = new long[lines.Length];
        for (int i = 0; i < lines.Length; i++)
            keys[i] = ((long)lines[i].Kind << 56) | ((1L + (lines[i].Date?.DayNumber ?? -1)) << 32) | (uint)i;
        Array.Sort(keys, lines);
        return ImmutableCollectionsMarshal.AsImmutableArray(lines);
    }

    /// <summary>Place of a piece in the log; null for none and for an id that it does not have.</summary>
    public int? PlaceOf(string? pieceId) => pieceId is not null && places.TryGetValue(pieceId, out int place) ? place : null;

    /// <summary>Adds money in or out; nothing where it is zero.</summary>
    public void Pay(DateOnly? date, decimal amount, string what, CostOrigin origin, CostKind? kind, string? piece = null)
    {
        if (amount != 0 && Itemizes)
            Cash.Add(new(date, amount, what, origin) { Kind = kind, PieceId = piece });
    }

    /// <summary>Writes the shares of supplies that were summed, a line for each piece.</summary>
    public void WriteSummed()
    {
        CostSource source = new(CostKind.Supplies, "supplies", new(Columns.Supplies.File, null, "All shares of it together."));
        for (int i = 0; i < summed.Length; i++)
        {
            if (summed[i] != 0)
                Lines[i].Add(new(source, Calendar.WorkDay(i), summed[i]));
        }
    }

    /// <summary>Shares an amount by work, a line for each piece; the shares add up to it.</summary>
    public void Share(
        CostKind kind, decimal amount, ImmutableArray<WorkShare> by, DateOnly? earliest, string what, CostOrigin origin,
        Action<int, CostLine>? written = null)
    {
        if (amount == 0 || (!SharesUpkeep && kind is CostKind.Tools or CostKind.Overhead))
            return;
        decimal[] weights = [.. by.Select(s => s.Weight)];
        ImmutableArray<decimal> shares = Shares.InProportion(amount, weights, Currency.MinorDigits);
        CostSource source = new(kind, what, origin);
        for (int i = 0; i < by.Length; i++)
        {
            DateOnly? day = by[i].LastDay < earliest ? earliest : by[i].LastDay;
            if (shares[i] == 0)
                continue;
            if (!Itemizes && kind == CostKind.Supplies)
            {
                summed[by[i].Index] += shares[i];
                continue;
            }

            CostLine line = new(source, day, shares[i]);
            Lines[by[i].Index].Add(line);
            written?.Invoke(by[i].Index, line);
        }
    }
}
