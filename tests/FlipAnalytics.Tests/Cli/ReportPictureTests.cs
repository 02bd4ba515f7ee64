namespace FlipAnalytics.Tests;

public sealed class ReportPictureTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Theory]
    [InlineData("of the pieces, in percent", "check")]
    [InlineData("Days on market: cannot be told apart", "colors", "--by", "finish")]
    [InlineData("day of sale", "wages", "--json")]
    [InlineData("What you made, then and now", "quarter", "2026-Q1")]
    public void A_report_is_drawn_into_the_file_beside_its_text(string text, params string[] arguments)
    {
        using LogFolder folder = new();
        string path = Path.Combine(folder.Path, "picture.svg");

        FlipRun run = Flip.Run([.. arguments, "--log", Demo, "--plot", path]);

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.NotEmpty(run.Output);
        Assert.Contains(text.Replace(" ", "", StringComparison.Ordinal), File.ReadAllText(path).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void The_trail_of_one_piece_has_no_picture()
    {
        FlipRun run = Flip.Run("wages", "--log", Demo, "--explain", "P0012", "--plot", "one.png");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--plot draws all flips", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }
}
