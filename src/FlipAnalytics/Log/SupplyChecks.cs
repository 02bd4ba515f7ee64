using System.Globalization;

namespace FlipAnalytics;

/// <summary>Checks uses of supplies against what was bought.</summary>
internal static class SupplyChecks
{
    public static void Run(ReadTables tables, LogProblems problems)
    {
        List<SupplyUse> uses = [.. tables.Uses.Kept];
        string file = tables.Uses.Table.File;
        foreach (SupplyUse use in uses.Where(use => use is { Quantity: null, Coats: null }))
            problems.Warning(
                file,
                use.Row,
                "quantity",
                null,
                "a quantity, or coats and an area",
                "Fill in either; until then the use costs nothing.");

        if (!tables.Supplies.IsPresent)
        {
            if (uses.Count > 0)
                problems.Warning(
                    file,
                    null,
                    null,
                    null,
                    $"{tables.Supplies.Table.File} beside it",
                    "Write down what you bought there; until then what you used has no price.");
            return;
        }

        ILookup<string, SupplyPurchase> purchases = tables.Supplies.Kept
            .ToLookup(purchase => purchase.Item, StringComparer.OrdinalIgnoreCase);
        KnownWords bought = new(purchases.Select(item => item.Key));
        foreach (IGrouping<string, SupplyUse> item in uses.GroupBy(use => use.Item, StringComparer.OrdinalIgnoreCase))
        {
            if (purchases.Contains(item.Key))
                WarnOfMoreThanBought(item, [.. purchases[item.Key]], file, problems);
            else
                WarnOfUnknown(item, bought, tables.Supplies.Table.File, file, problems);
        }
    }

    private static void WarnOfUnknown(
        IGrouping<string, SupplyUse> item, KnownWords bought, string supplies, string file, LogProblems problems)
    {
        string mend = bought.Meant(item.Key) is { } meant ? $"If you mean {meant}, write it so, or" : "Correct the name, or";
        foreach (SupplyUse use in item)
            problems.Warning(
                file,
                use.Row,
                "item",
                use.Item,
                $"an item of {supplies}",
                $"{mend} add the purchase; until then the use costs nothing.");
    }

    // Only quantities in the very same unit can be compared; a can bought in another unit may hold the rest.
    private static void WarnOfMoreThanBought(
        IEnumerable<SupplyUse> uses, List<SupplyPurchase> purchases, string file, LogProblems problems)
    {
        string? unit = purchases[0].Unit;
        if (unit is null || purchases.Any(purchase => purchase.Quantity is null || !IsSame(purchase.Unit, unit)))
            return;
        decimal bought = purchases.Sum(purchase => purchase.Quantity!.Value);
        decimal used = 0;
        IEnumerable<SupplyUse> comparable = uses.Where(use => use.Quantity is not null && IsSame(use.Unit, unit));
        foreach (SupplyUse use in comparable.OrderBy(use => use.Date).ThenBy(use => use.Row))
        {
            used += use.Quantity!.Value;
            if (used <= bought)
                continue;
            problems.Warning(
                file,
                use.Row,
                "quantity",
                string.Create(CultureInfo.InvariantCulture, $"{used} {unit} of {use.Item} used up to here"),
                string.Create(CultureInfo.InvariantCulture, $"at most {bought} {unit}, which is all that was bought"),
                "Correct the quantity, or add the purchase that is missing.");
            return;
        }
    }

    private static bool IsSame(string? unit, string other) => other.Equals(unit, StringComparison.OrdinalIgnoreCase);
}
