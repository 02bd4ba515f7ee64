using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary><c>flip year</c> as its user runs it.</summary>
public sealed class YearCommandTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Fact]
    public void TheDemoLogsYearLeadsWithTheProfitOfTheQuarterVerb()
    {
        FlipRun run = Flip.Run("year", "--log", Demo, "--as-of", "2026-03-31");
        FlipRun quarter = Flip.Run("quarter", "2025", "--log", Demo, "--as-of", "2026-03-31", "--json");
        using var document = JsonDocument.Parse(quarter.Output);
        decimal net = document.RootElement.GetProperty("profit").GetProperty("net").GetDecimal();
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith(FormattableString.Invariant($"2025: you made ${net:#,0.00} on "), run.Output, StringComparison.Ordinal);
        Assert.Contains("This profit is not taxable income", run.Output, StringComparison.Ordinal);
        Assert.InRange(run.Output.Split('\n').Length, 20, 41);
        using var sheet = JsonDocument.Parse(Flip.Run("year", "--log", Demo, "--as-of", "2026-03-31", "--json").Output);
        Assert.Equal(net, sheet.RootElement.GetProperty("profit").GetDecimal());
        Assert.All(
            sheet.RootElement.GetProperty("sums").EnumerateArray(), sum => Assert.Equal(0, sum.GetProperty("difference").GetDecimal()));
    }

    [Fact]
    public void ATaxYearThatBeginsInAprilIsTwoDaysJoinedByTwoPoints()
    {
        FlipRun run = Flip.Run("year", "2025-04-06..2026-04-05", "--log", Demo, "--as-of", "2026-03-31");
        Assert.StartsWith("2025-04-06..2026-04-05 so far, up to 2026-03-31: you made ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ForceWithoutAFolderIsRefused()
    {
        FlipRun run = Flip.Run("year", "--log", Demo, "--force");
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("--force replaces files, so it needs --out FOLDER or --journal FILE.", Assert.Single(run.ErrorLines));
    }

    [Theory]
    [InlineData("25", "found '25'")]
    [InlineData("2027", "2027 begins after 2026-03-31")]
    public void AYearThatCannotBeMeantIsRefusedWithTheMend(string year, string said)
    {
        FlipRun run = Flip.Run("year", year, "--log", Demo, "--as-of", "2026-03-31");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }
}
