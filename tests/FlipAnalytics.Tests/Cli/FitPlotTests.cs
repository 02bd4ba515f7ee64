namespace FlipAnalytics.Tests;

public sealed class FitPlotTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Theory]
    [InlineData("price", "mixed", "Sale price predicted without the piece itself")]
    [InlineData("hours", "ols", "the hours model")]
    [InlineData("days", "mixed", "pieces sell")]
    public void A_plot_of_the_model_is_written(string model, string estimator, string title)
    {
        using LogFolder folder = new();
        string path = Path.Combine(folder.Path, "model.svg");

        FlipRun run = Flip.Run("fit", "--log", Demo, "--model", model, "--estimator", estimator, "--plot", path);

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Contains(title, File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_of_no_known_kind_is_a_problem_in_the_command()
    {
        FlipRun run = Flip.Run("fit", "--log", Demo, "--model", "price", "--plot", "model.bmp");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--plot needs a name that ends in .png or .svg; found 'model.bmp'", run.Error, StringComparison.Ordinal);
    }
}
