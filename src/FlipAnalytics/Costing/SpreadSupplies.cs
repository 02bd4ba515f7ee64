using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Supplies whose uses nobody writes down, such as abrasives and rags: a purchase is spread by hours over the pieces worked
/// on until the next purchase. The last one, still in use, is charged for each hour at what earlier ones cost an hour, and
/// the rest is stock; without earlier ones of known price it is charged in full.
/// </summary>
internal static class SpreadSupplies
{
    /// <summary>Spreads the purchases of an item and returns what is left of it.</summary>
    /// <param name="sheet">The books.</param>
    /// <param name="purchases">Purchases of one item, oldest first.</param>
    /// <param name="only">Places of the pieces that bear it; empty for all that were worked on.</param>
    public static IEnumerable<SupplyStock> Write(
        CostSheet sheet, IReadOnlyList<SupplyPurchase> purchases, ImmutableHashSet<int> only)
    {
        DateOnly[] days = [.. purchases.Select(p => p.BoughtOn ?? DateOnly.MinValue).Distinct()];
        decimal closedCost = 0;
        decimal closedWork = 0;
        decimal value = 0;
        decimal quantity = 0;
        bool quantityKnown = true;
        int waiting = 0;
        int done = 0;
        for (int k = 0; k < days.Length; k++)
        {
            bool isOpen = k == days.Length - 1;
            ImmutableArray<WorkShare> work = Worked(days[waiting], isOpen ? DateOnly.MaxValue : days[k + 1], waiting == 0);
            // Where no piece that bears it was worked on before the next purchase, that purchase continues this one.
            if (work.IsEmpty && !isOpen)
                continue;
            SupplyPurchase[] batch = [.. purchases.Skip(done).TakeWhile(p => (p.BoughtOn ?? DateOnly.MinValue) <= days[k])];
            done += batch.Length;
            decimal hours = work.Sum(share => share.Weight);
            decimal cost = batch.Sum(p => p.Price ?? 0);
            decimal charged = work.IsEmpty ? 0
                : isOpen && closedWork > 0 ? Math.Min(cost, sheet.Currency.Round(closedCost * hours / closedWork))
                : cost;
            bool isPriced = batch.All(p => p.Price is not null);
            if (!isOpen && isPriced)
                (closedCost, closedWork) = (closedCost + cost, closedWork + hours);
            if (!isPriced)
                AddGaps(batch[0].Item, work);
            foreach (SupplyPurchase purchase in batch)
            {
                decimal part = Math.Min(purchase.Price ?? 0, charged);
                charged -= part;
                Charge(purchase, part, work, isOpen);
                decimal rest = (purchase.Price ?? 0) - part;
                value += rest;
                quantityKnown &= purchase.Quantity is not null && (purchase.Price > 0 || !isOpen);
                if (rest > 0)
                    quantity += (purchase.Quantity ?? 0) * rest / purchase.Price!.Value;
            }

            waiting = k + 1;
        }

        SupplyPurchase last = purchases[^1];
        return [new(last.Item, quantityKnown ? quantity : null, last.Unit, value, last.BoughtOn)];

        ImmutableArray<WorkShare> Worked(DateOnly from, DateOnly before, bool withUndated)
        {
            ImmutableArray<WorkShare> all = sheet.Calendar.Between(from, before, withUndated);
            if (only.IsEmpty)
                return all;
            ImmutableArray<WorkShare> chosen = [.. all.Where(share => only.Contains(share.Index))];
            // A piece that used it before the day of purchase bears it all the same: a day may be off.
            return chosen.IsEmpty && before == DateOnly.MaxValue
                ? [.. sheet.Calendar.Between(DateOnly.MinValue, before, true).Where(share => only.Contains(share.Index))]
                : chosen;
        }

        void AddGaps(string item, ImmutableArray<WorkShare> work)
        {
            CostGap gap = new(CostKind.Supplies, $"What {item} cost is not written down, and a share of it is unknown.");
            foreach (WorkShare share in work.Where(share => !sheet.Gaps[share.Index].Contains(gap)))
                sheet.Gaps[share.Index].Add(gap);
        }

        void Charge(SupplyPurchase purchase, decimal part, ImmutableArray<WorkShare> work, bool isOpen)
        {
            string until = isOpen ? "since then" : "until the next purchase";
            string rule = Invariant(
                $"{part} of {purchase.Price}, shared by hours over the {work.Length} pieces worked on {until}; no uses of it are written down.");
            if (part != 0)
                sheet.Share(
                    CostKind.Supplies, part, work, purchase.BoughtOn, purchase.Item,
                    new(Columns.Supplies.File, purchase.Row, rule));
        }
    }
}
