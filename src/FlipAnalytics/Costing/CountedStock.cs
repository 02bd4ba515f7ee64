using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What a count of one item found on a day, in the measures it was counted in.</summary>
/// <param name="Day">The day; what was bought and used on it is in the books already.</param>
/// <param name="ByMeasure">Quantities by measure, with the unit of each.</param>
/// <param name="IsEmpty">Whether nothing is left in any other measure either.</param>
/// <param name="Row">The row; the last of several that add up.</param>
internal sealed record CountedStock(
    DateOnly Day, ImmutableSortedDictionary<string, (decimal Quantity, SupplyUnit Unit)> ByMeasure, bool IsEmpty, StockCount Row)
{
    /// <summary>The counts of an item by day.</summary>
    /// <param name="counts">Its rows.</param>
    /// <param name="cans">Its purchases; at least one.</param>
    public static ImmutableArray<CountedStock> Of(IEnumerable<StockCount> counts, IReadOnlyList<Can> cans)
    {
        Can known = cans.FirstOrDefault(can => can.Purchase.Unit is not null) ?? cans[0];
        return
        [
            .. counts.GroupBy(count => count.Date).OrderBy(day => day.Key).Select(day => new CountedStock(
                day.Key,
                day.Where(row => row.Quantity > 0 || row.Unit is not null)
                    .Select(row => (row.Quantity, Unit: UnitOf(row)))
                    .GroupBy(row => row.Unit.Measure)
                    .ToImmutableSortedDictionary(
                        measure => measure.Key,
                        measure => (measure.Sum(row => row.Quantity * row.Unit.Factor), measure.First().Unit),
                        StringComparer.Ordinal),
                day.Any(row => row.Quantity == 0 && row.Unit is null),
                day.Last())),
        ];

        // A word that a purchase uses means what it means there: an ounce may be of weight though a quart was bought too.
        SupplyUnit UnitOf(StockCount row) => row.Unit is not { } word ? known.Unit
            : cans.FirstOrDefault(can => word.Equals(can.Purchase.Unit, StringComparison.OrdinalIgnoreCase))?.Unit
                ?? SupplyUnit.Of(word, known.Unit.Measure);
    }

    /// <summary>What was counted in a measure; null where it was not counted.</summary>
    public decimal? In(string measure) =>
        ByMeasure.TryGetValue(measure, out var counted) ? counted.Quantity : IsEmpty ? 0 : null;

    /// <summary>Whether it says that nothing at all is left.</summary>
    public bool IsAllGone => IsEmpty && ByMeasure.Values.All(counted => counted.Quantity == 0);
}
