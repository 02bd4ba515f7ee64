using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A second-hand piece on offer in the demo town, as the person sees it and as it truly is.</summary>
internal sealed record DemoOffer
{
    /// <summary>
    /// What the person sees: type, count, size, material, condition, planned colour and finish, sticker price; some
    /// sizes and colours are unknown at the time.
    /// </summary>
    public required Piece Seen { get; init; }

    /// <summary>What it truly is.</summary>
    public required DemoFacts Facts { get; init; }

    /// <summary>What the store asks, in USD.</summary>
    public required decimal StickerPrice { get; init; }

    /// <summary>Day it is taken to be sold: 3 weeks of work and the mean days on market after the offer.</summary>
    public required DateOnly SoldOn { get; init; }

    /// <summary>The true most to pay given all facts (<see cref="DemoMarket.AffordablePrice"/>), in USD.</summary>
    public required double AffordablePrice { get; init; }

    /// <summary>The true most to pay given only what is seen, in USD; the two agree where everything is seen.</summary>
    public required double AffordablePriceAsSeen { get; init; }

    /// <summary>Mean sale price given all facts, in USD.</summary>
    public required double ExpectedSalePrice { get; init; }

    /// <summary>Mean hours given all facts.</summary>
    public required double ExpectedHours { get; init; }

    /// <summary>Mean supplies given all facts, in USD.</summary>
    public required double ExpectedSupplies { get; init; }

    /// <summary>One draw of the sale price, should it be bought, in USD.</summary>
    public required double DrawnSalePrice { get; init; }

    /// <summary>One draw of its hours, which that sale price goes with.</summary>
    public required double DrawnHours { get; init; }

    /// <summary>One draw of its supplies, in USD.</summary>
    public required double DrawnSupplies { get; init; }
}

internal sealed partial record DemoMarket
{
    // Below this a multiple of the most to pay would be no price a store writes on a sticker.
    private const double SmallestStickerBase = 8;

    /// <summary>
    /// Offers of all kinds, drawn as the log's pieces are. Where the true most to pay V is 8 or more, the sticker price
    /// is V·exp(U) with U uniform from −1.2 to 1.2: bargains and traps alike. Else it is uniform from 2 to 25.
    /// </summary>
    /// <param name="count">How many, zero or more.</param>
    /// <param name="seed">Any number; the same gives the same offers.</param>
    /// <param name="date">Day of the offers; <see cref="DemoLog.LastDay"/> where null.</param>
    public ImmutableArray<DemoOffer> Offers(int count, ulong seed, DateOnly? date = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        DateOnly day = date ?? DemoLog.LastDay;
        return [.. Enumerable.Range(0, count).Select(index => Offer(index, new(seed, DemoStream.Offer, index), day))];
    }

    private DemoOffer Offer(int index, DemoDraws draws, DateOnly date)
    {
        DemoFacts facts = DemoLife.FactsOf(this, draws);
        Piece seen = DemoEntry.Seen(FormattableString.Invariant($"C{index + 1}"), facts, Habits, draws);
        DateOnly soldOn = date.AddDays(21 + (int)Math.Round(ExpectedDays(facts)));
        double affordable = AffordablePrice(facts, soldOn);
        double multiple = Math.Exp(draws.Uniform(-1.2, 1.2));
        double small = draws.Uniform(2, 25);
        decimal sticker = DemoRounding.Sticker(affordable >= SmallestStickerBase ? affordable * multiple : small);
        double hours = MedianHours(facts) * Math.Exp(HoursNoise * draws.Normal());
        double noise = PriceNoise * DemoNoise.Quantile(draws.Uniform(), HeavyTails);
        return new()
        {
            // The planned finish and the condition are in front of the person.
            Seen = seen with { StickerPrice = sticker, Condition = facts.Condition, Finish = facts.Finish },
            Facts = facts,
            StickerPrice = sticker,
            SoldOn = soldOn,
            AffordablePrice = affordable,
            AffordablePriceAsSeen = AffordablePriceAsSeen(
                facts, soldOn, seen.Colour is not null, seen.Width is not null, seen.Height is not null),
            ExpectedSalePrice = ExpectedSalePrice(facts, soldOn),
            ExpectedHours = ExpectedHours(facts),
            ExpectedSupplies = ExpectedSupplies(facts),
            DrawnSalePrice = MedianSalePrice(facts, soldOn, hours) * Math.Exp(noise),
            DrawnHours = hours,
            DrawnSupplies = MedianSupplies(facts) * Math.Exp(SuppliesNoise * draws.Normal()),
        };
    }
}
