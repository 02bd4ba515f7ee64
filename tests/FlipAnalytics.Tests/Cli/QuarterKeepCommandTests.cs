using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary><c>flip quarter --keep</c> as its user runs it.</summary>
public sealed class QuarterKeepCommandTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Fact]
    public void AQuarterIsKeptOnceAndThePageTellsWhatChangedSince()
    {
        using LogFolder folder = new();
        foreach (string file in Directory.EnumerateFiles(Demo))
            File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        string[] quarter = ["quarter", "2026-Q1", "--log", folder.Path, "--as-of", "2026-04-05"];
        FlipRun kept = Flip.Run([.. quarter, "--keep"]);
        Assert.Equal(0, kept.ExitCode);
        Assert.Contains("\n  Kept as of 2026-04-05 in kept/2026-Q1.json: ", kept.Output, StringComparison.Ordinal);
        string path = Path.Combine(folder.Path, "kept", "2026-Q1.json");
        string text = File.ReadAllText(path);

        string pieces = File.ReadAllText(Path.Combine(folder.Path, "pieces.csv"));
        folder.With("pieces.csv", pieces.Replace("2026-01-14,270,", "2026-01-14,340,", StringComparison.Ordinal));
        FlipRun again = Flip.Run([.. quarter, "--keep"]);
        Assert.Equal(2, again.ExitCode);
        Assert.StartsWith("2026-Q1 is kept already, as of 2026-04-05", Assert.Single(again.ErrorLines), StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(path));

        FlipRun since = Flip.Run([.. quarter, "--json"]);
        using JsonDocument document = JsonDocument.Parse(since.Output);
        JsonElement sales = document.RootElement.GetProperty("since_kept").GetProperty("lines").EnumerateArray()
            .Single(line => line.GetProperty("line").GetString() == "sales");
        Assert.Equal(70, sales.GetProperty("difference").GetDecimal());
        Assert.Equal(124, Assert.Single(sales.GetProperty("causes").EnumerateArray()).GetProperty("line").GetInt32());

        FlipRun replaced = Flip.Run([.. quarter, "--keep", "--force"]);
        Assert.Equal(0, replaced.ExitCode);
        Assert.NotEqual(text, File.ReadAllText(path));
    }

    [Fact]
    public void ForceByItselfIsRefusedWithTheMend()
    {
        FlipRun run = Flip.Run("quarter", "--log", Demo, "--force");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("goes with --keep or --plot or --tables", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }
}
