using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>A case folder of ReferenceData/lmm: the rows as a model wants them, and the published answers.</summary>
internal sealed class MixedReference
{
    private static readonly ImmutableArray<string> Furniture = ["(Intercept)", "log(size)", "hours", "condition"];
    private static readonly ImmutableArray<string> SalesLog =
        ["(Intercept)", "log_volume", "condition", "hours", "log_count"];

    private MixedReference(string name)
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "ReferenceData", "lmm", name);
        Answer = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "answer.json"))).RootElement;
        string[] lines = File.ReadAllLines(Path.Combine(folder, "input.csv"));
        string[] header = lines[0].Split(',');
        Groups = [.. Answer.GetProperty("groups").EnumerateArray().Select(group => group.GetString()!)];
        Columns = name.Contains("furniture", StringComparison.Ordinal) ? Furniture
            : name.Contains("log", StringComparison.Ordinal) ? SalesLog
            : ["(Intercept)"];
        Rows = [.. lines.Skip(1)
            .Select(line => header.Zip(line.Split(','), KeyValuePair.Create).ToDictionary(StringComparer.Ordinal))
            .Where(row => Columns != SalesLog || (row["sold_on"].Length > 0 && row["hours"].Length > 0))];
        Y = [.. Rows.Select(Response)];
        X = [.. Rows.Select(row => FixedColumns(row))];
        Terms = [.. Groups.Select(group => RandomTerm.Exchangeable(
            group, [.. Rows.Select(row => row[group]).Distinct().Order(StringComparer.Ordinal)]))];
        Levels = [.. Terms.Select(term => Rows.Select(row => term.Levels.IndexOf(row[term.Name])).ToArray())];
    }

    public JsonElement Answer { get; }

    public ImmutableArray<string> Groups { get; }

    public ImmutableArray<string> Columns { get; }

    public ImmutableArray<Dictionary<string, string>> Rows { get; }

    public double[] Y { get; }

    public double[][] X { get; }

    public RandomTerm[] Terms { get; }

    public int[][] Levels { get; }

    public MixedModelData Data => MixedModelData.From(Columns, X, Terms, Levels, Y);

    public static MixedReference Load(string name) => new(name);

    /// <summary>The rows to predict, as (fixed columns, level references).</summary>
    public IEnumerable<(double[] X, LevelRef[] Levels)> NewRows()
    {
        JsonElement columns = Answer.GetProperty("new_rows");
        int count = columns.EnumerateObject().First().Value.GetArrayLength();
        for (int i = 0; i < count; i++)
        {
            var row = columns.EnumerateObject()
                .ToDictionary(column => column.Name, column => column.Value[i].ToString(), StringComparer.Ordinal);
            yield return (FixedColumns(row), [.. Terms.Select(term => term.Levels.IndexOf(row[term.Name]) is var index and >= 0
                ? LevelRef.Known(index)
                : LevelRef.Unseen)]);
        }
    }

    private static double Response(Dictionary<string, string> row) =>
        row.TryGetValue("diameter", out string? diameter) ? Number(diameter)
        : row.TryGetValue("yield", out string? yield) ? Number(yield)
        : Math.Log(Number(row.TryGetValue("sold_price", out string? sold) ? sold : row["price"]));

    private double[] FixedColumns(Dictionary<string, string> row) => [.. Columns.Select(column => column switch
    {
        "(Intercept)" => 1,
        "log(size)" => Math.Log(Number(row["size"])),
        "log_volume" => Math.Log(Number(row["width"]) * Number(row["depth"]) * Number(row["height"]) / 1e6),
        "log_count" => Math.Log(Number(row["count"])),
        _ => Number(row[column]),
    })];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
