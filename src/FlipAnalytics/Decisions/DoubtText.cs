using System.Globalization;

namespace FlipAnalytics;

/// <summary>The sentences of an answer that cannot be given yet: how far it is open, and what would decide it.</summary>
public static class DoubtText
{
    /// <summary>That it cannot be said, and between what the most to pay may lie.</summary>
    /// <param name="decision">The answer.</param>
    /// <param name="workshop">The workshop, for its symbol and currency.</param>
    public static string Headline(PurchaseDecision decision, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        string Amount(decimal amount) => ShownSteps.Money(decision, amount, workshop);
        string piece = decision.Candidate.Type;
        if (decision.Ceiling is null)
            return $"CANNOT SAY YET what to pay for this {piece}.";
        string price = decision.Candidate.StickerPrice is { } sticker
            ? $"whether {Amount(sticker)} is a good price" : $"whether this {piece} is worth taking";
        string range = decision.CeilingHigh <= 0
            ? $"by what is known it falls {Amount(-decision.CeilingHigh.Value)} to {Amount(-decision.CeilingLow!.Value)} short of your wage"
            : decision.CeilingLow <= 0
                ? $"the most to pay may be anything up to {Amount(decision.CeilingHigh!.Value)}, or nothing at all"
                : $"the most to pay may be anything from {Amount(decision.CeilingLow!.Value)} to {Amount(decision.CeilingHigh!.Value)}";
        return $"CANNOT SAY YET {price}: {range}.";
    }

    /// <summary>What would decide it; none where nothing is known at all.</summary>
    internal static IEnumerable<string> Deciding(PurchaseDecision decision, Workshop workshop)
    {
        string Amount(decimal amount) => ShownSteps.Money(decision, amount, workshop);
        if (decision.WhatDecides is not { } deciding)
            yield break;
        string at = decision.Candidate.StickerPrice is { } sticker ? $"At {Amount(sticker)} it" : "It";
        string[] pays =
        [
            .. deciding.BuyFromSalePrice is { } price ? new[] { $"if you are sure to sell it for {Amount(price)} or more" } : [],
            .. deciding.BuyToHours is { } hours ? new[] { Text($"if it takes you no more than {hours:0.#} h") } : [],
        ];
        if (pays.Length > 0)
            yield return $"{at} pays {string.Join(", or ", pays)}.";
        if (deciding.LeaveToSalePrice is > 0 and var least)
            yield return $"Leave it if you doubt that it brings {Amount(least)}.";
        string? sales = (deciding.SalesOfType, deciding.SalesOfAnything) switch
        {
            (null, null) => null,
            ({ } own, { } any) when any > own => Text($"{Sales(own)} of type {decision.Candidate.Type}, or {any} of anything,"),
            (_, { } any) => $"{Sales(any)} of anything",
            ({ } own, null) => $"{Sales(own)} of type {decision.Candidate.Type}",
        };
        string guess = workshop.Guesses.ContainsKey(decision.Candidate.Type) ? ""
            : $" Your own guess under [guess.{decision.Candidate.Type}] in workshop.toml counts for about two.";
        if (sales is not null)
            yield return $"{sales} would halve that range.{guess}";
    }

    private static string Sales(int count) => TextLines.Counted(count, "more sale");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
