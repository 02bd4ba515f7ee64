using System.Collections.Immutable;
using System.Text;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// A journal in the plain text that the ledger programs hledger and ledger both read: only what their manuals have in common
/// (dates, descriptions, comments, postings with an amount and a commodity behind it, balance assertions, directives for
/// accounts and commodities).
/// </summary>
public static class JournalText
{
    private const string Indent = "    ";

    /// <summary>The journal as text; lines end in a line feed.</summary>
    /// <param name="journal">The journal.</param>
    public static string Render(Journal journal)
    {
        ArgumentNullException.ThrowIfNull(journal);
        Currency currency = journal.Workshop.Currency;
        ImmutableArray<string> accounts = journal.Accounts;
        StringBuilder text = new(Title(journal));
        foreach (string sentence in Head(journal))
            text.Append("; ").Append(sentence).Append('\n');
        text.Append("\ncommodity ").Append(currency.Code).Append('\n');
        // hledger wants a point in it and ledger none where there are no minor digits, so both are left to what they read.
        if (currency.MinorDigits > 0)
            text.Append(Indent).Append("format ").Append(MoneyText.WithCode(1000, currency)).Append('\n');
        foreach (string account in accounts)
        {
            text.Append("account ").Append(account).Append('\n');
            // Tells hledger's cash flow statement what is money.
            if (account == JournalAccounts.Money)
                text.Append(Indent).Append("; type: C\n");
        }

        foreach (JournalTransaction transaction in journal.Transactions)
            Append(text.Append('\n'), transaction, currency);
        return text.ToString();
    }

    /// <summary>The first line: whose books, and from which day; their last day moves on while the span is running.</summary>
    internal static string Title(Journal journal)
    {
        string name = journal.Workshop.Name is { } own ? Invariant($" of {JournalWords.InComment(own)}") : "";
        return Invariant($"; Journal by flip: the books{name} from {journal.Period.From:yyyy-MM-dd}\n");
    }

    private static IEnumerable<string> Head(Journal journal)
    {
        yield return Invariant($"to {journal.Period.To:yyyy-MM-dd}, as known on {journal.AsOf:yyyy-MM-dd}.");
        yield return "Profit:      hledger -f FILE incomestatement    or: ledger -f FILE balance income expenses";
        yield return "What is here: hledger -f FILE balancesheet      or: ledger -f FILE balance assets";
        yield return "What you had in money at the start is not in the log, so assets:money begins at 0.";
        yield return "Your hours are no cost in these books.";
        foreach (QuarterUndated facts in journal.NotCounted)
            yield return $"Not counted, for want of a day: {QuarterSentences.Undated(facts, journal.Workshop)}";
    }

    private static void Append(StringBuilder text, JournalTransaction transaction, Currency currency)
    {
        text.Append(Invariant($"{transaction.Date:yyyy-MM-dd} {transaction.Description}"));
        Comment(text, transaction.Comment);
        (JournalPosting Posting, string Amount)[] postings =
            [.. transaction.Postings.Select(posting => (posting, MoneyText.WithCode(posting.Amount, currency)))];
        int names = postings.Max(line => line.Posting.Account.Length), amounts = postings.Max(line => line.Amount.Length);
        foreach ((JournalPosting posting, string amount) in postings)
        {
            text.Append(Indent).Append(posting.Account.PadRight(names)).Append("  ").Append(amount.PadLeft(amounts));
            if (posting.Balance is { } balance)
                text.Append(" = ").Append(MoneyText.WithCode(balance, currency));
            Comment(text, posting.Comment);
        }
    }

    private static void Comment(StringBuilder text, string? comment) =>
        text.Append(string.IsNullOrEmpty(comment) ? "\n" : $"  ; {comment}\n");
}
