using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace FlipAnalytics;

/// <summary>What became of a part of a can.</summary>
internal enum CanEnd
{
    /// <summary>A piece used it up.</summary>
    Used,

    /// <summary>It went to waste.</summary>
    Wasted,

    /// <summary>A count did not find it, or found it again.</summary>
    CountedAway,
}

/// <summary>The cans of a log, one for each row of <c>supplies.csv</c>, and what left each of them on which day.</summary>
internal sealed class SupplyShelf
{
    private const int QuantityDigits = 9;

    private readonly List<Movement> movements = [];
    private readonly Dictionary<string, SortedSet<DateOnly>> counts = new(StringComparer.OrdinalIgnoreCase);

    public SupplyShelf(ImmutableArray<SupplyPurchase> purchases) =>
        Cans = [.. purchases.Select((purchase, place) => new Can(place, purchase))];

    private readonly record struct Movement(int Can, DateOnly Day, decimal? Quantity, decimal Cost, CanEnd End, DateOnly? Asked);

    /// <summary>The cans, in the order of the log.</summary>
    public ImmutableArray<Can> Cans { get; }

    /// <summary>Writes down that a part left its can, on a day or as soon as the can was there.</summary>
    public void Leave(CanPart part, DateOnly? day, CanEnd end) => movements.Add(new(
        part.Can.Place, day > part.Can.Since ? day.Value : part.Can.Since, part.Quantity, part.Value, end, day));

    /// <summary>Writes down that a count found a part that had left its can.</summary>
    public void Find(CanPart part, DateOnly day)
    {
        part.Can.Since = day > part.Can.Since ? day : part.Can.Since;
        movements.Add(new(part.Can.Place, part.Can.Since, -part.Quantity, -part.Value, CanEnd.CountedAway, day));
    }

    /// <summary>Writes down that an item was counted.</summary>
    public void Count(string item, DateOnly day)
    {
        if (!counts.TryGetValue(item, out SortedSet<DateOnly>? days))
            counts.Add(item, days = []);
        days.Add(day);
    }

    /// <summary>Day on which an item was last counted, up to a day; null where it never was.</summary>
    public DateOnly? LastCount(string item, DateOnly day) =>
        counts.TryGetValue(item, out SortedSet<DateOnly>? days) && days.GetViewBetween(DateOnly.MinValue, day) is { Count: > 0 } until
            ? until.Max : null;

    /// <summary>
    /// What pieces bear from a day on which the can was not there yet, and the day from which it can have left: a piece that had
    /// left before the can was bought.
    /// </summary>
    public IEnumerable<(Can Can, DateOnly Borne, DateOnly Left, decimal Cost)> UsedTooEarly() => movements
        .Where(movement => movement is { End: CanEnd.Used, Cost: not 0 } && movement.Asked < movement.Day)
        .Select(movement => (Cans[movement.Can], movement.Asked!.Value, movement.Day, movement.Cost));

    /// <summary>What pieces took from the cans on the days chosen.</summary>
    public decimal UsedOn(Func<DateOnly, bool> isChosen)
    {
        decimal used = 0;
        foreach (Movement movement in movements)
        {
            if (movement.End == CanEnd.Used && isChosen(movement.Day))
                used += movement.Cost;
        }

        return used;
    }

    /// <summary>Each can that was there on the evening of a day, in the order of the log.</summary>
    public ImmutableArray<SupplyCan> On(DateOnly day)
    {
        var ends = new (decimal Quantity, decimal Cost)[Cans.Length * 3];
        foreach (Movement movement in CollectionsMarshal.AsSpan(movements))
        {
            if (movement.Day > day)
                continue;
            ref var end = ref ends[movement.Can * 3 + (int)movement.End];
            end = (end.Quantity + (movement.Quantity ?? 0), end.Cost + movement.Cost);
        }

        return [.. Cans.Where(can => !(can.Purchase.BoughtOn > day)).Select(can => Of(can, ends.AsSpan(can.Place * 3, 3)))];
    }

    private static SupplyCan Of(Can can, ReadOnlySpan<(decimal Quantity, decimal Cost)> ends)
    {
        SupplyPurchase purchase = can.Purchase;
        // Rounded as they add up, so that the parts of an empty can never come to more than was bought.
        int digits = Math.Max(QuantityDigits, (int)(purchase.Quantity ?? 0).Trimmed().Scale);
        decimal? used = UpTo(CanEnd.Used, ends);
        decimal? wasted = (UpTo(CanEnd.Wasted, ends) - used)?.Trimmed();
        decimal? away = (UpTo(CanEnd.CountedAway, ends) - used - wasted)?.Trimmed();
        return new(
            purchase.Item, purchase.BoughtOn, can.Bought is null ? null : purchase.Quantity, purchase.Unit,
            used, wasted, away, (purchase.Quantity - used - wasted - away)?.Trimmed(),
            purchase.Price,
            ends[(int)CanEnd.Used].Cost, ends[(int)CanEnd.Wasted].Cost, ends[(int)CanEnd.CountedAway].Cost,
            can.Price - ends[(int)CanEnd.Used].Cost - ends[(int)CanEnd.Wasted].Cost - ends[(int)CanEnd.CountedAway].Cost,
            purchase.Row);

        decimal? UpTo(CanEnd last, ReadOnlySpan<(decimal Quantity, decimal Cost)> parts)
        {
            if (can.Quantity is null)
                return null;
            decimal sum = 0;
            for (int i = 0; i <= (int)last; i++)
                sum += parts[i].Quantity;
            return decimal.Round(sum / can.Unit.Factor, digits).Trimmed();
        }
    }
}
