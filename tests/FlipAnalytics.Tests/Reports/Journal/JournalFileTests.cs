namespace FlipAnalytics.Tests;

/// <summary>A journal replaces one of its kind that is as it was written, and nothing else.</summary>
public sealed class JournalFileTests
{
    private static readonly SalesLog Log = DemoLog.Generate(12, 3).Log.AsOf(DemoLog.LastDay);
    private static readonly ReportPeriod Quarter = ReportPeriod.QuarterOf(DemoLog.LastDay);
    private static readonly Journal Known = Journal.Of(Log, Quarter);

    [Fact]
    public void AJournalWrittenAgainReplacesTheOneBefore()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "books", "2026.journal");
        Assert.Null(JournalFile.Refusal(Known, file));
        JournalFile.Write(Journal.Of(Log.AsOf(Quarter.From.AddDays(20)), Quarter), file);
        Assert.Null(JournalFile.Refusal(Known, file));
        JournalFile.Write(Known, file);
        Assert.StartsWith(JournalText.Render(Known), File.ReadAllText(file), StringComparison.Ordinal);
        // Without a byte order mark, which ledger takes for a word, and with nothing left beside it.
        Assert.Equal((byte)';', File.ReadAllBytes(file)[0]);
        Assert.Single(Directory.EnumerateFiles(Path.GetDirectoryName(file)!));
    }

    [Fact]
    public void AFileOfTheOwnersAndOneThatTheOwnerChangedAreRefused()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.With("main.journal", "; my books\n").Path, "main.journal");
        Assert.Contains("was not written by flip", JournalFile.Refusal(Known, file), StringComparison.Ordinal);
        JournalFile.Write(Known, file);
        File.WriteAllText(file, File.ReadAllText(file).Replace("opening balances  ", "opening balance  ", StringComparison.Ordinal) + "\n; mine\n");
        Assert.Contains("changed since", JournalFile.Refusal(Known, file), StringComparison.Ordinal);
        Assert.Contains("is a folder", JournalFile.Refusal(Known, folder.Path), StringComparison.Ordinal);
    }

    [Fact]
    public void TheJournalOfAnotherSpanIsRefused()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "books.journal");
        JournalFile.Write(Journal.Of(Log, Quarter.Before!), file);
        Assert.Contains("another span", JournalFile.Refusal(Known, file), StringComparison.Ordinal);
    }
}
