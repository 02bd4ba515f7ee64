using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>Makes texts fit a width, measured in the font they are drawn with.</summary>
internal static class TextFitting
{
    private const string Ellipsis = "…";

    /// <summary>A text on one line that is at most so wide; what is cut is marked with an ellipsis.</summary>
    /// <param name="text">Any text; control characters count as spaces.</param>
    /// <param name="width">Pixels.</param>
    /// <param name="look">How it is drawn.</param>
    public static string Shorten(string text, float width, Lettering look)
    {
        string line = OneLine(text);
        if (look.Measure(line).Width <= width)
            return line;
        int[] letters = StringInfo.ParseCombiningCharacters(line);
        int fits = 0, tooLong = letters.Length;
        while (tooLong - fits > 1)
        {
            int middle = (fits + tooLong) / 2;
            if (look.Measure(Cut(line, letters[middle])).Width <= width)
                fits = middle;
            else
                tooLong = middle;
        }

        return fits == 0 ? Ellipsis : Cut(line, letters[fits]);
    }

    /// <summary>A text broken at spaces into lines that are at most so wide; the last line allowed is shortened.</summary>
    public static string Wrap(string text, float width, Lettering look, int mostLines)
    {
        string[] words = OneLine(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var lines = new List<string>();
        int next = 0;
        while (next < words.Length)
        {
            string line = words[next++];
            if (lines.Count == mostLines - 1)
                line = string.Join(' ', words[(next - 1)..]);
            else
                while (next < words.Length && look.Measure($"{line} {words[next]}").Width <= width)
                    line += " " + words[next++];
            lines.Add(Shorten(line, width, look));
            if (lines.Count == mostLines)
                break;
        }

        return string.Join('\n', lines);
    }

    /// <summary>The text without line ends and other control characters, which no picture can show.</summary>
    public static string OneLine(string text) =>
        CleanText.OnOneLine(text).Trim();

    private static string Cut(string line, int end) => line[..end].TrimEnd() + Ellipsis;
}
