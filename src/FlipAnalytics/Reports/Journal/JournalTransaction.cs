using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A fact of the log in double entry: its debits are its credits.</summary>
/// <param name="Date">The day.</param>
/// <param name="Description">What happened, in a few words.</param>
/// <param name="Comment">Which file and row it comes from, by which rule; null for opening and closing balances.</param>
/// <param name="Postings">Two or more.</param>
public sealed record JournalTransaction(
    DateOnly Date, string Description, string? Comment, ImmutableArray<JournalPosting> Postings)
{
    /// <summary>Debits less credits: always 0.</summary>
    public decimal Difference => Postings.Sum(posting => posting.Amount);
}
