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

    private readonly List<Layer> layers = [];

    private sealed record Layer(decimal Quantity, decimal? Value, int Row);

    // Kept as running sums: a shelf of thousands of cans must not be counted at every use.
    public decimal Quantity { get; private set; }

    public decimal Value { get; private set; }

    public void Buy(decimal quantity, decimal? value, int row)
    {
        Quantity += quantity;
        Value += value ?? 0;
        int pooled = method == CostingMethod.Average
            ? layers.FindIndex(layer => layer.Value is null == value is null)
            : -1;
        if (pooled >= 0)
            layers[pooled] = new(layers[pooled].Quantity + quantity, layers[pooled].Value + value, 0);
        else
            layers.Add(new(quantity, value, row));
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
            for (int i = 0; i < layers.Count; i++)
                TakePart(i, layers[i].Quantity * quantity / there, ref cost, ref unpriced);
        }
        else
        {
            decimal need = quantity;
            int taken = 0;
            while (need > 0 && layers.Count > 0)
            {
                taken++;
                decimal part = Math.Min(need, layers[0].Quantity);
                need -= part;
                if (layers[0].Quantity <= part * (1 + Dust))
                {
                    cost += layers[0].Value ?? 0;
                    unpriced += layers[0].Value is null ? layers[0].Quantity : 0;
                    layers.RemoveAt(0);
                }
                else
                {
                    TakePart(0, part, ref cost, ref unpriced);
                }
            }

            rows = taken == 1 ? [rows[0]] : rows;
        }

        Value -= cost;
        Quantity = layers.Count == 0 ? 0 : Quantity - quantity;
        return new(cost, unpriced, missing, rows is [> 0] ? rows[0] : null);
    }

    private void TakePart(int i, decimal part, ref decimal cost, ref decimal unpriced)
    {
        Layer layer = layers[i];
        decimal? value = layer.Value is { } left ? currency.Round(left * part / layer.Quantity) : null;
        cost += value ?? 0;
        unpriced += value is null ? part : 0;
        layers[i] = layer with { Quantity = layer.Quantity - part, Value = layer.Value - value };
    }
}
