using System.Globalization;

namespace FlipAnalytics.Benchmarks;

/// <summary>Numbers under keys, as lines "key value", the form in which fits report to the benchmark that started them.</summary>
internal static class KeyedNumbers
{
    public static void Say(string key, double value) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{key} {value:R}"));

    public static Dictionary<string, double> Parse(string text) => text
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select(line => line.Split(' '))
        .ToDictionary(parts => parts[0], parts => double.Parse(parts[1], CultureInfo.InvariantCulture));
}
