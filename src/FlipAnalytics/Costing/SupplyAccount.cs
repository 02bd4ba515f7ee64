using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What was taken from an account, or put back into it.</summary>
/// <param name="Parts">The cans it came from or went back to.</param>
/// <param name="Missing">Quantity beyond all that was there, or beyond all that was bought; its cost is unknown.</param>
internal sealed record Withdrawal(ImmutableArray<CanPart> Parts, decimal Missing)
{
    /// <summary>Its cost, in whole minor units.</summary>
    public decimal Cost { get; } = Parts.Sum(part => part.Value);

    /// <summary>Quantity of purchases without a price; its cost is unknown.</summary>
    public decimal Unpriced { get; } = Parts.Where(part => !part.Can.IsPriced).Sum(part => part.Quantity ?? 0);

    /// <summary>Line of the purchase it belongs to; null for several.</summary>
    public int? Row => Parts is [{ Can.Purchase.Row: > 0 and var row }] ? row : null;

    /// <summary>The day from which it can count.</summary>
    public DateOnly Since { get; } = Parts.Length == 0 ? DateOnly.MinValue : Parts.Max(part => part.Can.Since);
}

/// <summary>
/// Purchases of one supply in one measure, from which uses take. First in, first out: the oldest can first, a part of it at
/// its share of what is left of that can. Average: every can gives the same share of what is left of it, which comes to the
/// average cost of all that is there, moved on by every purchase. Each withdrawal is rounded to the minor unit and the rest
/// stays, so nothing is lost.
/// </summary>
internal sealed class SupplyAccount(CostingMethod method, Currency currency)
{
    /// <summary>A third of a can, three times, must empty it: quantities from coverage have 28 digits.</summary>
    public const decimal Dust = 0.000_000_001m;

    private readonly List<Can> cans = [];
    private int oldest;

    // Kept as running sums: a shelf of thousands of cans must not be counted at every use.
    public decimal Quantity { get; private set; }

    public decimal Value { get; private set; }

    /// <summary>Adds a can of known quantity.</summary>
    public void Buy(Can can)
    {
        cans.Add(can);
        Quantity += can.Quantity!.Value;
        Value += can.Value;
    }

    public Withdrawal Take(decimal quantity)
    {
        decimal there = Quantity;
        decimal missing = quantity > there * (1 + Dust) ? quantity - there : 0;
        bool takesAll = quantity * (1 + Dust) >= there;
        Withdrawal taken = new(
            takesAll ? [.. Holding().Select(can => can.TakeAll())]
                : method == CostingMethod.Average ? Alike(quantity, there) : OldestFirst(quantity),
            missing);
        Value -= taken.Cost;
        Quantity = takesAll ? 0 : there - quantity;
        while (oldest < cans.Count && cans[oldest].Quantity == 0)
            oldest++;
        return taken;
    }

    /// <summary>
    /// Puts back what was found, at what it had cost. First in, first out: into the can bought last first, since older ones
    /// were used up before it. Average: into all that hold something alike, and what does not fit as before.
    /// </summary>
    public Withdrawal PutBack(decimal quantity)
    {
        List<CanPart> parts = [];
        decimal rest = quantity;
        if (method == CostingMethod.Average && Quantity > 0)
        {
            decimal growth = quantity / Quantity;
            foreach (Can can in Holding())
                Return(can, can.Quantity!.Value * growth);
        }

        for (int i = cans.Count - 1; i >= 0 && rest > quantity * Dust; i--)
            Return(cans[i], rest);
        Quantity += parts.Sum(part => part.Quantity!.Value);
        Value += parts.Sum(part => part.Value);
        oldest = 0;
        while (oldest < cans.Count && cans[oldest].Quantity == 0)
            oldest++;
        return new([.. parts], rest > quantity * Dust ? rest : 0);

        void Return(Can can, decimal wanted)
        {
            decimal part = Math.Min(Math.Min(wanted, rest), can.Bought!.Value - can.Quantity!.Value);
            if (part <= 0)
                return;
            CanPart back = can.PutBack(part, currency);
            parts.Add(back);
            rest -= back.Quantity!.Value;
        }
    }

    private IEnumerable<Can> Holding() => cans.Skip(oldest).Where(can => can.Quantity > 0);

    private ImmutableArray<CanPart> OldestFirst(decimal quantity)
    {
        var parts = ImmutableArray.CreateBuilder<CanPart>(1);
        decimal need = quantity;
        for (int i = oldest; need > 0 && i < cans.Count; i++)
        {
            Can can = cans[i];
            if (can.Quantity == 0)
                continue;
            decimal part = Math.Min(need, can.Quantity!.Value);
            need -= part;
            parts.Add(can.Quantity <= part * (1 + Dust) ? can.TakeAll() : can.Take(part, currency));
        }

        return parts.DrainToImmutable();
    }

    // Of all that has a price the cost is rounded once; what is left is shared out by what each can still holds at its own
    // price, so that no can keeps a cent that it has no paint for.
    private ImmutableArray<CanPart> Alike(decimal quantity, decimal there)
    {
        Can[] all = [.. Holding()];
        decimal value = all.Sum(can => can.Value);
        decimal left = value - currency.Round(value * quantity / there);
        decimal[] kept = [.. all.Select(can => can.Quantity!.Value - can.Quantity.Value * quantity / there)];
        decimal[] worth = [.. all.Select((can, i) => can.Price * kept[i] / can.Bought!.Value)];
        decimal total = worth.Sum();
        var values = new decimal[all.Length];
        decimal running = 0;
        decimal given = 0;
        for (int i = 0; i < all.Length && total > 0; i++)
        {
            running += worth[i];
            values[i] = Math.Clamp(currency.Round(left * running / total) - given, 0, all[i].Value);
            given += values[i];
        }

        for (int i = all.Length - 1; i >= 0 && given < left; i--)
        {
            decimal more = Math.Min(left - given, all[i].Value - values[i]);
            (values[i], given) = (values[i] + more, given + more);
        }

        var parts = ImmutableArray.CreateBuilder<CanPart>(all.Length);
        for (int i = 0; i < all.Length; i++)
        {
            Can can = all[i];
            // What is left of a can for ever alike never comes to nothing by itself.
            bool isDust = values[i] == 0 && kept[i] <= can.Bought * Dust;
            parts.Add(new(can, isDust ? can.Quantity : can.Quantity - kept[i], can.Value - values[i]));
            (can.Quantity, can.Value) = (isDust ? 0 : kept[i], values[i]);
        }

        return parts.DrainToImmutable();
    }
}
