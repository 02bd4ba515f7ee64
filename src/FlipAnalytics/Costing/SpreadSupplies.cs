using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Supplies whose uses nobody writes down, such as abrasives and rags. Where a count says what is left, what was used up
/// until then is what was bought less that, spread by hours over the pieces worked on until then: the periodic system, opening
/// inventory and purchases less closing inventory (Weygandt, Kimmel and Kieso, Accounting Principles, chapter on merchandising
/// operations, from memory). After the last count a purchase is spread over the pieces worked on until the next purchase. The
/// last one, still in use, is charged for each hour at what earlier ones cost an hour, and the rest is stock; without earlier
/// ones of known price it is charged in full.
/// </summary>
internal sealed class SpreadSupplies
{
    private readonly CostSheet sheet;
    private readonly SupplyShelf shelf;
    private readonly SupplyLosses losses;
    private readonly IReadOnlyList<Can> cans;
    private readonly ImmutableHashSet<int> only;
    private decimal closedCost;
    private decimal closedWork;

    /// <summary>Spreads the cans of an item.</summary>
    /// <param name="sheet">The books.</param>
    /// <param name="shelf">All cans.</param>
    /// <param name="losses">What no piece carries.</param>
    /// <param name="cans">The cans, oldest first; at least one.</param>
    /// <param name="only">Places of the pieces that bear it; empty for all that were worked on.</param>
    public SpreadSupplies(
        CostSheet sheet, SupplyShelf shelf, SupplyLosses losses, IReadOnlyList<Can> cans, ImmutableHashSet<int> only) =>
        (this.sheet, this.shelf, this.losses, this.cans, this.only) = (sheet, shelf, losses, cans, only);

    /// <summary>Whether anything was spread on no better ground than that pieces were worked on.</summary>
    public bool IsGuessed { get; private set; }

    /// <summary>Writes waste, counts and shares, and returns what is left.</summary>
    /// <param name="waste">What went to waste, by day.</param>
    /// <param name="counts">Counts of the item, by day.</param>
    public SupplyStock Write(IEnumerable<SupplyUse> waste, IEnumerable<CountedStock> counts)
    {
        Queue<SupplyUse> wasted = new(waste);
        DateOnly from = cans[0].Since;
        bool isFirst = true;
        DateOnly? before = null;
        foreach (CountedStock count in counts)
        {
            WasteUntil(count.Day);
            if (!Count(count, from, isFirst, before))
                continue;
            before = count.Day;
            if (count.Day < cans[0].Since)
                continue;
            (from, isFirst) = (count.Day.AddDays(1), false);
        }

        WasteUntil(DateOnly.MaxValue);
        return SpreadUntilTheNext(from, isFirst);

        void WasteUntil(DateOnly day)
        {
            while (wasted.TryPeek(out SupplyUse? use) && (use.Date ?? DateOnly.MaxValue) <= day)
                Waste(wasted.Dequeue());
        }
    }

    // What went to waste stood open, so it is taken from the can bought last by then.
    private void Waste(SupplyUse use)
    {
        DateOnly day = use.Date ?? DateOnly.MaxValue;
        if (SupplyNeed.Of(use with { Date = day }, [.. cans.Select(can => can.Purchase)], null, sheet.Log.Workshop.LengthUnit, out string lack)
            is not { } need)
        {
            SuppliesLedger.Gap(sheet, use, lack);
            return;
        }

        decimal rest = need.Quantity;
        List<CanPart> parts = [];
        foreach (Can can in cans.Where(can => can == cans[0] || can.Since <= day).Reverse()
            .Where(can => can.Unit.Measure == need.Unit.Measure && can.Quantity > 0))
        {
            if (rest <= need.Quantity * SupplyAccount.Dust)
                break;
            parts.Add(can.Quantity <= rest * (1 + SupplyAccount.Dust) ? can.TakeAll() : can.Take(rest, sheet.Currency));
            rest -= parts[^1].Quantity!.Value;
        }

        Withdrawal taken = new([.. parts], rest > need.Quantity * SupplyAccount.Dust ? rest : 0);
        SuppliesLedger.Waste(losses, shelf, use, taken, $"{char.ToUpperInvariant(need.Rule[0])}{need.Rule[1..]}; taken from the purchase before it.");
        if (taken.Missing > 0)
            SuppliesLedger.Gap(sheet, use, Invariant($"{taken.Missing / need.Unit.Factor:0.###} {need.Unit.Word} more was wasted than is left of what was bought by then"));
        if (taken.Unpriced > 0)
            SuppliesLedger.Gap(sheet, use, "it was bought without a price");
    }

