using System.Text.Json;

namespace FlipAnalytics.Tests;

public sealed class WagesCommandTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Fact]
    public void The_wages_come_as_one_document_and_as_tables()
    {
        using LogFolder folder = new();
        FlipRun run = Flip.Run("wages", "--log", Demo, "--json", "--tables", folder.Path, "--wage", "18");

        Assert.Equal(0, run.ExitCode);
        using JsonDocument json = JsonDocument.Parse(run.Output);
        Assert.Equal(18, json.RootElement.GetProperty("target_wage").GetDecimal());
        Assert.Equal(0, json.RootElement.GetProperty("reconciliation").GetProperty("difference").GetDecimal());
        string[] flips = File.ReadAllLines(Path.Combine(folder.Path, "wages-by-flip.csv"));
        Assert.Equal(json.RootElement.GetProperty("flips").GetArrayLength(), flips.Length - 1);
        Assert.True(json.RootElement.GetProperty("hours_filled_in").GetProperty("filled").GetInt32() > 0);
    }

    [Fact]
    public void An_unknown_piece_ends_with_2_and_the_one_that_was_meant()
    {
        FlipRun run = Flip.Run("wages", "--log", Demo, "--explain", "P012");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains("did you mean P0012?", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void A_period_that_is_none_ends_with_2()
    {
        FlipRun run = Flip.Run("wages", "--log", Demo, "--period", "spring");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("found 'spring'", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }
}
