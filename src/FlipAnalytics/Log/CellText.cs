namespace FlipAnalytics;

/// <summary>
/// Keeps a spreadsheet from running a text as a formula (OWASP, CSV Injection): a text that begins with = + - @, a tab
/// or a line break is written with an apostrophe before it, and reading takes exactly one such apostrophe away. A text
/// that already looks so escaped gets one more, so that every text comes back as it was.
/// </summary>
public static class CellText
{
    private const char Apostrophe = '\'';

    /// <summary>The text as it is written into a cell.</summary>
    /// <param name="text">A text.</param>
    public static string Escape(string text) =>
        IsFormula(text.AsSpan().TrimStart(Apostrophe)) ? Apostrophe + text : text;

    /// <summary>The text of a cell as the owner meant it.</summary>
    /// <param name="cell">What the cell says.</param>
    public static string Unescape(string cell) =>
        cell.StartsWith(Apostrophe) && IsFormula(cell.AsSpan().TrimStart(Apostrophe)) ? cell[1..] : cell;

    /// <summary>A day as it is written into a cell; null where unknown.</summary>
    /// <param name="day">The day.</param>
    internal static string? Of(DateOnly? day) => day?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A text on one line, as it is written into a cell of what flip reports.</summary>
    /// <param name="text">A text.</param>
    public static string Clean(string text) => Escape(CleanText.OnOneLine(text).Trim());

    private static bool IsFormula(ReadOnlySpan<char> text) =>
        text is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..];
}
