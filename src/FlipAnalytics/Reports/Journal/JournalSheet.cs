using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Where a transaction stands among those of its day: what comes in before what leaves.</summary>
internal enum JournalPlace
{
    /// <summary>Opening balances.</summary>
    Opening,

    /// <summary>What is bought.</summary>
    Buying,

    /// <summary>Outings.</summary>
    Outings,

    /// <summary>Supplies that go into pieces.</summary>
    Supplies,

    /// <summary>Overheads and wear.</summary>
    Running,

    /// <summary>Money from a sale and what is paid for it.</summary>
    Sale,

    /// <summary>The cost of pieces that come back.</summary>
    Back,

    /// <summary>The cost of pieces that leave.</summary>
    Leaving,

    /// <summary>Closing balances.</summary>
    Closing,
}

/// <summary>One side of a fact, before the sides of a day are put together.</summary>
/// <param name="Day">The day it counts on.</param>
/// <param name="Fact">What it belongs to, such as a piece or a row: sides of one fact and day make one transaction.</param>
/// <param name="What">What happened; it begins with a word of ours.</param>
/// <param name="Origin">Where it comes from; null where it rests on no row.</param>
/// <param name="Posting">Account and amount.</param>
internal sealed record JournalSide(DateOnly Day, object Fact, string What, CostOrigin? Origin, JournalPosting Posting);

/// <summary>The journal while it is written.</summary>
internal sealed class JournalSheet
{
    private readonly List<(JournalPlace Place, JournalTransaction Transaction)> written = [];

    /// <summary>Makes a transaction of the sides of each fact and day; those of 0 that assert nothing are left out.</summary>
    /// <param name="place">Where they stand among those of their day.</param>
    /// <param name="sides">The sides, in any order.</param>
    /// <param name="rest">The account that takes what the sides of a fact do not add up to.</param>
    public void Add(JournalPlace place, IEnumerable<JournalSide> sides, string rest)
    {
        foreach (var fact in sides
            .Where(side => side.Posting.Amount != 0 || side.Posting.Balance is not null)
            .GroupBy(side => (side.Day, side.Fact)))
        {
            JournalSide[] all = AssertedLast([.. fact]);
            bool isOneOrigin = Array.TrueForAll(all, side => side.Origin == all[0].Origin && side.Posting.Comment is null);
            decimal missing = -all.Sum(side => side.Posting.Amount);
            IEnumerable<JournalPosting> postings = isOneOrigin ? all.Select(side => side.Posting) : all.Select(WithOrigin);
            written.Add((place, new(
                fact.Key.Day,
                JournalWords.InDescription(all[0].What),
                isOneOrigin && all[0].Origin is { } origin ? JournalWords.InComment(JournalWords.Of(origin)) : null,
                missing == 0 ? [.. postings] : [.. postings, new(rest, missing)])));
        }
    }

    /// <summary>All transactions, by day and by their place in it; those of one place in the order they were added.</summary>
    public ImmutableArray<JournalTransaction> InOrder() =>
    [
        .. written.OrderBy(entry => entry.Transaction.Date).ThenBy(entry => entry.Place).Select(entry => entry.Transaction),
    ];

    // A piece sold, brought back and thrown away on one day leaves twice; its account is empty only after the second time.
    private static JournalSide[] AssertedLast(JournalSide[] sides)
    {
        HashSet<string> later = [];
        for (int i = sides.Length - 1; i >= 0; i--)
        {
            JournalPosting posting = sides[i].Posting;
            if (!later.Add(posting.Account))
                sides[i] = sides[i] with { Posting = posting with { Balance = null } };
        }

        return sides;
    }

    private static JournalPosting WithOrigin(JournalSide side)
    {
        string?[] parts = [side.Posting.Comment, side.Origin is { } origin ? JournalWords.Of(origin) : null];
        return side.Posting with { Comment = JournalWords.InComment(string.Join(", ", parts.OfType<string>())) };
    }
}
