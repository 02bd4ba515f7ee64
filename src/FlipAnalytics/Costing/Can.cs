namespace FlipAnalytics;

/// <summary>A purchase of a supply while the books are written: what was bought and what is left of it.</summary>
internal sealed class Can
{
    private bool isEmptied;

    public Can(int place, SupplyPurchase purchase)
    {
        Place = place;
        Purchase = purchase;
        Unit = string.IsNullOrWhiteSpace(purchase.Unit) ? SupplyNeed.Bare : SupplyUnit.Of(purchase.Unit);
        Bought = purchase.Quantity > 0 ? purchase.Quantity * Unit.Factor : null;
        Quantity = Bought;
        Value = Price;
        Since = purchase.BoughtOn ?? DateOnly.MinValue;
    }

    /// <summary>Place of the purchase in the log.</summary>
    public int Place { get; }

    public SupplyPurchase Purchase { get; }

    public SupplyUnit Unit { get; }

    /// <summary>What was bought, in the measure of <see cref="Unit"/>; null where it is not written down.</summary>
    public decimal? Bought { get; }

    /// <summary>What was paid; 0 where it is unknown.</summary>
    public decimal Price => Purchase.Price ?? 0;

    public bool IsPriced => Purchase.Price is not null;

    /// <summary>What is left, in the measure of <see cref="Unit"/>; null where nobody can tell.</summary>
    public decimal? Quantity { get; set; }

    /// <summary>What the rest cost.</summary>
    public decimal Value { get; set; }

    /// <summary>The earliest day from which what leaves the can may count: bought, or found again, by then.</summary>
    public DateOnly Since { get; set; }

    /// <summary>Whether anything is left, as far as the books can tell.</summary>
    public bool HoldsAnything => Value > 0 || (Quantity is { } left ? left > 0 : !isEmptied);

    /// <summary>Takes out all that is left.</summary>
    public CanPart TakeAll()
    {
        CanPart all = new(this, Quantity, Value);
        isEmptied = true;
        (Quantity, Value) = (Quantity is null ? null : 0, 0);
        return all;
    }

    /// <summary>Takes out a part at its share of what is left.</summary>
    /// <param name="quantity">Less than is left.</param>
    /// <param name="currency">Currency to round to.</param>
    public CanPart Take(decimal quantity, Currency currency)
    {
        CanPart part = new(this, quantity, currency.Round(Value * quantity / Quantity!.Value));
        (Quantity, Value) = (Quantity - quantity, Value - part.Value);
        return part;
    }

    /// <summary>Puts back a part of what was taken out, at what it cost.</summary>
    /// <param name="quantity">At most what was taken out.</param>
    /// <param name="currency">Currency to round to.</param>
    public CanPart PutBack(decimal quantity, Currency currency)
    {
        decimal taken = Bought!.Value - Quantity!.Value;
        bool isAll = quantity * (1 + SupplyAccount.Dust) >= taken;
        CanPart part = new(
            this, isAll ? taken : quantity, isAll ? Price - Value : currency.Round((Price - Value) * quantity / taken));
        (Quantity, Value) = (Quantity + part.Quantity, Value + part.Value);
        return part;
    }
}

/// <summary>A part of a can.</summary>
/// <param name="Can">The can.</param>
/// <param name="Quantity">How much, in the can's measure; null where unknown.</param>
/// <param name="Value">What it cost, in whole minor units; 0 where the can has no price.</param>
internal readonly record struct CanPart(Can Can, decimal? Quantity, decimal Value);
