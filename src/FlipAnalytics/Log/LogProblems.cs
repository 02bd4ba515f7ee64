using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Collects problems while a log is read.</summary>
internal sealed class LogProblems
{
    private readonly List<LogProblem> problems = [];

    public void Error(string file, int? row, string? column, string? found, string expected, string remedy) =>
        Add(Severity.Error, file, row, column, found, expected, remedy);

    public void Warning(string file, int? row, string? column, string? found, string expected, string remedy) =>
        Add(Severity.Warning, file, row, column, found, expected, remedy);

    /// <summary>All problems, file by file in the order the files are read, and by line within a file.</summary>
    public ImmutableArray<LogProblem> Sorted()
    {
        List<string> files = [.. problems.Select(problem => problem.File).Distinct()];
        return [.. problems.OrderBy(problem => files.IndexOf(problem.File)).ThenBy(problem => problem.Row ?? 0)];
    }

    private void Add(
        Severity severity, string file, int? row, string? column, string? found, string expected, string remedy) =>
        problems.Add(new(
            severity,
            CleanText.OnOneLine(file),
            row,
            column is null ? null : CleanText.OnOneLine(Short(column)),
            found is null ? null : CleanText.OnOneLine(Short(found)),
            expected,
            CleanText.OnOneLine(remedy)));

    /// <summary>What a cell says, short enough to be read in a list of problems.</summary>
    private static string Short(string text)
    {
        const int LongestShown = 60;
        if (text.Length <= LongestShown)
            return text;
        int end = char.IsHighSurrogate(text[LongestShown - 1]) ? LongestShown - 1 : LongestShown;
        return text[..end] + "...";
    }
}
