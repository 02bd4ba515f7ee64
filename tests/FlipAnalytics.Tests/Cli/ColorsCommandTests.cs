using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Tests;

public sealed class ColorsCommandTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Theory]
    [InlineData("color", "colors", 3)]
    [InlineData("finish", "finishes", 3)]
    [InlineData("type", "types", 2)]
    public void How_each_sells_comes_as_tables_with_the_figures_of_the_document(string by, string name, int tables)
    {
        using LogFolder folder = new();
        FlipRun run = Flip.Run("colors", "--by", by, "--log", Demo, "--json", "--tables", folder.Path);

        Assert.Equal(0, run.ExitCode);
        Assert.Equal(tables, Directory.GetFiles(folder.Path).Length);
        using JsonDocument json = JsonDocument.Parse(run.Output);
        JsonElement[] levels = [.. json.RootElement.GetProperty("levels").EnumerateArray()];
        string[][] rows = [.. File.ReadAllLines(Path.Combine(folder.Path, $"{name}-compared.csv")).Select(line => line.Split(','))];
        Assert.Equal(levels.Length, rows.Length - 1);
        Assert.Equal(by, rows[0][0]);
        int sold = Array.IndexOf(rows[0], "sold"), days = Array.IndexOf(rows[0], "days"), money = Array.IndexOf(rows[0], "money_per_week");
        Assert.All(levels.Zip(rows[1..]), pair =>
        {
            Assert.Equal(pair.First.GetProperty("level").GetString(), pair.Second[0]);
            Assert.Equal(pair.First.GetProperty("sold").GetRawText(), pair.Second[sold]);
            if (pair.First.GetProperty("days") is { ValueKind: JsonValueKind.Object } effect)
                Assert.Equal(effect.GetProperty("share").GetDouble(), double.Parse(pair.Second[days], CultureInfo.InvariantCulture), 1e-4);
            if (pair.First.GetProperty("money").GetProperty("per_week") is { ValueKind: JsonValueKind.Number } perWeek)
                Assert.Equal(perWeek.GetRawText(), pair.Second[money]);
        });
    }
}
