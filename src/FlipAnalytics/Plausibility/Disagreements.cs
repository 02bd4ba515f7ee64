namespace FlipAnalytics;

/// <summary>Facts of two rows that cannot both be as they are written.</summary>
internal static class Disagreements
{
    // What two rows say of one fact is wrong in one of them, whatever is usual elsewhere.
    private const double Gain = 8;

    public static IEnumerable<LogFinding> Of(SalesLog log) =>
        [.. UsesBeforeTheFirstPurchase(log), .. LotsPricedInPart(log), .. PiecesThereTwice(log)];

    private static IEnumerable<LogFinding> UsesBeforeTheFirstPurchase(SalesLog log)
    {
        // A purchase without a date may be the first.
        var firsts = log.Supplies.GroupBy(s => s.Item, StringComparer.OrdinalIgnoreCase)
            .Where(item => item.All(s => s.BoughtOn is not null))
            .ToDictionary(item => item.Key, item => item.MinBy(s => s.BoughtOn)!, StringComparer.OrdinalIgnoreCase);
        foreach (var item in log.Uses.Where(u => u.Date is not null).GroupBy(u => u.Item, StringComparer.OrdinalIgnoreCase))
        {
            if (!firsts.TryGetValue(item.Key, out SupplyPurchase? purchase))
                continue;
            SupplyUse[] early = [.. item.Where(u => u.Date < purchase.BoughtOn)];
            if (early.Length > 1 && early.Length >= item.Count() / 2)
            {
                yield return new(
                    Columns.Supplies.File, purchase.Row, "bought_on", LogFinding.Text(purchase.BoughtOn!.Value),
                    $"{LogFinding.Text(early.Min(u => u.Date)!.Value)} or earlier, when {item.Key} was first used",
                    $"Correct the date, or add the purchase that came before; {early.Length} uses in {Columns.Uses.File} are earlier.",
                    Gain);
                continue;
            }

            foreach (SupplyUse use in early)
                yield return new(
                    Columns.Uses.File, use.Row, "date", LogFinding.Text(use.Date!.Value),
                    $"{LogFinding.Text(purchase.BoughtOn!.Value)} or later, when {item.Key} was first bought",
                    $"Correct the date here or in {Columns.Supplies.File} line {LogFinding.Text(purchase.Row)}, or add the purchase that is missing.",
                    Gain);
        }
    }

    private static IEnumerable<LogFinding> LotsPricedInPart(SalesLog log)
    {
        foreach (var lot in log.Pieces.Where(p => p.Lot is not null).GroupBy(p => p.Lot!, StringComparer.OrdinalIgnoreCase))
        {
            Piece[] without = [.. lot.Where(p => p.BoughtPrice is null)];
            int with = lot.Count() - without.Length;
            if (with < 2 || without.Length == 0)
                continue;
            foreach (Piece piece in without)
                yield return new(
                    Columns.Pieces.File, piece.Row, "bought_price", "",
                    $"a price, as {LogFinding.Text(with)} other pieces of lot {lot.Key} have one",
                    "Give each piece of the lot its price, or one of them the sum and the others none.",
                    Gain);
        }
    }

    // Two rows that agree in all that tells one sale from another are one sale written down twice.
    private static IEnumerable<LogFinding> PiecesThereTwice(SalesLog log)
    {
        var sales = log.Pieces.Where(p => p is { SoldOn: not null, SoldPrice: not null, BoughtPrice: > 0, BoughtOn: not null })
            .GroupBy(p => (p.Type.ToUpperInvariant(), p.BoughtOn, p.BoughtPrice, p.SoldOn, p.SoldPrice, p.Colour, p.Width));
        foreach (var same in sales.Where(sale => sale.Count() > 1))
        {
            Piece first = same.First();
            foreach (Piece piece in same.Skip(1))
                yield return new(
                    Columns.Pieces.File, piece.Row, "id", piece.Id,
                    $"one row for each sale; line {LogFinding.Text(first.Row)} has the same dates and prices",
                    "Remove one of the two rows, or leave them if there were two such sales.",
                    Gain);
        }
    }
}
