using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary><c>flip quarter</c> as its user runs it.</summary>
public sealed class QuarterCommandTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Fact]
    public void TheDemoLogsQuarterLeadsWithTheAnswerAndEndsWithTheSums()
    {
        FlipRun run = Flip.Run("quarter", "2026-Q1", "--log", Demo, "--as-of", "2026-03-31");
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("In 2026-Q1 you made $3,373.", run.Output, StringComparison.Ordinal);
        Assert.Contains("= what you made (net profit)                                3,372.88", run.Output, StringComparison.Ordinal);
        Assert.Contains("sums are off by $0.00.", run.Output, StringComparison.Ordinal);
        Assert.InRange(run.Output.Split('\n').Length, 20, 41);
        FlipRun all = Flip.Run("quarter", "2026-Q1", "--log", Demo, "--as-of", "2026-03-31", "--all");
        Assert.Contains("off by $0.00; --json has all.\n", all.Output, StringComparison.Ordinal);
        Assert.Contains("Why it differs", all.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TheDocumentHasTheSameFiguresAndTheFilesTheTables()
    {
        using LogFolder folder = new();
        FlipRun run = Flip.Run(
            "quarter", "--log", Demo, "--as-of", "2026-04-15", "--json", "--tables", Path.Combine(folder.Path, "figures"));
        using var document = JsonDocument.Parse(run.Output);
        Assert.Equal("2026-Q1", document.RootElement.GetProperty("period").GetProperty("name").GetString());
        Assert.Equal(3372.88m, document.RootElement.GetProperty("profit").GetProperty("net").GetDecimal());
        Assert.All(
            document.RootElement.GetProperty("sums").EnumerateArray(),
            sum => Assert.Equal(0, sum.GetProperty("difference").GetDecimal()));
        Assert.Equal(
            ["cash", "comparison", "next-steps", "pieces-sold", "profit-and-loss", "ratios", "stock", "stock-pieces", "sums", "supplies-by-can", "wage-bridge", "wage-hours"],
            Directory.GetFiles(Path.Combine(folder.Path, "figures")).Select(Path.GetFileNameWithoutExtension).Order());
    }

    [Theory]
    [InlineData("2026-5", "found '2026-5'")]
    [InlineData("2027-Q1", "2027-Q1 begins after 2026-03-31")]
    public void ASpanThatCannotBeMeantIsRefusedWithTheMend(string span, string said)
    {
        FlipRun run = Flip.Run("quarter", span, "--log", Demo, "--as-of", "2026-03-31");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void ALineIsOpenedAsTextAsADocumentAndAsATable()
    {
        using LogFolder folder = new();
        string[] call = ["quarter", "2026-Q1", "--log", Demo, "--as-of", "2026-03-31", "--explain", "overhead"];
        FlipRun text = Flip.Run(call);
        Assert.Equal(0, text.ExitCode);
        Assert.StartsWith("overhead: $362.65 in 2026-Q1, from 4 items.\n", text.Output, StringComparison.Ordinal);
        // The README shows it as run.
        string readme = File.ReadAllText(House.Repository.PathOf("README.md"));
        Assert.All(text.Output.Split('\n'), line => Assert.Contains(line, readme, StringComparison.Ordinal));

        FlipRun json = Flip.Run([.. call, "--json", "--tables", folder.Path]);
        using var document = JsonDocument.Parse(json.Output);
        Assert.Equal(362.65m, document.RootElement.GetProperty("total").GetDecimal());
        decimal[] amounts = [.. document.RootElement.GetProperty("parts").EnumerateArray().Select(part => part.GetProperty("amount").GetDecimal())];
        Assert.Equal(362.65m, amounts.Sum());
        Assert.Equal(amounts.Length + 1, File.ReadAllLines(Path.Combine(folder.Path, "quarter-overhead.csv")).Length);
    }

    [Theory]
    [InlineData("--explain needs the word of a line, such as --explain overhead: sales, ")]
    [InlineData("The quarter has no line 'overhed': did you mean overhead? Others are sales, ", "overhed")]
    [InlineData("--plot draws the whole quarter: leave out --explain", "fees", "--plot", "quarter.png")]
    public void AWordThatOpensNoLineIsAnsweredWithThoseThatDo(string said, params string[] written)
    {
        FlipRun run = Flip.Run(["quarter", "--log", Demo, "--explain", .. written]);
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith(said, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }
}
