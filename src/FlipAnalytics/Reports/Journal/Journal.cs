using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The books of a span in double entry: every fact of <see cref="QuarterReport"/> as a balanced transaction. Its income
/// statement is the quarter's profit, its balance sheet the quarter's stock, its money account the quarter's money.
/// </summary>
/// <remarks>
/// Inventory is perpetual: costs go into a piece on the day they arise, and on the day it is sold they go from there into the
/// cost of pieces sold (Weygandt, Kimmel and Kieso, Accounting Principles, chapters 5 and 6, from memory). Facts without a
/// day belong to no span; where the books hold what they brought, it is in the opening balances.
/// </remarks>
public sealed record Journal
{
    /// <summary>The days it covers: the span asked for, up to the date of the log.</summary>
    public required ReportPeriod Period { get; init; }

    /// <summary>The date up to which facts are known.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The workshop's settings.</summary>
    public required Workshop Workshop { get; init; }

    /// <summary>
    /// By day. The first holds the opening balances, where there are any; the last one moves nothing and states the closing
    /// balances.
    /// </summary>
    public required ImmutableArray<JournalTransaction> Transactions { get; init; }

    /// <summary>Amounts of the whole log that belong to no span, for want of a day.</summary>
    public required ImmutableArray<QuarterUndated> NotCounted { get; init; }

    /// <summary>Every account used, by name.</summary>
    public ImmutableArray<string> Accounts =>
        [.. Transactions.SelectMany(transaction => transaction.Postings).Select(posting => posting.Account).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>What an account and those below it hold at the end; below zero for income and what is owed.</summary>
    /// <param name="account">Its name, such as <c>assets:pieces</c>.</param>
    public decimal Balance(string account)
    {
        ArgumentException.ThrowIfNullOrEmpty(account);
        return Transactions.SelectMany(transaction => transaction.Postings)
            .Where(posting => posting.Account.StartsWith(account, StringComparison.Ordinal)
                && (posting.Account.Length == account.Length || posting.Account[account.Length] == ':'))
            .Sum(posting => posting.Amount);
    }

    /// <summary>The journal of a span.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="period">The span; it may reach beyond the date of the log, but not begin after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span begins after the date of the log, or in the year 1.</exception>
    public static Journal Of(SalesLog log, ReportPeriod period)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(period);
        if (QuarterReport.Refusal(log, period, "name an earlier span") is { } refusal)
            throw new ArgumentOutOfRangeException(nameof(period), period.Name, refusal);
        ReportPeriod reckoned = period.UpTo(log.Date);
        QuarterBooks books = new(log);
        return new()
        {
            Period = reckoned,
            AsOf = log.Date,
            Workshop = log.Workshop,
            Transactions = new JournalWriter(books, reckoned).Write(),
            NotCounted = [.. QuarterUndated.Of(books).Where(facts => facts.Unit == "money")],
        };
    }
}
