using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// What to offer first and at what price to walk away. The discount asked for is the owner's own better one: the share off
/// the sticker price that one in four of their purchases reached, drawn towards <see cref="CommonDiscount"/> as if five
/// purchases had brought that, so that a few lucky ones do not make an offer that offends.
/// </summary>
/// <param name="Offer">The opening offer in the currency: above zero, at most the sticker price and the walk-away price.</param>
/// <param name="Discount">The share off the sticker price that it asks for, 0 to 1, before it is held and rounded.</param>
/// <param name="Purchases">The owner's purchases that it rests on.</param>
public sealed record OpeningOffer(decimal Offer, decimal Discount, int Purchases)
{
    /// <summary>The share off a sticker price that haggling usually brings (common practice, from memory).</summary>
    public const decimal CommonDiscount = 0.2m;

    private const decimal CommonPurchases = 5;

    /// <summary>The discount that the owner usually gets; <see cref="CommonDiscount"/> where none is on record.</summary>
    /// <param name="selling">What the log shows.</param>
    public static decimal UsualDiscount(SellingTerms selling)
    {
        ArgumentNullException.ThrowIfNull(selling);
        return selling.UsualDiscount ?? CommonDiscount;
    }

    /// <summary>The opening offer; null where there is no sticker price, nothing to pay, or the piece is to be left.</summary>
    /// <param name="decision">The answer, with its price to walk away at.</param>
    /// <param name="selling">What the log shows of the owner's haggling.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static OpeningOffer? For(PurchaseDecision decision, SellingTerms selling, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        ArgumentNullException.ThrowIfNull(selling);
        ArgumentNullException.ThrowIfNull(workshop);
        if (decision is not { Verdict: Verdict.Buy or Verdict.Haggle, Candidate.StickerPrice: > 0 and var sticker }
            || decision.WalkAway is not { } limit)
        {
            return null;
        }

        int known = selling.Discounts.Length;
        decimal discount = known == 0 ? CommonDiscount
            : (known * UpperQuarter(selling) + CommonPurchases * CommonDiscount) / (known + CommonPurchases);
        // What is left to come up by must lie below the price to walk away at.
        decimal most = Math.Min(sticker, limit);
        decimal offer = Round(Math.Min(sticker * (1 - discount), most), workshop);
        return offer > 0 ? new(offer, decimal.Round(discount, 4), known) : null;
    }

    /// <summary>
    /// The price at which to walk away: the most to pay, rounded down to what one says aloud; null where it is not above
    /// zero.
    /// </summary>
    /// <param name="ceiling">The most to pay.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static decimal? WalkAway(decimal ceiling, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        return ceiling > 0 && Round(ceiling, workshop) is > 0 and var price ? price : null;
    }

    /// <summary>The offer in a sentence.</summary>
    /// <param name="decision">The answer that it belongs to.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static string? Sentence(PurchaseDecision decision, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        if (decision is not { Offer: { } first, WalkAway: { } limit, Candidate.StickerPrice: { } sticker })
            return null;
        string offer = MoneyText.Spoken(first.Offer, workshop);
        string asked = string.Create(CultureInfo.InvariantCulture, $"{100 * first.Discount:0} % off");
        string reason = first.Purchases == 0
            ? $"{asked} is what haggling usually brings"
            : $"{asked}, as {TextLines.Counted(first.Purchases, "purchase")} of yours suggest{(first.Purchases == 1 ? "s" : "")}";
        return (limit >= sticker, first.Offer < Math.Min(sticker, limit)) switch
        {
            (true, true) => $"Offer {offer} first ({reason}); the sticker price pays too.",
            (true, false) => "The sticker price pays: there is little to haggle over.",
            (false, true) => $"Offer {offer} first ({reason}); walk away above {MoneyText.Spoken(limit, workshop)}.",
            (false, false) => $"Offer {offer} and walk away above it.",
        };
    }

    private static decimal UpperQuarter(SellingTerms selling) =>
        selling.Discounts[(int)Math.Round(0.75 * (selling.Discounts.Length - 1))];

    // Down to a whole unit, five or ten of its hundred; below two units to the smallest coin.
    private static decimal Round(decimal amount, Workshop workshop)
    {
        decimal power = 1;
        while (power * 10 <= amount)
            power *= 10;
        decimal step = amount < 2
            ? new decimal(1, 0, 0, isNegative: false, (byte)workshop.Currency.MinorDigits)
            : Math.Max(1, power * (amount < 5 * power ? 0.05m : 0.1m));
        return step * decimal.Floor(amount / step);
    }
}
