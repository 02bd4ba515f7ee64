namespace FlipAnalytics.Tests;

/// <summary>Before the first piece is bought, the owner's guesses answer.</summary>
public class GuessesOnlyTests
{
    private const string Guess = "[guess.dresser]\nsale_price = { low = 150, likely = 200, high = 280 }\n";

    [Fact]
    public void A_folder_with_guesses_and_no_pieces_is_a_log()
    {
        LogReading reading = Read(("workshop.toml", Guess));
        Assert.NotNull(reading.Log);
        Assert.Empty(reading.Problems);
        PurchaseDecision decision = Workbench.Decide(
            reading.Log.AsOf(new DateOnly(2026, 3, 31)), new Candidate { Id = "C", Type = "dresser", StickerPrice = 20, Hours = 4 });
        Assert.Equal(Verdict.Buy, decision.Verdict);
        Assert.Equal(0, decision.Basis.Sales);
    }

    [Fact]
    public void A_folder_without_pieces_and_guesses_is_none_and_it_is_said_how_to_begin()
    {
        foreach (string settings in new[] { "target_wage = 15\n", "[guess.dresser]\nhours = { low = 5, likely = 8, high = 13 }\n" })
        {
            LogReading reading = Read(("workshop.toml", settings));
            Assert.Null(reading.Log);
            LogProblem problem = Assert.Single(reading.Problems);
            Assert.Contains("pieces.csv", problem.Remedy, StringComparison.Ordinal);
            Assert.Contains("[guess.dresser]", problem.Remedy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_pieces_file_that_cannot_be_read_is_not_made_up_for_by_guesses()
    {
        LogReading reading = Read(("workshop.toml", Guess), ("pieces.csv", "nothing,of,this\n1,2,3\n"));
        Assert.Null(reading.Log);
        Assert.NotEmpty(reading.Problems);
    }

    private static LogReading Read(params (string Name, string Text)[] files)
    {
        using LogFolder folder = new();
        foreach (var (name, text) in files)
            folder.With(name, text);
        return folder.Read();
    }
}
