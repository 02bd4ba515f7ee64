using System.Globalization;
using System.Text;

using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>The check of a log as text of at most 100 columns.</summary>
public static class LogCheckText
{
    private const int FileColumn = 16;

    /// <summary>The answer first, then what is in the log, what to put right, and what would add to it.</summary>
    /// <param name="check">The check.</param>
    public static string Render(LogCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        StringBuilder text = new();
        text.AppendWrapped("", "", Answer(check));
        if (check.HasLog && check.Pieces > 0)
            text.Append('\n').AppendWrapped("  ", "  ", Contents(check));
        AppendProblems(text, check, Severity.Error, "To put right");
        AppendProblems(text, check, Severity.Warning, "Worth a look");
        if (!check.SimilarWords.IsEmpty)
        {
            text.Append("\nWords that may mean the same\n");
            foreach (string words in check.SimilarWords)
                text.AppendWrapped("  - ", "    ", words);
        }

        AppendTables(text, check);
        if (!check.Missing.IsEmpty)
        {
            text.Append("\nNot there, none of it needed. What each would add:\n");
            foreach (MissingFile missing in check.Missing)
                AppendFile(text, missing.File, missing.Adds);
        }

        return text.ToString();
    }

    /// <summary>How many pieces were read and what could not be used, in a sentence or two.</summary>
    /// <param name="check">The check.</param>
    public static string Answer(LogCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (!check.HasLog)
            return $"No log could be read. {Counted(check.Errors, "problem")} to put right first, listed below.";
        string read = $"{Counted(check.Pieces, "piece")} read";
        if (check.RowsSetAside > 0)
        {
            IEnumerable<string> places = check.Tables
                .Where(table => table.RowsSetAside > 0)
                .Select(table => string.Create(CultureInfo.InvariantCulture, $"{table.RowsSetAside} in {table.File}"));
            string stays = check.RowsSetAside == 1
                ? "It stays in its file, but no answer counts on it."
                : "They stay in their files, but no answer counts on them.";
            return $"{read}, {Counted(check.RowsSetAside, "row")} set aside: {string.Join(", ", places)}. {stays}{Cells(check, " ")}";
        }

        if (check.CellsSetAside > 0)
            return $"{read}, every row used. {Cells(check, "")}";

        return check.Errors > 0 ? $"{read}, {Counted(check.Errors, "problem")} to put right."
            : check.Warnings > 0 ? $"{read}, nothing set aside, {Counted(check.Warnings, "thing")} worth a look."
            : check.Pieces == 0 ? $"{read}: the log is empty and in order."
            : check.WordsAlike.Count(words => !words.TakenAsOne) is > 0 and var words ? $"{read}, nothing to put right, {Counted(words, "word")} to look at."
            : $"{read}, nothing to put right.";
    }

    private static string Cells(LogCheck check, string before) =>
        check.CellsSetAside == 0 ? ""
        : check.CellsSetAside == 1 ? $"{before}1 cell cannot be read and counts as unknown."
        : $"{before}{Counted(check.CellsSetAside, "cell")} cannot be read and count as unknown.";

    /// <summary>Where the pieces stand and what time the log covers, in a sentence or two.</summary>
    /// <param name="check">The check.</param>
    public static string Contents(LogCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        string counts = string.Create(
            CultureInfo.InvariantCulture,
            $"{check.Sold} sold, {check.OnSale} on sale, {check.InTheWorkshop} in the workshop, {check.Gone} gone without a sale.");
        return check is { FirstFact: { } first, LastFact: { } last }
            ? string.Create(
                CultureInfo.InvariantCulture, $"{counts} Dates run from {first:yyyy-MM-dd} to {last:yyyy-MM-dd}.")
            : $"{counts} Nothing has a date, so nothing can be said about speed or quarters.";
    }

    private static void AppendProblems(StringBuilder text, LogCheck check, Severity severity, string heading)
    {
        List<LogProblem> problems = [.. check.Problems.Where(problem => problem.Severity == severity)];
        if (problems.Count == 0)
            return;
        text.Append(CultureInfo.InvariantCulture, $"\n{heading}: {problems.Count}\n");
        foreach (LogProblem problem in problems)
            text.AppendWrapped("  - ", "    ", problem.ToString());
    }

    private static void AppendTables(StringBuilder text, LogCheck check)
    {
        if (check.Tables.IsEmpty)
            return;
        text.Append("\nTables\n");
        foreach (TableReading table in check.Tables)
        {
            string rows = table.IsReadable ? Counted(table.Rows, "row") : $"not readable, about {Counted(table.Rows, "row")}";
            string aside = table is { IsReadable: true, RowsSetAside: > 0 }
                ? string.Create(CultureInfo.InvariantCulture, $", {table.RowsSetAside} set aside")
                : "";
            if (table.CellsSetAside > 0)
                aside += $", {Counted(table.CellsSetAside, "cell")} unknown";
            string unknown = table.UnknownColumns.IsEmpty
                ? ""
                : $"; columns of your own, left alone: {string.Join(", ", table.UnknownColumns)}";
            AppendFile(text, table.File, rows + aside + unknown);
        }
    }

    private static void AppendFile(StringBuilder text, string file, string what) =>
        text.AppendWrapped("  " + file.PadRight(FileColumn), new string(' ', FileColumn + 2), what);
}
