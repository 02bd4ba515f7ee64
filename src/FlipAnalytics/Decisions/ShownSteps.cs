using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The steps to the most to pay as page and picture show them: in fewer digits than the record, and still adding up.</summary>
public static class ShownSteps
{
    // Whole units say enough of a dresser; small amounts need their minor digits.
    private const decimal Small = 20;

    /// <summary>The steps; empty where there is no most to pay.</summary>
    /// <param name="decision">The answer.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static ImmutableArray<WaterfallStep> Of(PurchaseDecision decision, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        ArgumentNullException.ThrowIfNull(workshop);
        if (decision.Waterfall.IsEmpty)
            return [];
        int digits = IsSmall(decision) ? workshop.Currency.MinorDigits : 0;
        WaterfallStep last = decision.Waterfall[^1];
        decimal total = decimal.Round(last.Amount, digits, MidpointRounding.AwayFromZero);
        WaterfallStep[] steps = [.. decision.Waterfall.SkipLast(1)];
        ImmutableArray<decimal> shown = Shares.Rounded([.. steps.Select(step => step.Amount)], total, digits);
        return [.. steps.Zip(shown, (step, amount) => step with { Amount = amount }), last with { Amount = total }];
    }

    /// <summary>Whether the amounts are so small that minor digits matter.</summary>
    /// <param name="decision">The answer.</param>
    internal static bool IsSmall(PurchaseDecision decision) => decision.SalePrice is { Mean: < Small };

    /// <summary>An amount of an answer in the digits of its page.</summary>
    /// <param name="decision">The answer.</param>
    /// <param name="amount">The amount.</param>
    /// <param name="workshop">The workshop, for its symbol and currency.</param>
    public static string Money(PurchaseDecision decision, decimal amount, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return IsSmall(decision) ? MoneyText.Exact(amount, workshop) : MoneyText.Whole(amount, workshop);
    }
}
