namespace FlipAnalytics.Tests;

/// <summary>A journal replaces one of its kind and nothing else.</summary>
public sealed class JournalFileTests
{
    private static readonly Journal First = Journal.Of(
        DemoLog.Generate(12, 3).Log.AsOf(DemoLog.LastDay), ReportPeriod.QuarterOf(DemoLog.LastDay));

    [Fact]
    public void AJournalWrittenAgainReplacesTheOneBefore()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "books", "2026.journal");
        JournalFile.Write(First with { Transactions = [] }, file);
        JournalFile.Write(First, file);
        Assert.Equal(JournalText.Render(First), File.ReadAllText(file));
        // Without a byte order mark, which ledger takes for a word, and with nothing left beside it.
        Assert.Equal((byte)';', File.ReadAllBytes(file)[0]);
        Assert.Single(Directory.EnumerateFiles(Path.GetDirectoryName(file)!));
    }

    [Fact]
    public void AFileOfTheOwnersIsLeftAsItIs()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.With("main.journal", "; my books\n").Path, "main.journal");
        IOException refused = Assert.Throws<IOException>(() => JournalFile.Write(First, file));
        Assert.Contains("name another file", refused.Message, StringComparison.Ordinal);
        Assert.Equal("; my books\n", File.ReadAllText(file));
    }
}
