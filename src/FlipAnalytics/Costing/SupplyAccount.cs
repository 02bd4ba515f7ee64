namespace FlipAnalytics;

/// <summary>What a use took from an account.</summary>
/// <param name="Cost">Cost of what was taken, in whole minor units.</param>
/// <param name="Unpriced">Quantity taken of purchases without a price; its cost is unknown.</param>
/// <param name="Missing">Quantity used beyond all that was bought; its cost is unknown.</param>
/// <param name="Row">Line of the purchase it was taken from; null for several.</param>
internal sealed record Withdrawal(decimal Cost, decimal Unpriced, decimal Missing, int? Row);

/// <summary>
/// Purchases of one supply in one measure, from which uses take. First in, first out: the oldest purchase first, a
/// part of it at its share of what is left of that purchase. Average: at the average of all that is there, moved on by
/// every purchase. Each withdrawal is rounded to the minor unit and the rest stays, so nothing is lost.
/// </summary>
internal sealed class SupplyAccount(CostingMethod method, Currency currency)
{
    // A third of a can, three times, must empty it: quantities from coverage have 28 digits.
    private const decimal Dust = 0.000_000_001m;

    private readonly LinkedList<Layer> layers = [];

    private sealed record Layer(decimal Quantity, decimal? Value, int Row);

    // Kept as running sums: a shelf of thousands of cans must not be counted at every use.
    public decimal Quantity { get; private set; }

    public decimal Value { get; private set; }

    public void Buy(decimal quantity, decimal? value, int row)
    {
        Quantity += quantity;
        Value += value ?? 0;
        LinkedListNode<Layer>? pooled = method == CostingMethod.Average ? layers.First : null;
        while (pooled is not null && pooled.Value.Value is null != value is null)
            pooled = pooled.Next;
        if (pooled is not null)
            pooled.Value = new(pooled.Value.Quantity + quantity, pooled.Value.Value + value, 0);
        else
            layers.AddLast(new Layer(quantity, value, row));
    }

    public Withdrawal Take(decimal quantity)
    {
        decimal there = Quantity;
        bool takesAll = quantity * (1 + Dust) >= there;
        decimal missing = quantity > there * (1 + Dust) ? quantity - there : 0;
        int[] rows = [.. layers.Select(layer => layer.Row).Take(2)];
        decimal cost = 0;
        decimal unpriced = 0;
        if (takesAll)
        {
            cost = Value;
            unpriced = layers.Where(layer => layer.Value is null).Sum(layer => layer.Quantity);
            layers.Clear();
        }
        else if (method == CostingMethod.Average)
        {
            // What has no price is used alike with the rest.
            for (LinkedListNode<Layer>? node = layers.First; node is not null; node = node.Next)
                TakePart(node, node.Value.Quantity * quantity / there, ref cost, ref unpriced);
        }
        else
        {
            decimal need = quantity;
            int taken = 0;
            while (need > 0 && layers.First is { } oldest)
            {
                taken++;
                decimal part = Math.Min(need, oldest.Value.Quantity);
                need -= part;
                if (oldest.Value.Quantity <= part * (1 + Dust))
                {
                    cost += oldest.Value.Value ?? 0;
                    unpriced += oldest.Value.Value is null ? oldest.Value.Quantity : 0;
                    layers.RemoveFirst();
                }
                else
                {
                    TakePart(oldest, part, ref cost, ref unpriced);
                }
            }

            rows = taken == 1 ? [rows[0]] : rows;
        }

        Value -= cost;
        Quantity = layers.Count == 0 ? 0 : Quantity - quantity;
        return new(cost, unpriced, missing, rows is [> 0] ? rows[0] : null);
    }

    private void TakePart(LinkedListNode<Layer> node, decimal part, ref decimal cost, ref decimal unpriced)
    {
        Layer layer = node.Value;
        decimal? value = layer.Value is { } left ? currency.Round(left * part / layer.Quantity) : null;
        cost += value ?? 0;
        unpriced += value is null ? part : 0;
        node.Value = layer with { Quantity = layer.Quantity - part, Value = layer.Value - value };
    }
}