    // False where what was counted cannot be compared with what was bought.
    private bool Count(CountedStock count, DateOnly from, bool isFirst, DateOnly? before)
    {
        Can[] there = [.. cans.Where(can => can.Since <= count.Day)];
        Can[] holding = [.. there.Where(can => can.HoldsAnything)];
        string item = count.Row.Item;
        if (count.IsAllGone)
        {
            Spread(holding.Select(can => can.TakeAll()), "counted empty");
            shelf.Count(item, count.Day);
            return true;
        }

        Can[] measured = [.. there.Where(can => can.Bought is not null)];
        string[] measures = [.. measured.Select(can => can.Unit.Measure).Distinct()];
        if (measures.Length > 1 || holding.Any(can => can.Quantity is null)
            || (measures.Length == 1 && count.In(measures[0]) is null) || count.ByMeasure.Count > 1)
        {
            string bought = holding.Any(can => can.Quantity is null) ? "supplies.csv does not say how much of it was bought"
                : $"it was bought in {string.Join(" and ", there.Select(can => can.Purchase.Unit ?? "no unit").Distinct())}, and the two do not convert";
            sheet.Notes.Add($"{SuppliesLedger.Where(Columns.Counts.File, count.Row.Row)}what is left of {item} cannot be compared: {bought}; the count counts for nothing.");
            return false;
        }

        var (left, unit) = count.ByMeasure.Values.FirstOrDefault();
        SupplyAccount account = new(sheet.Log.Workshop.Costing, sheet.Currency);
        foreach (Can can in measured)
            account.Buy(can);
        // Used up is what was there less what is left; what was found again beyond that is a gain.
        if (account.Quantity > left * (1 + SupplyAccount.Dust))
            Spread(account.Take(account.Quantity - left).Parts, Invariant($"{left / unit.Factor:0.###} {unit.Word} counted").Replace("  ", " ", StringComparison.Ordinal));
        else
            SuppliesLedger.Count(sheet, shelf, losses, account, count, left, unit, cans[0].Since, before, "newest first");
        shelf.Count(item, count.Day);
        return true;

        void Spread(IEnumerable<CanPart> taken, string counted)
        {
            CanPart[] parts = [.. taken];
            if (parts.Length == 0)
                return;
            ImmutableArray<WorkShare> work = Worked(from, count.Day.AddDays(1), isFirst);
            if (work.IsEmpty)
            {
                Lose(parts, counted);
                return;
            }

            if (parts.All(part => part.Can.IsPriced))
                (closedCost, closedWork) = (closedCost + parts.Sum(part => part.Value), closedWork + work.Sum(share => share.Weight));
            else
                AddGaps(item, work);
            foreach (CanPart part in parts)
                Charge(part, work, Invariant($"until {count.Day:yyyy-MM-dd}, when there was {counted}"));
        }

        void Lose(CanPart[] parts, string counted)
        {
            foreach (CanPart part in parts)
                shelf.Leave(part, count.Day, CanEnd.CountedAway);
            decimal cost = parts.Sum(part => part.Value);
            if (cost != 0)
                losses.Differ(new(item, count.Day, before, cans[0].Since, cost, SupplyLosses.AtTheCount(item, true), new(
                    Columns.Counts.File, count.Row.Row, $"There was {counted}, and no piece was worked on that could have used the rest up.")));
        }
    }

