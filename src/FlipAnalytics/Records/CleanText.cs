using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>
/// Texts from outside (log, settings, options) as they are shown: without what would upset a terminal, reorder a line, hide in a
/// word or break a line in two. Unicode Standard, chapter 23 (control, format and default-ignorable characters); Unicode Technical
/// Report 36, Unicode Security Considerations, section 2.
/// </summary>
public static class CleanText
{
    /// <summary>Most characters of a name or label.</summary>
    public const int LongestName = 200;

    /// <summary>The limit of a name or label in words, to be read after "expected".</summary>
    public const string NameWords = "a name or a word or two, of at most 200 characters";

    private const string Cut = "...";
    private const int LongestShown = 200;

    /// <summary>The text on one line: line ends and control characters are spaces, what cannot be seen is gone.</summary>
    /// <param name="text">Any text.</param>
    public static string OnOneLine(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return IsClean(text, keepsLines: false) ? text : Cleaned(text, keepsLines: false);
    }

    /// <summary>The text without what cannot be seen, such as a mark of direction; control characters stay.</summary>
    /// <param name="text">Any text.</param>
    public static string WithoutHidden(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return IsClean(text, keepsLines: true) ? text
            : string.Concat(text.EnumerateRunes().Where(sign => Kind(sign) != Effect.Hides).Select(sign => sign.ToString()));
    }

    /// <summary>The text on one line, cut after some 200 characters, with a mark where it is cut.</summary>
    /// <param name="text">Any text.</param>
    public static string Shown(string text)
    {
        string line = OnOneLine(text);
        if (line.Length <= LongestShown)
            return line;
        int end = char.IsHighSurrogate(line[LongestShown - 1]) ? LongestShown - 1 : LongestShown;
        return line[..end].TrimEnd() + Cut;
    }

    /// <summary>A text of several lines: control characters are spaces, what cannot be seen is gone, line feeds stay.</summary>
    /// <param name="text">Any text.</param>
    public static string Lines(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return IsClean(text, keepsLines: true) ? text : Cleaned(text, keepsLines: true);
    }

    /// <summary>A JSON document with these characters as escapes, which stand in its texts alone; its line feeds stay.</summary>
    /// <param name="json">The document.</param>
    public static string Json(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (IsClean(json, keepsLines: true))
            return json;
        StringBuilder escaped = new(json.Length + 64);
        foreach (Rune sign in json.EnumerateRunes())
        {
            if (sign.Value == '\n' || Kind(sign) == Effect.None)
                escaped.Append(sign.ToString());
            else
                foreach (char unit in sign.ToString())
                    escaped.Append(CultureInfo.InvariantCulture, $"\\u{(int)unit:x4}");
        }

        return escaped.ToString();
    }

    private static bool IsClean(string text, bool keepsLines)
    {
        foreach (char sign in text)
        {
            // What is written in the Latin alphabet, and most of the rest, is passed by at once.
            if (sign is (>= ' ' and < '\u007f') or (>= '\u00a1' and < '\u00ad') or (> '\u00ad' and < '\u034f'))
                continue;
            if (!(sign == '\n' && keepsLines) && (char.IsSurrogate(sign) || Kind(new Rune(sign)) != Effect.None))
                return false;
        }

        return true;
    }

    private static string Cleaned(string text, bool keepsLines)
    {
        StringBuilder clean = new(text.Length);
        // A lone half of a surrogate pair comes as U+FFFD, the sign for what cannot be read.
        foreach (Rune sign in text.EnumerateRunes())
        {
            if (sign.Value == '\n' && keepsLines)
                clean.Append('\n');
            else if (Kind(sign) == Effect.Breaks)
                clean.Append(' ');
            else if (Kind(sign) == Effect.None)
                clean.Append(sign.ToString());
        }

        return clean.ToString();
    }

    private static Effect Kind(Rune sign) => Rune.GetUnicodeCategory(sign) switch
    {
        UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => Effect.Breaks,
        UnicodeCategory.Format => Effect.Hides,
        _ => IsIgnorable(sign.Value) ? Effect.Hides : Effect.None,
    };

    // Default_Ignorable_Code_Point of the Unicode Character Database, 16.0, without those of category Cf.
    private static bool IsIgnorable(int code) => code is 0x034F or 0x115F or 0x1160 or 0x17B4 or 0x17B5
        or (>= 0x180B and <= 0x180F) or 0x2065 or 0x3164 or (>= 0xFE00 and <= 0xFE0F) or 0xFFA0
        or (>= 0xFFF0 and <= 0xFFF8) or (>= 0xE0000 and <= 0xE0FFF);

    private enum Effect
    {
        None,
        Breaks,
        Hides,
    }
}
