namespace FlipAnalytics;

/// <summary>
/// Keeps one spelling of each name and label: Sage, sage and SAGE are one colour, written as it was first seen. Columns
/// of one name share their spellings, so that a name is found in every table that refers to it.
/// </summary>
internal sealed class Spellings
{
    private readonly Dictionary<string, Dictionary<string, string>> byColumn = [];

    /// <summary>The spelling first seen in the column.</summary>
    public string FirstSeen(string column, string text)
    {
        if (!byColumn.TryGetValue(column, out Dictionary<string, string>? known))
            byColumn[column] = known = new(StringComparer.OrdinalIgnoreCase);
        if (known.TryGetValue(text, out string? first))
            return first;
        known[text] = text;
        return text;
    }
}
