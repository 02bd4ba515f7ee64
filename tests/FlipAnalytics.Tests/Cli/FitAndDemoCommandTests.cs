using System.Text.Json;

namespace FlipAnalytics.Tests;

public sealed class FitAndDemoCommandTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Theory]
    [InlineData("price", "response")]
    [InlineData("hours", "response")]
    [InlineData("supplies", "response")]
    [InlineData("days", "start")]
    public void The_design_has_a_column_for_each_term_under_its_exact_name(string model, string firstColumn)
    {
        using LogFolder folder = new();
        string design = Path.Combine(folder.Path, "d.csv");

        FlipRun run = Flip.Run("fit", "--model", model, "--plain", "--json", "--log", Demo, "--design", design);

        Assert.Equal(0, run.ExitCode);
        using JsonDocument json = JsonDocument.Parse(run.Output);
        string[] lines = File.ReadAllLines(design);
        string[] header = lines[0].Split(',');
        string[] terms = [.. json.RootElement.GetProperty("terms").EnumerateArray().Select(t => t.GetProperty("name").GetString()!)];
        string[] groups =
            [.. json.RootElement.GetProperty("random").EnumerateArray().Select(g => "group:" + g.GetProperty("group").GetString())];
        string[] response = model == "days" ? ["start", "stop", "event"] : ["response"];
        Assert.Equal(firstColumn, header[0]);
        Assert.Equal([.. response, .. terms, .. groups], header);
        Assert.Equal(json.RootElement.GetProperty("n").GetInt32(), lines.Length - 1);
        Assert.Contains("intercept", terms);
    }

    [Fact]
    public void Least_squares_comes_with_its_diagnostics()
    {
        using JsonDocument json = JsonDocument.Parse(
            Flip.Run("fit", "--model", "price", "--estimator", "ols", "--json", "--log", Demo).Output);

        JsonElement diagnostics = json.RootElement.GetProperty("diagnostics");

        Assert.InRange(diagnostics.GetProperty("r_squared").GetDouble(), 0.5, 1);
        Assert.True(diagnostics.GetProperty("smearing_factor").GetDouble() > 1);
        Assert.Equal(5, diagnostics.GetProperty("most_influential").GetArrayLength());
    }

    [Fact]
    public void The_demo_data_in_the_repository_are_what_the_command_writes()
    {
        using LogFolder folder = new();
        string target = Path.Combine(folder.Path, "town");

        Assert.Equal(0, Flip.Run("demo", target, "--flips", "150", "--seed", "1").ExitCode);

        foreach (string file in Directory.GetFiles(target))
            Assert.Equal(File.ReadAllText(file), House.Repository.Read("data-demo", Path.GetFileName(file)).ReplaceLineEndings("\n"));
        Assert.Equal(Directory.GetFiles(target).Length, Directory.GetFiles(Demo).Length);
    }

    [Fact]
    public void Every_verb_has_help_with_examples()
    {
        foreach (string verb in new[] { "check", "buy", "colors", "fit", "demo" })
        {
            FlipRun run = Flip.Run(verb, "--help");
            Assert.Equal(0, run.ExitCode);
            Assert.Contains($"Examples:\n  flip {verb}", run.Output, StringComparison.Ordinal);
        }
    }
}
