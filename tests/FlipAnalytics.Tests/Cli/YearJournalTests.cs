using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary><c>flip year --journal FILE</c> as its user runs it.</summary>
public sealed class YearJournalTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Fact]
    public void TheJournalOfAYearIsWrittenAndTheLastWordsSayHowToReadIt()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "2025.journal");
        FlipRun run = Flip.Run("year", "2025", "--log", Demo, "--as-of", "2026-03-31", "--journal", file);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Wrote the books of 2025 in double entry into", run.Output, StringComparison.Ordinal);
        SalesLog log = SalesLogReader.Read(Demo).Log!.AsOf(new(2026, 3, 31));
        Assert.StartsWith(
            JournalText.Render(Journal.Of(log, ReportPeriod.Parse("2025")!)), File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Equal(0, Flip.Run("year", "2025", "--log", Demo, "--as-of", "2026-03-31", "--journal", file).ExitCode);
    }

    [Fact]
    public void TheDocumentNamesTheJournalThatWasWritten()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "2025.journal");
        string[] command = ["year", "2025", "--log", Demo, "--as-of", "2026-03-31", "--json"];
        using var document = JsonDocument.Parse(Flip.Run([.. command, "--journal", file]).Output);
        JsonElement journal = document.RootElement.GetProperty("journal");
        Assert.Equal(file, journal.GetProperty("file").GetString());
        Assert.Equal(
            Journal.Of(SalesLogReader.Read(Demo).Log!.AsOf(new(2026, 3, 31)), ReportPeriod.Parse("2025")!).Transactions.Length,
            journal.GetProperty("transactions").GetInt32());
        using var without = JsonDocument.Parse(Flip.Run(command).Output);
        Assert.Equal(JsonValueKind.Null, without.RootElement.GetProperty("journal").ValueKind);
    }

    [Fact]
    public void AFileOfTheOwnersIsReplacedWhenAskedTwice()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.With("main.journal", "; mine\n").Path, "main.journal");
        string[] command = ["year", "2025", "--log", Demo, "--as-of", "2026-03-31", "--journal", file];
        FlipRun refused = Flip.Run(command);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("add --force", Assert.Single(refused.ErrorLines), StringComparison.Ordinal);
        Assert.Equal("; mine\n", File.ReadAllText(file));
        Assert.Equal(0, Flip.Run([.. command, "--force"]).ExitCode);
        Assert.StartsWith("; Journal by flip", File.ReadAllText(file), StringComparison.Ordinal);
    }
}