    private SupplyStock SpreadUntilTheNext(DateOnly from, bool isFirst)
    {
        Can[] holding = [.. cans.Where(can => can.HoldsAnything)];
        DateOnly[] days = [.. holding.Select(From).Distinct()];
        int waiting = 0;
        int done = 0;
        for (int k = 0; k < days.Length; k++)
        {
            bool isOpen = k == days.Length - 1;
            ImmutableArray<WorkShare> work = Worked(
                days[waiting], isOpen ? DateOnly.MaxValue : days[k + 1], waiting == 0 && isFirst);
            // Where no piece that bears it was worked on before the next purchase, that purchase continues this one.
            if (work.IsEmpty && !isOpen)
                continue;
            Can[] batch = [.. holding.Skip(done).TakeWhile(can => From(can) <= days[k])];
            done += batch.Length;
            decimal hours = work.Sum(share => share.Weight);
            decimal cost = batch.Sum(can => can.Value);
            decimal charged = work.IsEmpty ? 0
                : isOpen && closedWork > 0 ? Math.Min(cost, sheet.Currency.Round(closedCost * hours / closedWork))
                : cost;
            bool isPriced = batch.All(can => can.IsPriced);
            if (!isOpen && isPriced)
                (closedCost, closedWork) = (closedCost + cost, closedWork + hours);
            if (!isPriced)
                AddGaps(batch[0].Purchase.Item, work);
            foreach (Can can in batch)
            {
                decimal part = Math.Min(can.Value, charged);
                charged -= part;
                bool isAll = part == can.Value && !(isOpen && part == 0);
                CanPart taken = isAll ? can.TakeAll() : new(can, can.Quantity * (part == 0 ? 0 : part / can.Value), part);
                if (!isAll)
                {
                    // Of what has no price nobody can tell how much of the last can is left.
                    can.Quantity = can.Value > 0 || work.IsEmpty ? can.Quantity - taken.Quantity : null;
                    can.Value -= part;
                }

                IsGuessed |= part > 0;
                Charge(taken, work, isOpen ? "since then" : "until the next purchase");
            }

            waiting = k + 1;
        }

        SupplyPurchase last = cans[^1].Purchase;
        bool isKnown = cans.All(can => can.Quantity is not null && can.Unit.Measure == cans[^1].Unit.Measure);
        return new(
            last.Item, isKnown ? cans.Sum(can => can.Quantity!.Value) / cans[^1].Unit.Factor : null, last.Unit,
            cans.Sum(can => can.Value), last.BoughtOn);

        // What was counted goes on from the day after.
        DateOnly From(Can can) => can.Since > from ? can.Since : from;
    }

    private ImmutableArray<WorkShare> Worked(DateOnly from, DateOnly before, bool withUndated)
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

    private void AddGaps(string item, ImmutableArray<WorkShare> work)
    {
        CostGap gap = new(CostKind.Supplies, $"What {item} cost is not written down, and a share of it is unknown.");
        foreach (WorkShare share in work.Where(share => !sheet.Gaps[share.Index].Contains(gap)))
            sheet.Gaps[share.Index].Add(gap);
    }

    private void Charge(CanPart part, ImmutableArray<WorkShare> work, string until)
    {
        if (work.IsEmpty || part is { Value: 0, Quantity: 0 })
            return;
        SupplyPurchase purchase = part.Can.Purchase;
        if (part.Value == 0)
        {
            shelf.Leave(part, work.Max(share => share.LastDay), CanEnd.Used);
            return;
        }

        string rule = Invariant(
            $"{part.Value} of {purchase.Price}, shared by hours over the {work.Length} pieces worked on {until}; no uses of it are written down.");
        int withdrawn = shelf.Withdraw(part, CanEnd.Used);
        sheet.Share(
            CostKind.Supplies, part.Value, work, purchase.BoughtOn, purchase.Item, new(Columns.Supplies.File, purchase.Row, rule),
            (place, line) => shelf.Leave(withdrawn, sheet.Stays[place].AroseOn(line.Date), line.Amount));
    }
}
