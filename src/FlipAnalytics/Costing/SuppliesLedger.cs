using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// The ledger of supplies: uses take from purchases, what has no uses is spread over the pieces worked on, and the rest is
/// stock.
/// </summary>
/// <remarks>
/// The first purchase of an item counts as there from the beginning, since nothing can be used before it is bought and a
/// day may be off. An item that has coverage but no uses yet, in a log that writes uses down, waits for its first use.
/// </remarks>
/// <param name="Bought">Prices of all purchases.</param>
/// <param name="Left">What is left.</param>
/// <param name="Coverage">Assumed coverage against measured uses.</param>
internal sealed record SuppliesLedger(
    decimal Bought, ImmutableArray<SupplyStock> Left, ImmutableArray<CoverageCheck> Coverage)
{
    public static SuppliesLedger Write(CostSheet sheet)
    {
        List<SupplyStock> left = [];
        List<CoverageCheck> coverage = [];
        List<string> spread = [];
        ILookup<string, SupplyUse> uses = sheet.Log.Uses
            .Where(use => sheet.PlaceOf(use.PieceId) is not null)
            .ToLookup(use => use.Item, StringComparer.OrdinalIgnoreCase);
        foreach (var item in sheet.Log.Supplies.GroupBy(p => p.Item, StringComparer.OrdinalIgnoreCase))
        {
            SupplyPurchase[] purchases = [.. item.OrderBy(p => p.BoughtOn ?? DateOnly.MinValue)];
            foreach (SupplyPurchase purchase in purchases)
                Pay(sheet, purchase);
            bool isTracked = uses.Contains(item.Key) || (uses.Count > 0 && purchases.Any(p => p.Coverage is not null));
            if (!isTracked)
            {
                ImmutableArray<SupplyStock> rest = [.. SpreadSupplies.Write(sheet, purchases, [])];
                left.AddRange(rest);
                if (rest.Sum(stock => stock.Value) < purchases.Sum(p => p.Price ?? 0))
                    spread.Add(purchases[0].Item);
                continue;
            }

            SupplyUse[] own = [.. uses[item.Key].OrderBy(use => DayOf(sheet, use))];
            left.AddRange(Track(sheet, purchases, own));
            if (Check(sheet, purchases, own) is { } check)
                coverage.Add(check);
        }

        if (spread.Count > 0)
        {
            string remedy = uses.Count > 0
                ? " An item with a coverage in supplies.csv waits for its first use instead."
                : " With uses.csv, the pieces that used it bear it.";
            sheet.Notes.Add(
                $"No use of {InWords(spread)} is written down: what was bought is spread by hours over the pieces worked on, opened or not.{remedy}");
        }

        HashSet<string> known = new(sheet.Log.Supplies.Select(p => p.Item), StringComparer.OrdinalIgnoreCase);
        foreach (SupplyUse use in uses.Where(item => !known.Contains(item.Key)).SelectMany(item => item))
            Gap(sheet, use, "supplies.csv has no purchase of it");
        FindPiecesWithoutRecord(sheet, uses);
        return new(sheet.Log.Supplies.Sum(p => p.Price ?? 0), [.. left], [.. coverage]);
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

    private static IEnumerable<SupplyStock> Track(CostSheet sheet, SupplyPurchase[] purchases, SupplyUse[] uses)
    {
        // What was bought without a quantity cannot be drawn from; the pieces that used it bear it.
        SupplyPurchase[] loose = [.. purchases.Where(p => p.Quantity is not > 0)];
        IEnumerable<SupplyStock> spread = loose.Length == 0 ? []
            : SpreadSupplies.Write(sheet, loose, [.. uses.Select(use => sheet.PlaceOf(use.PieceId)!.Value).Distinct()]);

        SupplyPurchase[] measured = [.. purchases.Where(p => p.Quantity > 0)];
        var accounts = measured
            .GroupBy(p => UnitOf(p).Measure)
            .ToDictionary(g => g.Key, g => (Account: new SupplyAccount(sheet.Log.Workshop.Costing, sheet.Currency), Purchases: g.ToArray()));
        var next = accounts.Keys.ToDictionary(measure => measure, _ => 0);
        foreach (SupplyUse use in uses)
            Use(use);
        foreach (string measure in accounts.Keys)
            BuyUntil(measure, DateOnly.MaxValue);
        return
        [
            .. spread,
            .. accounts.Values.Select(a => new SupplyStock(
                a.Purchases[^1].Item,
                a.Account.Quantity / UnitOf(a.Purchases[^1]).Factor,
                a.Purchases[^1].Unit,
                a.Account.Value,
                a.Purchases[^1].BoughtOn)),
        ];

        void BuyUntil(string measure, DateOnly day)
        {
            var (account, own) = accounts[measure];
            for (; next[measure] < own.Length; next[measure]++)
            {
                SupplyPurchase p = own[next[measure]];
                if (next[measure] > 0 && p.BoughtOn > day)
                    return;
                account.Buy(p.Quantity!.Value * UnitOf(p).Factor, p.Price, p.Row);
            }
        }

        void Use(SupplyUse use)
        {
            int place = sheet.PlaceOf(use.PieceId)!.Value;
            if (measured.Length == 0)
                return;
            if (SupplyNeed.Of(
                use with { Date = DayOf(sheet, use) }, measured, sheet.Log.Pieces[place], sheet.Log.Workshop.LengthUnit, out string lack)
                is not { } need)
            {
                Gap(sheet, use, lack);
                return;
            }

            if (!accounts.TryGetValue(need.Unit.Measure, out var account))
            {
                string bought = string.Join(", ", measured.Select(p => p.Unit ?? "no unit").Distinct());
                Gap(sheet, use, $"it was used in {need.Unit.Word} but bought in {bought}, and the two do not convert");
                return;
            }

            DateOnly day = DayOf(sheet, use);
            BuyUntil(need.Unit.Measure, day);
            Withdrawal taken = account.Account.Take(need.Quantity);
            string from = taken.Row is { } row ? Invariant($"line {row} of {Columns.Supplies.File}") : Columns.Supplies.File;
            string method = sheet.Log.Workshop.Costing == CostingMethod.Fifo ? "first in, first out" : "at the average cost";
            if (taken.Cost != 0 || taken is { Unpriced: 0, Missing: 0 })
            {
                sheet.Lines[place].Add(new(
                    CostKind.Supplies,
                    day == DateOnly.MaxValue ? null : day,
                    taken.Cost,
                    use.Item,
                    new(Columns.Uses.File, use.Row, $"{Capital(need.Rule)}; taken from {from}, {method}.")));
            }

            if (taken.Missing > 0)
            {
                Gap(sheet, use, Invariant(
                    $"{taken.Missing / need.Unit.Factor:0.###} {need.Unit.Word} more was used by then than was bought, and what was not bought has no cost"));
            }

            if (taken.Unpriced > 0)
                Gap(sheet, use, "it was bought without a price");
        }
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
    private static void FindPiecesWithoutRecord(CostSheet sheet, ILookup<string, SupplyUse> uses)
    {
        bool everythingIsSpread = uses.Count == 0 && sheet.Log.Supplies.Length > 0;
        HashSet<string> used = new(sheet.Log.Uses.Select(use => use.PieceId).OfType<string>(), StringComparer.OrdinalIgnoreCase);
        int without = 0;
        for (int i = 0; i < sheet.Log.Pieces.Length; i++)
        {
            Piece piece = sheet.Log.Pieces[i];
            if (everythingIsSpread || !sheet.Calendar.IsWorked(i) || piece.SuppliesCost is not null || used.Contains(piece.Id))
                continue;
            without++;
            sheet.Gaps[i].Add(new(CostKind.Supplies, $"What was used up on {piece.Id} is not written down."));
        }

        if (without > 0 && sheet.Log.Supplies.Length > 0)
        {
            sheet.Notes.Add(Invariant(
                $"{(without == 1 ? "1 piece was" : Invariant($"{without} pieces were"))} worked on without any use of supplies on record: the cans hold less than the books say."));
        }
    }

    private static DateOnly DayOf(CostSheet sheet, SupplyUse use) =>
        use.Date ?? sheet.Calendar.WorkDay(sheet.PlaceOf(use.PieceId)!.Value) ?? DateOnly.MaxValue;

    private static SupplyUnit UnitOf(SupplyPurchase purchase) =>
        string.IsNullOrWhiteSpace(purchase.Unit) ? SupplyNeed.Bare : SupplyUnit.Of(purchase.Unit);

    private static void Gap(CostSheet sheet, SupplyUse use, string why)
    {
        string where = use.Row > 0 ? Invariant($"uses.csv, line {use.Row}: ") : "";
        string what = $"{where}the cost of {use.Item} on {use.PieceId} is unknown in whole or part: {why}.";
        sheet.Gaps[sheet.PlaceOf(use.PieceId)!.Value].Add(new(CostKind.Supplies, what));
        sheet.Notes.Add(what);
    }

    private static string InWords(List<string> items) =>
        items.Count == 1 ? items[0] : $"{string.Join(", ", items[..^1])} or {items[^1]}";

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
