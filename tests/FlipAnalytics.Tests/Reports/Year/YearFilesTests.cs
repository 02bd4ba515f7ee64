namespace FlipAnalytics.Tests;

/// <summary>The year's sheet as files: a page and a CSV file for each list, and nothing of the owner's replaced unasked.</summary>
public sealed class YearFilesTests
{
    private static readonly SalesLog Log = new()
    {
        Date = new(2026, 1, 31),
        Workshop = new() { Symbol = "$" },
        Pieces =
        [
            new() { Id = "A", Type = "=1+1", BoughtOn = new(2024, 5, 1), BoughtPrice = 10, SoldOn = new(2024, 8, 1), SoldPrice = 50 },
            new() { Id = "B", Type = "=1+1", BoughtOn = new(2025, 5, 1), BoughtPrice = 20, SoldOn = new(2025, 8, 1), SoldPrice = 60 },
            new() { Id = "C", Type = "desk", Title = "@desk", BoughtOn = new(2025, 6, 1), BoughtPrice = 30 },
        ],
    };

    private static readonly YearReport Sheet = YearReport.Of(Log, ReportPeriod.Parse("2025")!);

    [Fact]
    public void AFileForEachListAndThePageAreWrittenAndNoOther()
    {
        using LogFolder folder = new();
        var written = YearFiles.Write(Sheet, folder.Path);
        Assert.Equal(written.Select(file => file.Name).Order(), Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order());
        Assert.Equal(14, written.Length);
        Assert.StartsWith("2025: you made $40.00 on 1 piece.\n", File.ReadAllText(Path.Combine(folder.Path, "year.txt")), StringComparison.Ordinal);
        Assert.Contains("year-sales.csv (1 row)", YearFiles.Sentence(written, "tax"), StringComparison.Ordinal);
    }

    [Fact]
    public void AFormulaIsATextInEveryFile()
    {
        using LogFolder folder = new();
        YearFiles.Write(Sheet, folder.Path);
        Assert.Contains("B,'=1+1,2025-08-01,60,", File.ReadAllText(Path.Combine(folder.Path, "year-sales.csv")), StringComparison.Ordinal);
        Assert.Contains("C,'@desk,2025-06-01,30,", File.ReadAllText(Path.Combine(folder.Path, "year-stock.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameSheetMayBeWrittenAgainAfterTheLogChanged()
    {
        using LogFolder folder = new();
        YearFiles.Write(Sheet, folder.Path);
        var later = YearReport.Of(Log with { Overheads = [new(new(2025, 3, 1), "rent", 5)] }, Sheet.Period);
        Assert.Null(YearFiles.Refusal(later, folder.Path));
        YearFiles.Write(later, folder.Path);
        Assert.Null(YearFiles.Refusal(later, folder.Path));
        Assert.Contains("rent,1,5,no", File.ReadAllText(Path.Combine(folder.Path, "year-overheads.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("year-sales.csv")]
    [InlineData("year-lines.csv")]
    public void AFileThatTheOwnerChangedIsNotReplacedUnasked(string name)
    {
        using LogFolder folder = new();
        YearFiles.Write(Sheet, folder.Path);
        File.AppendAllText(Path.Combine(folder.Path, name), "a note of mine\n");
        Assert.Equal(
            $"{folder.Path} holds {name} that flip year did not write, or that changed since: name another folder, or add --force to replace.",
            YearFiles.Refusal(Sheet, folder.Path));
    }

    [Fact]
    public void APageThatTheOwnerChangedVouchesForNothing()
    {
        using LogFolder folder = new();
        YearFiles.Write(Sheet, folder.Path);
        string page = Path.Combine(folder.Path, "year.txt");
        File.WriteAllText(page, File.ReadAllText(page).Replace("$40.00", "$400.00", StringComparison.Ordinal));
        Assert.StartsWith($"{folder.Path} holds year.txt and 13 more files", YearFiles.Refusal(Sheet, folder.Path), StringComparison.Ordinal);
    }

    [Fact]
    public void AFileOfTheOwnersThatHasTheNameOfAListIsNotReplacedUnasked()
    {
        using LogFolder folder = new();
        folder.With("year-tools.csv", "my own\n");
        Assert.Contains("holds year-tools.csv that flip year did not write", YearFiles.Refusal(Sheet, folder.Path), StringComparison.Ordinal);
        Assert.Null(YearFiles.Refusal(Sheet, Path.Combine(folder.Path, "new")));
    }

    [Fact]
    public void TheSheetOfAnotherYearIsNotReplacedUnasked()
    {
        using LogFolder folder = new();
        YearFiles.Write(YearReport.Of(Log, ReportPeriod.Parse("2024")!), folder.Path);
        Assert.Equal(
            $"{folder.Path} holds the sheet of 2024: name another folder for that of 2025, or add --force to replace it.",
            YearFiles.Refusal(Sheet, folder.Path));
    }

    [Fact]
    public void NoFileOfTheSheetHasTheNameOfAFileOfALog()
    {
        Assert.All(YearTables.Of(Sheet), table => Assert.StartsWith("year-", table.Name, StringComparison.Ordinal));
        Assert.DoesNotContain(Columns.Tables, table => table.File.StartsWith("year", StringComparison.Ordinal));
    }

    [Fact]
    public void TheCommandSaysWhatItWroteAndReplacesOnlyWithForce()
    {
        using LogFolder folder = new();
        string into = Path.Combine(folder.Path, "tax");
        SalesLogWriter.Write(Log, folder.Path);
        string[] call = ["year", "2025", "--log", folder.Path, "--as-of", "2026-01-31", "--out", into];
        FlipRun first = Flip.Run(call);
        Assert.Equal(0, first.ExitCode);
        Assert.Contains("Wrote 14 files into ", first.Output, StringComparison.Ordinal);
        string sales = Path.Combine(into, "year-sales.csv");
        File.AppendAllText(sales, "a note of mine\n");
        FlipRun second = Flip.Run(call);
        Assert.Equal(2, second.ExitCode);
        Assert.Contains("add --force", Assert.Single(second.ErrorLines), StringComparison.Ordinal);
        Assert.Empty(second.Output);
        Assert.EndsWith("a note of mine\n", File.ReadAllText(sales), StringComparison.Ordinal);
        Assert.Equal(0, Flip.Run([.. call, "--force"]).ExitCode);
        Assert.DoesNotContain("a note of mine", File.ReadAllText(sales), StringComparison.Ordinal);
    }
}
