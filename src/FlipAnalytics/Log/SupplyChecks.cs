namespace FlipAnalytics;

/// <summary>Checks that what was used and counted of supplies was bought.</summary>
internal static class SupplyChecks
{
    public static void Run(ReadTables tables, LogProblems problems)
    {
        List<SupplyUse> uses = [.. tables.Uses.Kept];
        List<StockCount> counts = [.. tables.Counts.Kept];
        foreach (SupplyUse use in uses.Where(use => use is { Quantity: null, Coats: null }))
            problems.Warning(
                tables.Uses.Table.File,
                use.Row,
                "quantity",
                null,
                "a quantity, or coats and an area",
                "Fill in either; until then the use costs nothing.");

        if (!tables.Supplies.IsPresent)
        {
            WarnOfNoPurchases(uses.Count, tables.Uses.Table, "until then what you used has no price.");
            WarnOfNoPurchases(counts.Count, tables.Counts.Table, "until then what you counted has no price.");
            return;
        }

        ILookup<string, SupplyPurchase> purchases = tables.Supplies.Kept
            .ToLookup(purchase => purchase.Item, StringComparer.OrdinalIgnoreCase);
        KnownWords bought = new(purchases.Select(item => item.Key));
        foreach (SupplyUse use in uses.Where(use => !purchases.Contains(use.Item)))
            WarnOfUnknown(use.Item, use.Row, tables.Uses.Table, "the use costs nothing");
        foreach (StockCount count in counts.Where(count => !purchases.Contains(count.Item)))
            WarnOfUnknown(count.Item, count.Row, tables.Counts.Table, "the count counts for nothing");
        ILookup<string, SupplyUse> used = uses.ToLookup(use => use.Item, StringComparer.OrdinalIgnoreCase);
        ILookup<string, StockCount> counted = counts.ToLookup(count => count.Item, StringComparer.OrdinalIgnoreCase);
        foreach (var item in purchases)
            StockChecks.Run([.. item], [.. used[item.Key]], [.. counted[item.Key]], problems);

        void WarnOfNoPurchases(int rows, LogTable table, string untilThen)
        {
            if (rows > 0)
                problems.Warning(
                    table.File,
                    null,
                    null,
                    null,
                    $"{tables.Supplies.Table.File} beside it",
                    $"Write down what you bought there; {untilThen}");
        }

        void WarnOfUnknown(string item, int row, LogTable table, string untilThen)
        {
            string mend = bought.Meant(item) is { } meant ? $"If you mean {meant}, write it so, or" : "Correct the name, or";
            problems.Warning(
                table.File,
                row,
                "item",
                item,
                $"an item of {tables.Supplies.Table.File}",
                $"{mend} add the purchase; until then {untilThen}.");
        }
    }
}
