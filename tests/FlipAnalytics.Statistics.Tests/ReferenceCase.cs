using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>A folder of reference data: input.csv, and answer.json made from it by outside software.</summary>
internal sealed class ReferenceCase
{
    private readonly string[] header;
    private readonly string[][] rows;

    public ReferenceCase(string path)
    {
        string folder = System.IO.Path.Combine(AppContext.BaseDirectory, "ReferenceData", path);
        Answer = JsonDocument.Parse(File.ReadAllText(System.IO.Path.Combine(folder, "answer.json"))).RootElement;
        string[][] lines = [.. File.ReadLines(System.IO.Path.Combine(folder, "input.csv")).Select(line => line.Split(','))];
        header = lines[0];
        rows = lines[1..];
    }

    public JsonElement Answer { get; }

    public int RowCount => rows.Length;

    public string[] Text(string column)
    {
        int at = Array.IndexOf(header, column);
        Assert.True(at >= 0, $"no column '{column}'");
        return [.. rows.Select(row => row[at])];
    }

    public double[] Numbers(string column) => [.. Text(column).Select(text => double.Parse(text, CultureInfo.InvariantCulture))];

    /// <summary>The element at a path such as "answer/levels/alpha_5pct".</summary>
    public JsonElement At(string path) => At(Answer, path);

    public static JsonElement At(JsonElement element, string path) =>
        path.Split('/').Aggregate(element, (inner, name) => inner.GetProperty(name));

    /// <summary>A number; null is NaN and "Infinity" is what it says.</summary>
    public static double Number(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Number => element.GetDouble(),
        JsonValueKind.Null => double.NaN,
        _ => double.Parse(element.GetString()!, CultureInfo.InvariantCulture),
    };

    /// <summary>The numbers of an array, or the values of an object in their order.</summary>
    public static double[] Numbers(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Array => [.. element.EnumerateArray().Select(Number)],
        JsonValueKind.Object => [.. element.EnumerateObject().Select(property => Number(property.Value))],
        _ => [Number(element)],
    };

    public static string[] Names(JsonElement element) => [.. element.EnumerateArray().Select(name => name.GetString()!)];

    /// <summary>Asserts relative agreement; NaN stands for "not defined" on both sides.</summary>
    public static void AssertClose(double expected, double actual, double relative, double absolute = 0, string what = "")
    {
        if (double.IsNaN(expected) || double.IsInfinity(expected))
        {
            Assert.True(expected.Equals(actual), $"{what}: expected {expected}, was {actual:R}");
            return;
        }
        double allowed = relative * Math.Abs(expected) + absolute;
        Assert.True(Math.Abs(expected - actual) <= allowed, $"{what}: expected {expected:R}, was {actual:R}");
    }

    public static void AssertClose(
        JsonElement expected, IEnumerable<double> actual, double relative, double absolute = 0, string what = "")
    {
        double[] wanted = Numbers(expected), found = [.. actual];
        Assert.Equal(wanted.Length, found.Length);
        for (int i = 0; i < wanted.Length; i++)
            AssertClose(wanted[i], found[i], relative, absolute, $"{what}[{i}]");
    }
}
