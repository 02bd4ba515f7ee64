namespace FlipAnalytics.Tests;

/// <summary>The owner's words in a journal: kept as far as both programs can read them, and never two accounts in one.</summary>
public sealed class JournalWordsTests
{
    [Theory]
    [InlineData("P0012", "P0012")]
    [InlineData("  two  spaces\tand\r\nlines ", "two spaces and lines")]
    [InlineData("a;b|c:d", "a,b/c-d")]
    [InlineData("[2026-13-45] {x} \"y\"", "(2026-13-45) (x) 'y'")]
    [InlineData("no\u00a0break\u2028\u200b\u0000", "no break")]
    [InlineData("Kr\u00e4mer \u5bb6\u5177 \ud83d\ude00", "Kr\u00e4mer \u5bb6\u5177 \ud83d\ude00")]
    [InlineData("", "unnamed")]
    [InlineData(" ; ", ",")]
    [InlineData("\t\u200b", "unnamed")]
    public void AWordIsCleanedForAnAccount(string word, string name) => Assert.Equal(name, JournalWords.InAccount(word));

    [Fact]
    public void HalfASignIsAQuestionMark() => Assert.Equal("oak ?", JournalWords.InAccount("oak " + '\ud83d'));

    [Fact]
    public void ALongTitleIsCutAtAWholeSign()
    {
        string name = JournalWords.InAccount(string.Concat(Enumerable.Repeat("\ud83d\ude00", 100)));
        Assert.Equal(string.Concat(Enumerable.Repeat("\ud83d\ude00", 57)) + "...", name);
    }

    [Fact]
    public void PiecesWhoseNamesComeOutAlikeKeepAccountsOfTheirOwn() => Assert.Equal(
        ["assets:pieces:A,B", "assets:pieces:a,b no 2", "assets:pieces:a,b no 2 no 2", "assets:pieces:C"],
        JournalAccounts.Distinct(JournalAccounts.Pieces, ["A;B", "a,b", "a,b no 2", "C"]));

    [Fact]
    public void AnItemWrittenInTwoWaysIsOneOverhead()
    {
        using LogFolder folder = new();
        SalesLog log = folder.With("pieces.csv", "type,bought_price,sold_price\ndesk,,\n")
            .With("overheads.csv", "month,item,amount\n2026-01,Rent,50\n2026-02,rent,60\n2026-02,,5\n")
            .Read().Log!.AsOf(new(2026, 3, 31));
        Journal journal = Journal.Of(log, ReportPeriod.Parse("2026-Q1")!);
        Assert.Equal(
            [("expenses:overhead:Rent", 110m), ("expenses:overhead:other", 5m)],
            journal.Accounts.Where(account => account.StartsWith("expenses", StringComparison.Ordinal))
                .Select(account => (account, journal.Balance(account))));
    }
}
