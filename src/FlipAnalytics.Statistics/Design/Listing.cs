namespace FlipAnalytics.Statistics;

/// <summary>Lists of names within sentences.</summary>
internal static class Listing
{
    private const int Most = 20;

    /// <summary>'a', 'b', 'c'; a long list is cut short and says so.</summary>
    public static string Quoted(IReadOnlyCollection<string> names) =>
        string.Join(", ", names.Take(Most).Select(name => $"'{name}'"))
        + (names.Count > Most ? $" and {names.Count - Most} more" : "");

    /// <summary>a, b and c.</summary>
    public static string Joined(IReadOnlyList<string> names) => names.Count < 2
        ? string.Concat(names)
        : $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}";
}
