using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>
/// For every log and span: debits are credits, each account holds what the quarter's report says to the smallest unit, and
/// every balance that is asserted is the sum of what was posted before.
/// </summary>
public sealed class JournalLawsTests
{
    private const int Logs = 300;

    [Fact]
    public void TheJournalOfAnySpanHoldsWhatTheReportSays() => QuarterLaws.Cases.Sample(
        given =>
        {
            ReportPeriod span = ReportPeriod.Of(given.From, given.To);
            Journal journal = Journal.Of(given.Log, span);
            Assert.Empty(JournalTruth.Breaches(QuarterReport.Of(given.Log, span), journal.Balance));
            Assert.Empty(BrokenAssertions(journal));
            Assert.All(journal.Transactions, transaction => Assert.Equal(0, transaction.Difference));
            Assert.All(journal.Transactions, transaction => Assert.True(transaction.Date >= span.From && transaction.Date <= span.To));
            Assert.Equal(journal.Transactions.Select(transaction => transaction.Date).Order(), journal.Transactions.Select(transaction => transaction.Date));
        },
        iter: Logs);

    [Fact]
    public void TwoSpansThatJoinMoveWhatTheWholeMoves() => QuarterLaws.Cases.Sample(
        given =>
        {
            Journal whole = Journal.Of(given.Log, ReportPeriod.Of(given.From, given.To));
            Journal first = Journal.Of(given.Log, ReportPeriod.Of(given.From, given.Split));
            Journal second = Journal.Of(given.Log, ReportPeriod.Of(given.Split.AddDays(1), given.To));
            foreach (string account in whole.Accounts.Where(name => name != JournalAccounts.Opening
                && !name.StartsWith("assets", StringComparison.Ordinal) && !name.StartsWith("liabilities", StringComparison.Ordinal)))
                Assert.Equal((account, whole.Balance(account)), (account, first.Balance(account) + second.Balance(account)));
            foreach (string account in new[]
                {
                    JournalAccounts.Pieces, JournalAccounts.Supplies, JournalAccounts.Tools, JournalAccounts.SalesTax,
                    JournalAccounts.Buyers, JournalAccounts.OwnersOfPieces,
                })
                Assert.Equal((account, whole.Balance(account)), (account, second.Balance(account)));
        },
        iter: Logs);

    [Fact]
    public void TheSameLogGivesTheSameText() => QuarterLaws.Cases.Sample(
        given =>
        {
            ReportPeriod span = ReportPeriod.Of(given.From, given.To);
            Assert.Equal(JournalText.Render(Journal.Of(given.Log, span)), JournalText.Render(Journal.Of(given.Log, span)));
        },
        iter: 20);

    [Fact]
    public void ABalanceThatIsAssertedWronglyIsCaught()
    {
        Journal journal = Journal.Of(DemoLog.Generate(12, 3).Log.AsOf(DemoLog.LastDay), ReportPeriod.QuarterOf(DemoLog.LastDay));
        JournalTransaction last = journal.Transactions[^1];
        Journal wrong = journal with
        {
            Transactions = journal.Transactions.SetItem(
                journal.Transactions.Length - 1,
                last with { Postings = last.Postings.SetItem(0, last.Postings[0] with { Balance = 0.01m }) }),
        };
        Assert.Empty(BrokenAssertions(journal));
        Assert.Single(BrokenAssertions(wrong));
    }

    private static IEnumerable<string> BrokenAssertions(Journal journal)
    {
        Dictionary<string, decimal> held = [];
        foreach (JournalPosting posting in journal.Transactions.SelectMany(transaction => transaction.Postings))
        {
            held[posting.Account] = held.GetValueOrDefault(posting.Account) + posting.Amount;
            if (posting.Balance is { } balance && balance != held[posting.Account])
                yield return FormattableString.Invariant($"{posting.Account} holds {held[posting.Account]}, not {balance}");
        }
    }
}
