namespace FlipAnalytics;

/// <summary>What no piece carries, in words: a month without work is one thing, a booth with nothing in it another.</summary>
internal static class IdleWords
{
    /// <summary>Rent of a channel with nothing for sale, as the item of a sum.</summary>
    public const string Rent = "rent of a channel with nothing for sale";

    /// <summary>What it is, as a step of a sum.</summary>
    /// <param name="hasMonths">Whether there is something of months without work.</param>
    /// <param name="hasRent">Whether there is rent of a channel with nothing for sale.</param>
    public static string OnNoPiece(bool hasMonths, bool hasRent) => (hasMonths, hasRent) switch
    {
        (false, true) => $"{Rent}, on no piece",
        (true, true) => $"idle months, and {Rent}",
        _ => "months without work, which no piece carries",
    };

    /// <summary>What the costs and hours that no piece carries come to, and why nobody does; empty where there are none.</summary>
    /// <param name="bridge">The bridge that has them.</param>
    /// <param name="workshop">The workshop.</param>
    /// <param name="isInShort">Whether to leave out why.</param>
    public static string Sentence(WageBridge bridge, Workshop workshop, bool isInShort)
    {
        if (bridge is { IdleCost: 0, IdleHours: 0, IdleRent: 0 })
            return "";
        decimal months = bridge.IdleCost - bridge.IdleRent;
        string ofMonths = FormattableString.Invariant(
            $"Idle months: {MoneyText.Exact(months, workshop)} and {bridge.IdleHours:0.##} h {(isInShort ? "of it " : "")}are on no piece{(isInShort ? "" : ", for nothing was worked on then")}");
        string ofRent = $"{MoneyText.Exact(bridge.IdleRent, workshop)} is {Rent}";
        return bridge.IdleRent == 0 ? ofMonths
            : months == 0 && bridge.IdleHours == 0 ? $"On no piece: {ofRent}"
            : $"{ofMonths}; {ofRent}, on no piece either";
    }
}
