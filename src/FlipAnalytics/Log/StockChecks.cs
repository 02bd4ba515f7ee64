using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Follows what is there of a supply through purchases, uses and counts, and warns where more was used or counted than can
/// have been there. Only quantities in the very same unit can be compared; a can bought in another unit may hold the rest.
/// </summary>
internal static class StockChecks
{
    public static void Run(
        IReadOnlyList<SupplyPurchase> purchases, IReadOnlyList<SupplyUse> uses, IReadOnlyList<StockCount> counts,
        LogProblems problems)
    {
        string? unit = purchases[0].Unit;
        bool isOneUnit = purchases.All(purchase => IsSame(purchase.Unit, unit));
        bool isMeasured = purchases.All(purchase => purchase.Quantity is not null);
        if (isOneUnit && isMeasured)
            Follow(purchases, uses, counts, unit, problems);
        foreach (StockCount count in counts.Where(count => count.Quantity > 0))
        {
            if (!isMeasured)
                problems.Warning(
                    Columns.Counts.File,
                    count.Row,
                    "quantity",
                    Invariant($"{count.Quantity}"),
                    Invariant($"a quantity for each purchase of {count.Item} in {Columns.Supplies.File}; line {purchases.First(p => p.Quantity is null).Row} has none"),
                    "Fill it in; until then only empty can be compared.");
            else if (!isOneUnit && count.Unit is null)
                problems.Warning(
                    Columns.Counts.File,
                    count.Row,
                    "unit",
                    null,
                    $"a unit, as {count.Item} was bought in {string.Join(" and ", purchases.Select(p => p.Unit ?? "no unit").Distinct(StringComparer.OrdinalIgnoreCase))}",
                    $"Fill it in; until then it is taken as {purchases.FirstOrDefault(p => p.Unit is not null)?.Unit}.");
        }
    }

    private static void Follow(
        IReadOnlyList<SupplyPurchase> purchases, IReadOnlyList<SupplyUse> uses, IReadOnlyList<StockCount> counts, string? unit,
        LogProblems problems)
    {
        // The first purchase counts from the beginning: a day may be off, and what was used before it is told by its date.
        SupplyPurchase[] byDay = [.. purchases.OrderBy(purchase => purchase.BoughtOn)];
        decimal total = purchases.Sum(purchase => purchase.Quantity!.Value);
        decimal bought = byDay[0].Quantity!.Value;
        int next = 1;
        decimal used = 0;
        decimal gone = 0;
        DateOnly? countedOn = null;
        var days = uses.Where(use => use.Quantity is not null && (use.Unit is null || IsSame(use.Unit, unit)))
            .Select(use => (Day: use.Date ?? DateOnly.MaxValue, Use: (SupplyUse?)use, Counts: (StockCount[]?)null))
            .Concat(counts.GroupBy(count => count.Date)
                .Select(day => (Day: day.Key, Use: (SupplyUse?)null, Counts: (StockCount[]?)[.. day])))
            // On one day what was used is off before what is left is counted.
            .OrderBy(fact => fact.Day).ThenBy(fact => fact.Use is null).ThenBy(fact => fact.Use?.Row);
        foreach (var (day, use, counted) in days)
        {
            for (; next < byDay.Length && !(byDay[next].BoughtOn > day); next++)
                bought += byDay[next].Quantity!.Value;
            if (counted is not null)
            {
                Count(counted, day);
                continue;
            }

            used += use!.Quantity!.Value;
            gone += use.Quantity.Value;
            if (gone <= bought)
                continue;
            problems.Warning(
                Columns.Uses.File,
                use.Row,
                "quantity",
                Invariant($"{used} {unit}").TrimEnd() + Invariant($" of {use.Item} used {(countedOn is null ? "up to here" : $"since it was counted on {countedOn:yyyy-MM-dd}")}"),
                Invariant($"at most {used - (gone - bought):0.###} {unit}").TrimEnd() + (countedOn is not null ? ", which is all that was left and bought since"
                    : bought < total ? ", which is all that was bought by then" : ", which is all that was bought"),
                countedOn is null && bought == total ? "Correct the quantity, or add the purchase that is missing."
                    : "Write down the purchase that is missing, or correct the quantity or the day.");
            return;
        }

        void Count(StockCount[] rows, DateOnly day)
        {
            if (rows.Any(row => row.Quantity != 0 && row.Unit is not null && !IsSame(row.Unit, unit)))
            {
                // A part of it in another unit: how much is left cannot be told, but no more than was bought.
                (used, gone, countedOn) = (0, 0, day);
                return;
            }

            decimal left = rows.Sum(row => row.Quantity);
            // Of the first purchase only its own day tells when it was there to be counted.
            decimal byThen = byDay[0].BoughtOn > day ? 0 : bought;
            if (left > byThen)
            {
                problems.Warning(
                    Columns.Counts.File,
                    rows[^1].Row,
                    "quantity",
                    Invariant($"{left} {unit}").TrimEnd() + Invariant($" of {rows[0].Item} counted on {day:yyyy-MM-dd}"),
                    byThen == 0 ? "none, as nothing was bought by then"
                        : Invariant($"at most {byThen:0.###} {unit}").TrimEnd() + ", which is all that was bought by then",
                    "Correct the count, or add the purchase that is missing; what was not bought has no cost.");
            }

            (used, gone, countedOn) = (0, Math.Max(0, bought - left), day);
        }
    }

    private static bool IsSame(string? unit, string? other) => string.Equals(unit, other, StringComparison.OrdinalIgnoreCase);
}
