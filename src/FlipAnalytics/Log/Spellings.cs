namespace FlipAnalytics;

/// <summary>
/// Keeps one spelling of each name and label, as it was first seen: Sage, sage and SAGE are one color. Words that group
/// rows, such as types and colors, are one too where they differ in number, spaces, hyphens or British and American
/// spelling alone; each such word is remembered, so that the check of a log can say so. Columns of one name share their
/// spellings, so that a name is found in every table that refers to it.
/// </summary>
internal sealed class Spellings(bool mergesWords = true)
{
    private readonly Dictionary<string, Dictionary<string, string>> byColumn = [];
    private readonly Dictionary<(string Column, string Form), string> byForm = [];
    private readonly List<OtherSpelling> others = [];

    /// <summary>Words read as another one that was seen before, in the order they were read.</summary>
    public IReadOnlyList<OtherSpelling> Others => others;

    /// <summary>Makes known a word of the settings, so that the tables' words of its form are taken as it.</summary>
    public void Know(string column, string word)
    {
        if (WordForm.ToMerge(word) is { } form)
            byForm.TryAdd((column, form), word);
    }

    /// <summary>The spelling first seen in the column.</summary>
    public string FirstSeen(string column, string text, string file, int row)
    {
        if (!byColumn.TryGetValue(column, out Dictionary<string, string>? known))
            byColumn[column] = known = new(StringComparer.OrdinalIgnoreCase);
        if (!known.TryGetValue(text, out string? first))
            known[text] = first = Settled(column, text);
        if (!ReferenceEquals(first, text) && !first.Equals(text, StringComparison.OrdinalIgnoreCase))
            others.Add(new(column, text, first, file, row));
        return first;
    }

    private string Settled(string column, string text)
    {
        if (!mergesWords || !GroupingWords.Are(column) || WordForm.ToMerge(text) is not { } form)
            return text;
        if (byForm.TryGetValue((column, form), out string? first) && !first.Equals(text, StringComparison.OrdinalIgnoreCase))
            return first;
        byForm[(column, form)] = text;
        return text;
    }
}

/// <summary>A word that was read as another spelling of one seen before.</summary>
/// <param name="Column">Its column.</param>
/// <param name="Written">As it is written.</param>
/// <param name="ReadAs">The spelling seen first.</param>
/// <param name="File">Its file.</param>
/// <param name="Row">Its line.</param>
internal readonly record struct OtherSpelling(string Column, string Written, string ReadAs, string File, int Row);
