using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>A row that could not be used is counted where the figures stand, not only among the errors.</summary>
public sealed class RowsSetAsideTests
{
    private const string Pieces = """
        id,type,bought_on,bought_price,listed_on,sold_on,sold_price,hours
        P1,desk,2026-01-05,10,2026-01-10,2026-02-01,120,5
        P2,desk,2026-01-06,12,2026-01-11,2026-02-03,140,6
        ,,2026-01-07,15,2026-01-12,2026-02-05,240,
        """;

    [Theory]
    [InlineData("wages")]
    [InlineData("quarter")]
    public void AReportCountsTheRowsItHadToLeaveOut(string verb)
    {
        using LogFolder log = new();
        log.With("pieces.csv", Pieces);
        FlipRun text = Flip.Run(verb, "--log", log.Path, "--as-of", "2026-03-31");
        FlipRun document = Flip.Run(verb, "--log", log.Path, "--as-of", "2026-03-31", "--json", "--tables", log.Path);

        string first = string.Join(' ', text.Output.Split('\n')[..5].Select(line => line.Trim()));
        Assert.Contains("Set aside and in none of these figures: 1 of 3 rows of pieces.csv (1 sale for 240.00, 15.00 spent);", first, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(document.Output);
        JsonElement aside = Assert.Single(json.RootElement.GetProperty("set_aside").EnumerateArray());
        Assert.Equal(1, aside.GetProperty("rows").GetInt32());
        Assert.Equal(240, aside.GetProperty("amounts").GetProperty("takings").GetDecimal());
        Assert.Equal("pieces.csv,1,3,1,240,15,0", File.ReadAllLines(Path.Combine(log.Path, "set-aside.csv"))[1]);
    }

    [Fact]
    public void NothingSetAsideIsNotMentioned()
    {
        using LogFolder log = new();
        log.With("pieces.csv", string.Join('\n', Pieces.Split('\n')[..3]) + "\n");
        Assert.DoesNotContain("Set aside", Flip.Run("wages", "--log", log.Path).Output, StringComparison.Ordinal);
    }
}
