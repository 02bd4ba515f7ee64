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
        problems.Add(new(severity, file, row, column, found is null ? null : Shown(found), expected, remedy));

    /// <summary>What a cell says, on one line and short enough to be read in a list of problems.</summary>
    private static string Shown(string found)
    {
        const int LongestShown = 60;
        bool isLong = found.Length > LongestShown;
        ReadOnlySpan<char> start = found.AsSpan(0, isLong ? LongestShown : found.Length);
        if (isLong && char.IsHighSurrogate(start[^1]))
            start = start[..^1];
        string text = string.Create(start.Length, start, static (shown, source) =>
        {
            for (int i = 0; i < source.Length; i++)
                shown[i] = char.IsControl(source[i]) ? ' ' : source[i];
        });
        return isLong ? text + "..." : text;
    }
}
