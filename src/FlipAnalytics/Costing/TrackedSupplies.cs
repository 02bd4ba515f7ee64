using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// A supply whose uses are written down: each use takes from the cans, each count puts the books right. An account for each
/// measure it was bought in.
/// </summary>
/// <remarks>
/// The first can counts as there from the beginning, since nothing can be used before it is bought and a day may be off; what
/// is used before it is said, and leaves the can when it is bought, so that no stock is ever below zero.
/// </remarks>
internal sealed class TrackedSupplies
{
    private sealed record Shelf(SupplyAccount Account, Can[] Cans)
    {
        public int Next { get; set; }

        /// <summary>Buys what was bought up to a day.</summary>
        public void BuyUntil(DateOnly day)
        {
            for (; Next < Cans.Length && Cans[Next].Since <= day; Next++)
                Account.Buy(Cans[Next]);
        }

        public void BuyFirst()
        {
            if (Next == 0)
                Account.Buy(Cans[Next++]);
        }
    }

    private readonly CostSheet sheet;
    private readonly SupplyShelf shelf;
    private readonly SupplyLosses losses;
    private readonly SupplyPurchase[] purchases;
    private readonly Dictionary<string, Shelf> shelves;
    private readonly string method;
    private readonly List<SupplyUse> early = [];

    /// <summary>Opens the accounts of an item.</summary>
    /// <param name="sheet">The books.</param>
    /// <param name="shelf">All cans.</param>
    /// <param name="losses">What no piece carries.</param>
    /// <param name="cans">The cans of the item whose quantity is known, oldest first.</param>
    public TrackedSupplies(CostSheet sheet, SupplyShelf shelf, SupplyLosses losses, IReadOnlyList<Can> cans)
    {
        (this.sheet, this.shelf, this.losses) = (sheet, shelf, losses);
        purchases = [.. cans.Select(can => can.Purchase)];
        CostingMethod costing = sheet.Log.Workshop.Costing;
        shelves = cans.GroupBy(can => can.Unit.Measure)
            .ToDictionary(measure => measure.Key, measure => new Shelf(new(costing, sheet.Currency), [.. measure]));
        method = costing == CostingMethod.Fifo ? "first in, first out" : "at the average cost";
    }

    /// <summary>Writes uses and counts in the order of their days and returns what is left.</summary>
    /// <param name="uses">Uses of the item by day, waste included.</param>
    /// <param name="counts">Its counts by day.</param>
    public IEnumerable<SupplyStock> Write(IReadOnlyList<SupplyUse> uses, IReadOnlyList<CountedStock> counts)
    {
        int next = 0;
        DateOnly? before = null;
        foreach (SupplyUse use in uses)
        {
            CountUntil(SuppliesLedger.DayOf(sheet, use));
            Use(use);
        }

        CountUntil(DateOnly.MaxValue);
        TellOfEarlyUses();
        foreach (Shelf own in shelves.Values)
            own.BuyUntil(DateOnly.MaxValue);
        return shelves.Values.Select(own => new SupplyStock(
            own.Cans[^1].Purchase.Item,
            own.Account.Quantity / own.Cans[^1].Unit.Factor,
            own.Cans[^1].Purchase.Unit,
            own.Account.Value,
            own.Cans[^1].Purchase.BoughtOn));

        // What was used on the day of a count is off before what is left is counted.
        void CountUntil(DateOnly day)
        {
            for (; next < counts.Count && counts[next].Day < day; next++)
            {
                Count(counts[next], before);
                before = counts[next].Day;
            }
        }
    }

    private void Use(SupplyUse use)
    {
        int? place = sheet.PlaceOf(use.PieceId);
        Piece? piece = place is { } known ? sheet.Log.Pieces[known] : null;
        DateOnly day = SuppliesLedger.DayOf(sheet, use);
        if (purchases.Length == 0)
            return;
        if (SupplyNeed.Of(use with { Date = day }, purchases, piece, sheet.Log.Workshop.LengthUnit, out string lack) is not { } need)
        {
            SuppliesLedger.Gap(sheet, use, lack);
            return;
        }

        if (!shelves.TryGetValue(need.Unit.Measure, out Shelf? own))
        {
            SuppliesLedger.Gap(
                sheet, use, $"it was used in {need.Unit.Word} but bought in {Units()}, and the two do not convert");
            return;
        }

        if (own.Next == 0 && own.Cans[0].Since > day)
            early.Add(use);
        own.BuyUntil(day);
        own.BuyFirst();
        Withdrawal taken = own.Account.Take(need.Quantity);
        string rule = $"{Capital(need.Rule)}; taken from {From(taken)}, {method}.";
        if (place is { } at)
        {
            DateOnly? date = day == DateOnly.MaxValue ? null : day;
            if (taken.Cost != 0 || taken is { Unpriced: 0, Missing: 0 })
                sheet.Lines[at].Add(new(CostKind.Supplies, date, taken.Cost, use.Item, new(Columns.Uses.File, use.Row, rule)));
            DateOnly arose = sheet.Stays[at].AroseOn(date);
            foreach (CanPart part in taken.Parts)
                shelf.Leave(part, arose, CanEnd.Used);
        }
        else
        {
            SuppliesLedger.Waste(losses, shelf, use, taken, rule);
        }

        if (taken.Missing > 0)
        {
            SuppliesLedger.Gap(sheet, use, Invariant(
                $"{taken.Missing / need.Unit.Factor:0.###} {need.Unit.Word} more was used by then than was bought, and what was not bought has no cost"));
        }

        if (taken.Unpriced > 0)
            SuppliesLedger.Gap(sheet, use, "it was bought without a price");
    }

    private void Count(CountedStock count, DateOnly? before)
    {
        string where = SuppliesLedger.Where(Columns.Counts.File, count.Row.Row);
        foreach (var (measure, counted) in count.ByMeasure.Where(counted => !shelves.ContainsKey(counted.Key)))
        {
            sheet.Notes.Add(purchases.Length == 0
                ? $"{where}{count.Row.Item} was counted, but supplies.csv has no quantity of it; the count counts for nothing."
                : $"{where}{count.Row.Item} was counted in {counted.Unit.Word} but bought in {Units()}, and the two do not convert; the count counts for nothing.");
        }

        foreach (var (measure, own) in shelves)
        {
            own.BuyUntil(count.Day);
            if (count.In(measure) is not { } left)
                continue;
            SupplyUnit unit = count.ByMeasure.TryGetValue(measure, out var counted) ? counted.Unit : own.Cans[0].Unit;
            SuppliesLedger.Count(sheet, shelf, losses, own.Account, count, left, unit, own.Cans[0].Since, before, method);
        }

        if (shelves.Keys.All(measure => count.In(measure) is not null))
            shelf.Count(count.Row.Item, count.Day);
    }

    private void TellOfEarlyUses()
    {
        if (early.Count == 0)
            return;
        string rows = early.Count == 1 ? "" : Invariant($" and {early.Count - 1} more");
        sheet.Notes.Add(Invariant(
            $"{SuppliesLedger.Where(Columns.Uses.File, early[0].Row)}{early[0].Item}{rows} was used before the day it was first bought, {purchases[0].BoughtOn:yyyy-MM-dd}; it is taken from that purchase. Write down the purchase that came before, or correct the day."));
    }

    private string Units() => string.Join(", ", purchases.Select(p => p.Unit ?? "no unit").Distinct());

    private static string From(Withdrawal taken) =>
        taken.Row is { } row ? Invariant($"line {row} of {Columns.Supplies.File}") : Columns.Supplies.File;

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
