using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// The ledger of supplies, can by can: uses take from purchases, what has no uses is spread over the pieces worked on, counts
/// put the books right, and the rest is stock.
/// </summary>
/// <remarks>
/// An item that has coverage but no uses yet, in a log that writes uses down, waits for its first use.
/// </remarks>
/// <param name="Bought">Prices of all purchases.</param>
/// <param name="Left">What is left.</param>
/// <param name="Coverage">Assumed coverage against measured uses.</param>
/// <param name="Shelf">The cans.</param>
/// <param name="Losses">What no piece carries.</param>
internal sealed record SuppliesLedger(
    decimal Bought, ImmutableArray<SupplyStock> Left, ImmutableArray<CoverageCheck> Coverage, SupplyShelf Shelf, SupplyLosses Losses)
{
    public static SuppliesLedger Write(CostSheet sheet)
    {
        SupplyShelf shelf = new(sheet.Log.Supplies);
        SupplyLosses losses = new();
        List<SupplyStock> left = [];
        List<CoverageCheck> coverage = [];
        List<string> spread = [];
        ILookup<string, SupplyUse> uses = sheet.Log.Uses
            .Where(use => use.PieceId is null || sheet.PlaceOf(use.PieceId) is not null)
            .ToLookup(use => use.Item, StringComparer.OrdinalIgnoreCase);
        ILookup<string, StockCount> counts = sheet.Log.Counts.ToLookup(count => count.Item, StringComparer.OrdinalIgnoreCase);
        bool writesUses = uses.Any(item => item.Any(use => use.PieceId is not null));
        foreach (var item in shelf.Cans.GroupBy(can => can.Purchase.Item, StringComparer.OrdinalIgnoreCase))
        {
            Can[] cans = [.. item.OrderBy(can => can.Since)];
            foreach (Can can in cans)
                Pay(sheet, can.Purchase);
            SupplyUse[] own = [.. uses[item.Key].OrderBy(use => DayOf(sheet, use))];
            SupplyUse[] onPieces = [.. own.Where(use => use.PieceId is not null)];
            ImmutableArray<CountedStock> counted = CountedStock.Of(counts[item.Key], cans);
            bool isTracked = onPieces.Length > 0 || (writesUses && cans.Any(can => can.Purchase.Coverage is not null));
            if (!isTracked)
            {
                SpreadSupplies shares = new(sheet, shelf, losses, cans, []);
                left.Add(shares.Write(own, counted));
                if (shares.IsGuessed)
                    spread.Add(cans[0].Purchase.Item);
                continue;
            }

            // What was bought without a quantity cannot be drawn from; the pieces that used it bear it.
            Can[] loose = [.. cans.Where(can => can.Bought is null)];
            if (loose.Length > 0)
            {
                SpreadSupplies shares = new(
                    sheet, shelf, losses, loose, [.. onPieces.Select(use => sheet.PlaceOf(use.PieceId)!.Value).Distinct()]);
                left.Add(shares.Write([], counted.Where(count => count.IsAllGone)));
            }

            left.AddRange(new TrackedSupplies(sheet, shelf, losses, [.. cans.Where(can => can.Bought is not null)]).Write(own, counted));
            if (Check(sheet, [.. cans.Select(can => can.Purchase)], onPieces) is { } check)
                coverage.Add(check);
        }

        if (spread.Count > 0)
        {
            string remedy = writesUses
                ? " An item with a coverage in supplies.csv waits for its first use instead."
                : " With uses.csv, the pieces that used it bear it.";
            sheet.Notes.Add(
                $"No use of {InWords(spread)} is written down: what was bought is spread by hours over the pieces worked on, opened or not.{remedy}");
        }

        HashSet<string> known = new(sheet.Log.Supplies.Select(p => p.Item), StringComparer.OrdinalIgnoreCase);
        foreach (SupplyUse use in uses.Where(item => !known.Contains(item.Key)).SelectMany(item => item))
            Gap(sheet, use, "supplies.csv has no purchase of it");
        FindPiecesWithoutRecord(sheet, shelf, writesUses);
        return new(sheet.Log.Supplies.Sum(p => p.Price ?? 0), [.. left], [.. coverage], shelf, losses);
    }

    private static void Pay(CostSheet sheet, SupplyPurchase purchase)
    {
        CostOrigin origin = new(Columns.Supplies.File, purchase.Row, "The price paid, as written down.");
        sheet.Pay(purchase.BoughtOn, -(purchase.Price ?? 0), purchase.Item, origin, CostKind.Supplies);
        if (purchase.Price is null)
        {
            sheet.Notes.Add(Invariant(
                $"supplies.csv has no price in line {purchase.Row} ({purchase.Item}); what is used of it has an unknown cost."));
        }
    }

    /// <summary>Puts an account right by a count; the difference is a cost or a gain of its day.</summary>
    internal static void Count(
        CostSheet sheet, SupplyShelf shelf, SupplyLosses losses, SupplyAccount account, CountedStock count, decimal left,
        SupplyUnit unit, DateOnly firstBought, DateOnly? before, string method)
    {
        decimal books = account.Quantity;
        decimal difference = books - left;
        if (Math.Abs(difference) <= Math.Max(books, left) * SupplyAccount.Dust)
            return;
        bool isMissing = difference > 0;
        Withdrawal moved = isMissing ? account.Take(difference) : account.PutBack(-difference);
        DateOnly date = moved.Since > count.Day ? moved.Since : count.Day;
        foreach (CanPart part in moved.Parts)
        {
            if (isMissing)
                shelf.Leave(part, date, CanEnd.CountedAway);
            else
                shelf.Find(part, date);
        }

        string item = count.Row.Item;
        string cans = moved.Row is { } row ? Invariant($"line {row} of {Columns.Supplies.File}") : Columns.Supplies.File;
        string rule = Invariant($"{books / unit.Factor:0.###} {unit.Word} by the books, {left / unit.Factor:0.###} counted: ")
            + (isMissing ? $"the rest is missing, taken from {cans}, {method}." : $"more than the books say, put back into {cans}, {method}.");
        if (moved.Cost != 0)
        {
            losses.Differ(new(
                item, date, before, firstBought, isMissing ? moved.Cost : -moved.Cost,
                SupplyLosses.AtTheCount(item, isMissing), new(Columns.Counts.File, count.Row.Row, rule)));
        }

        string where = Where(Columns.Counts.File, count.Row.Row);
        if (moved.Unpriced > 0)
            sheet.Notes.Add($"{where}the cost of {item} {(isMissing ? "missing" : "found")} at the count is unknown in whole or part: it was bought without a price.");
        if (!isMissing && moved.Missing > 0)
        {
            sheet.Notes.Add(Invariant(
                $"{where}{moved.Missing / unit.Factor:0.###} {unit.Word} more of {item} was counted than was bought by then, and what was not bought has no cost. Write down the purchase, or correct the count."));
        }
    }

    /// <summary>What went to waste leaves its cans at a cost that no piece carries.</summary>
    internal static void Waste(SupplyLosses losses, SupplyShelf shelf, SupplyUse use, Withdrawal taken, string rule)
    {
        // Without a day of its own it counts on that of the purchase.
        DateOnly? date = use.Date > taken.Since ? use.Date : taken.Since > DateOnly.MinValue ? taken.Since : use.Date;
        foreach (CanPart part in taken.Parts)
            shelf.Leave(part, date, CanEnd.Wasted);
        if (taken.Cost != 0)
            losses.Waste(use.Item, date, taken.Cost, new(Columns.Uses.File, use.Row, $"{rule} No piece carries it."));
    }

    private static CoverageCheck? Check(CostSheet sheet, SupplyPurchase[] purchases, SupplyUse[] uses)
    {
        LengthUnit lengths = sheet.Log.Workshop.LengthUnit;
        if (SupplyNeed.CoverageAt(DateOnly.MaxValue, purchases, lengths) is not { } assumed)
            return null;
        decimal coated = 0;
        decimal taken = 0;
        int count = 0;
        foreach (SupplyUse use in uses.Where(use => use is { Quantity: > 0, Coats: > 0 }))
        {
            Piece piece = sheet.Log.Pieces[sheet.PlaceOf(use.PieceId)!.Value];
            if (SupplyNeed.CoatedSquareMetres(use, piece, lengths) is not { } area
                || SupplyNeed.Of(use, purchases, piece, lengths, out _) is not { } need
                || need.Unit.Measure != assumed.Unit.Per.Measure)
            {
                continue;
            }

            coated += area;
            taken += need.Quantity;
            count++;
        }

        if (count == 0)
            return null;
        decimal implied = coated / (1 - SupplyNeed.Loss) / taken / assumed.Unit.SquareMetres;
        return new(purchases[0].Item, assumed.Value, ThreeDigits(implied), assumed.Text, count);
    }

    private static decimal ThreeDigits(decimal value)
    {
        int scale = 0;
        for (decimal size = value; size is > 0 and < 100 && scale < 9; size *= 10)
            scale++;
        return decimal.Round(value, scale);
    }

    // In a log that writes supplies down by use, a piece worked on without any has costs that nobody knows.
    private static void FindPiecesWithoutRecord(CostSheet sheet, SupplyShelf shelf, bool writesUses)
    {
        bool everythingIsSpread = !writesUses && sheet.Log.Supplies.Length > 0;
        HashSet<string> used = new(sheet.Log.Uses.Select(use => use.PieceId).OfType<string>(), StringComparer.OrdinalIgnoreCase);
        // Of what was used before every can with something left in it was counted, the cans tell.
        DateOnly counted = shelf.Cans.Where(can => can.HoldsAnything).DefaultIfEmpty()
            .Min(can => can is null ? DateOnly.MinValue : shelf.LastCount(can.Purchase.Item, DateOnly.MaxValue) ?? DateOnly.MinValue);
        int without = 0;
        for (int i = 0; i < sheet.Log.Pieces.Length; i++)
        {
            Piece piece = sheet.Log.Pieces[i];
            if (everythingIsSpread || !sheet.Calendar.IsWorked(i) || piece.SuppliesCost is not null || used.Contains(piece.Id))
                continue;
            without += sheet.Calendar.WorkDay(i) <= counted ? 0 : 1;
            sheet.Gaps[i].Add(new(CostKind.Supplies, $"What was used up on {piece.Id} is not written down."));
        }

        if (without > 0 && sheet.Log.Supplies.Length > 0)
        {
            sheet.Notes.Add(Invariant(
                $"{(without == 1 ? "1 piece was" : Invariant($"{without} pieces were"))} worked on without any use of supplies on record: the cans hold less than the books say. A count of what is left (counts.csv) puts them right."));
        }
    }

    /// <summary>Day of a use: its own, else that of the work on its piece; after all others where the log tells neither.</summary>
    internal static DateOnly DayOf(CostSheet sheet, SupplyUse use) =>
        use.Date ?? (sheet.PlaceOf(use.PieceId) is { } place ? sheet.Calendar.WorkDay(place) : null) ?? DateOnly.MaxValue;

    /// <summary>What is unknown of a use, on its piece and in the notes.</summary>
    internal static void Gap(CostSheet sheet, SupplyUse use, string why)
    {
        string what = $"{Where(Columns.Uses.File, use.Row)}the cost of {use.Item} {(use.PieceId is { } id ? $"on {id}" : "wasted")} is unknown in whole or part: {why}.";
        if (sheet.PlaceOf(use.PieceId) is { } place)
            sheet.Gaps[place].Add(new(CostKind.Supplies, what));
        sheet.Notes.Add(what);
    }

    /// <summary>The place of a row, for the beginning of a sentence; empty for a row of no file.</summary>
    internal static string Where(string file, int row) => row > 0 ? Invariant($"{file}, line {row}: ") : "";

    private static string InWords(List<string> items) =>
        items.Count == 1 ? items[0] : $"{string.Join(", ", items[..^1])} or {items[^1]}";
}
