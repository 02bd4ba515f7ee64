using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>
/// Words of the log as a ledger program reads them: on one line, without double spaces, which end an account's name, and
/// without signs that begin a comment, a note, a date or a tag.
/// </summary>
internal static class JournalWords
{
    private const string Nameless = "unnamed";
    private const string Cut = "...";
    private const int LongestName = 60;
    private const int LongestDescription = 80;
    private const int LongestComment = 240;

    /// <summary>A part of an account's name; never empty.</summary>
    public static string InAccount(string text) => Clean(text, LongestName) is { Length: > 0 } name ? name : Nameless;

    /// <summary>A description; it must begin with a word of ours, so that it is no status mark or code.</summary>
    public static string InDescription(string text) => Clean(text, LongestDescription);

    /// <summary>A comment.</summary>
    public static string InComment(string text) => Clean(text, LongestComment);

    /// <summary>Where a cost comes from: file, line and rule.</summary>
    public static string Of(CostOrigin origin)
    {
        string line = origin.Row is > 0 and { } row ? string.Create(CultureInfo.InvariantCulture, $", line {row}") : "";
        return $"{origin.File}{line}. {origin.Rule}";
    }

    private static string Clean(string text, int longest)
    {
        List<string> signs = [];
        foreach (Rune rune in text.EnumerateRunes())
        {
            string sign = Sign(rune);
            if (sign.Length > 0 && (sign != " " || (signs.Count > 0 && signs[^1] != " ")))
                signs.Add(sign);
        }

        if (signs.Count > longest)
            signs = [.. signs.Take(longest - Cut.Length), Cut];
        return string.Concat(signs).Trim();
    }

    private static string Sign(Rune rune) => rune.Value switch
    {
        ';' => ",",
        '|' => "/",
        ':' => "-",
        '[' or '{' => "(",
        ']' or '}' => ")",
        '"' => "'",
        0xFFFD => "?",
        _ when Rune.IsWhiteSpace(rune) || Rune.IsControl(rune) => " ",
        _ when Rune.GetUnicodeCategory(rune) is UnicodeCategory.Format or UnicodeCategory.PrivateUse
            or UnicodeCategory.OtherNotAssigned => "",
        _ => rune.ToString(),
    };
}
