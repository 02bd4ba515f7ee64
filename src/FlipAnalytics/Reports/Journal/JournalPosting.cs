namespace FlipAnalytics;

/// <summary>One side of a transaction.</summary>
/// <param name="Account">The account, its parts joined by colons, such as <c>assets:pieces:P0001</c>.</param>
/// <param name="Amount">Amount in the workshop's currency: above zero for a debit, below for a credit.</param>
/// <param name="Comment">Which file and row stand behind it, where the transaction does not say; null for nothing to add.</param>
/// <param name="Balance">What the account must hold after it; null where nothing is asserted.</param>
public sealed record JournalPosting(string Account, decimal Amount, string? Comment = null, decimal? Balance = null);
