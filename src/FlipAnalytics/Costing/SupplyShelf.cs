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

    private readonly List<(CanPart Part, CanEnd End)> withdrawn = [];
    private readonly List<Movement> movements = [];
    private readonly Dictionary<string, SortedSet<DateOnly>> counts = new(StringComparer.OrdinalIgnoreCase);

    public SupplyShelf(ImmutableArray<SupplyPurchase> purchases) =>
        Cans = [.. purchases.Select((purchase, place) => new Can(place, purchase))];

    // A large log has millions of shares of parts. What is asked for on a day before the can was there leaves it as soon as it is.
    private readonly record struct Movement(int Part, DateOnly Day, DateOnly Asked, decimal Cost);

    /// <summary>The cans, in the order of the log.</summary>
    public ImmutableArray<Can> Cans { get; }

    /// <summary>Writes down that a part left its can, on a day or as soon as the can was there.</summary>
    public void Leave(CanPart part, DateOnly? day, CanEnd end) => Leave(Withdraw(part, end), day, part.Value);

    /// <summary>Writes down that a share of a part left its can, on a day or as soon as the can was there.</summary>
    /// <param name="withdrawn">The part, as <see cref="Withdraw"/> numbers it.</param>
    /// <param name="day">The day; null where unknown.</param>
    /// <param name="cost">What the share cost.</param>
    public void Leave(int withdrawn, DateOnly? day, decimal cost)
    {
        DateOnly since = this.withdrawn[withdrawn].Part.Can.Since;
        DateOnly left = day > since ? day.Value : since;
        movements.Add(new(withdrawn, left, day ?? left, cost));
    }

    /// <summary>A part that is about to leave its can, all at once or share by share.</summary>
    public int Withdraw(CanPart part, CanEnd end)
    {
        withdrawn.Add((part, end));
        return withdrawn.Count - 1;
    }

    /// <summary>Writes down that a count found a part that had left its can.</summary>
    public void Find(CanPart part, DateOnly day)
    {
        part.Can.Since = day > part.Can.Since ? day : part.Can.Since;
        Leave(new(part.Can, -part.Quantity, -part.Value), part.Can.Since, CanEnd.CountedAway);
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
        .Where(movement => movement.Asked < movement.Day && movement.Cost != 0 && withdrawn[movement.Part].End == CanEnd.Used)
        .Select(movement => (withdrawn[movement.Part].Part.Can, movement.Asked, movement.Day, movement.Cost));

    /// <summary>What pieces took from the cans on the days chosen.</summary>
    public decimal UsedOn(Func<DateOnly, bool> isChosen)
    {
        decimal used = 0;
        foreach (Movement movement in movements)
        {
            if (withdrawn[movement.Part].End == CanEnd.Used && isChosen(movement.Day))
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
            (CanPart part, CanEnd kind) = withdrawn[movement.Part];
            ref var end = ref ends[part.Can.Place * 3 + (int)kind];
            decimal quantity = part.Value == 0 ? part.Quantity ?? 0 : (part.Quantity ?? 0) * (movement.Cost / part.Value);
            end = (end.Quantity + quantity, end.Cost + movement.Cost);
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
