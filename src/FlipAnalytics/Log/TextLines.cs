using System.Text;

namespace FlipAnalytics;

/// <summary>Text on a terminal: lines of at most <see cref="Width"/> columns.</summary>
internal static class TextLines
{
    /// <summary>Columns of a line.</summary>
    public const int Width = 100;

    /// <summary>Lines that an answer takes unasked, so that with the reason for its date it fits a screen of 40.</summary>
    public const int ScreenLines = 36;

    /// <summary>Lines of a text in which each ends in a line feed.</summary>
    public static int LineCount(string text) => text.Count(sign => sign == '\n');

    /// <summary>Adds a text, broken at spaces; the first line begins with one indent, the others with another.</summary>
    public static StringBuilder AppendWrapped(this StringBuilder lines, string first, string others, string text)
    {
        string start = first;
        while (start.Length + text.Length > Width)
        {
            int room = Width - start.Length;
            int space = text.LastIndexOf(' ', room);
            int end = space > 0 ? space : room;
            lines.Append(start).Append(text.AsSpan(0, end).TrimEnd()).Append('\n');
            text = text[end..].TrimStart();
            start = others;
        }

        return lines.Append(start).Append(text).Append('\n');
    }

    /// <summary>A count with its noun, such as "1 row" and "2 rows".</summary>
    public static string Counted(int count, string noun) =>
        count == 1 ? $"1 {noun}" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{count} {noun}s");
}
