using System.Collections.Immutable;
using System.Globalization;
using System.Text;

using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>The check of a log as text of at most 100 columns.</summary>
public static class LogCheckText
{
    private const int FileColumn = 16;
    private const int FewLines = 9;

    /// <summary>The answer first, then what to put right, what is worth a look, what is in the log, and what would add to it.</summary>
    /// <param name="check">The check.</param>
    /// <param name="all">Whether to list everything, however long; else what matters most, on one screen.</param>
    public static string Render(LogCheck check, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(check);
        string whole = Whole(check);
        return all || LineCount(whole) <= ScreenLines ? whole : Short(check);
    }

    private static string Whole(LogCheck check)
    {
        StringBuilder text = Top(check);
        foreach (Section section in Sections(check))
            text.Append(section.Heading).AppendJoin("", section.Items);
        AppendTables(text, check);
        if (!check.Missing.IsEmpty)
        {
            text.Append("\nNot there, none of it needed. What each would add:\n");
            ILookup<bool, MissingFile> missing = check.Missing.ToLookup(file => IsOccasional(file.File));
            foreach (MissingFile file in missing[false])
                AppendFile(text, file.File, file.Adds);
            if (missing[true].Any())
            {
                text.AppendWrapped("  ", "    ", $"For what happens now and then: {string.Join(", ", missing[true].Select(file => file.File))}; the README has their columns.");
            }
        }

        return text.ToString();
    }

    private static bool IsOccasional(string file) =>
        Columns.Tables.Any(table => table.IsOccasional && table.File == file);

    // What keeps rows from being used may fill the screen, but leaves a few lines to what is worth a look.
    private static string Short(LogCheck check)
    {
        StringBuilder text = Top(check);
        string files = Files(check);
        int left = ScreenLines - LineCount(text.ToString()) - LineCount(files);
        Section[] sections = [.. Sections(check, likeliestFirst: true)];
        for (int i = 0; i < sections.Length; i++)
        {
            int kept = sections.Skip(i + 1).Sum(later => Math.Min(later.Lines, FewLines));
            string shown = sections[i].Within(left - kept);
            text.Append(shown);
            left -= LineCount(shown);
        }

        return text.Append(files).ToString();
    }

    private static StringBuilder Top(LogCheck check)
    {
        StringBuilder text = new();
        text.AppendWrapped("", "", Answer(check));
        if (check.HasLog && check.Pieces > 0)
            text.Append('\n').AppendWrapped("  ", "  ", Contents(check));
        return text;
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

    private static IEnumerable<Section> Sections(LogCheck check, bool likeliestFirst = false)
    {
        Dictionary<(string, int?, string?), int> rank = [];
        foreach (var (finding, i) in check.Findings.Select((finding, i) => (finding, i)))
            rank.TryAdd((finding.File, finding.Row, finding.Column), i);
        foreach ((Severity severity, string heading) in new[] { (Severity.Error, "To put right"), (Severity.Warning, "Worth a look") })
        {
            IEnumerable<LogProblem> problems = check.Problems.Where(problem => problem.Severity == severity);
            if (likeliestFirst)
                problems = problems.OrderBy(problem => rank.GetValueOrDefault((problem.File, problem.Row, problem.Column), int.MaxValue));
            string[] items = [.. problems.Select(problem => Item(problem.ToString()))];
            if (items.Length > 0)
                yield return new(string.Create(CultureInfo.InvariantCulture, $"\n{heading}: {items.Length}\n"), [.. items]);
        }

        if (!check.SimilarWords.IsEmpty)
            yield return new("\nWords that may mean the same\n", [.. check.SimilarWords.Select(Item)]);
    }

    private static string Item(string what) => new StringBuilder().AppendWrapped("  - ", "    ", what).ToString();

    private static string Files(LogCheck check)
    {
        StringBuilder text = new StringBuilder().Append('\n');
        if (!check.Tables.IsEmpty)
        {
            text.AppendWrapped("", "  ", $"Read: {string.Join(", ", check.Tables.Select(table => string.Create(
                CultureInfo.InvariantCulture, $"{table.File} {Counted(table.Rows, "row")}{(table.IsReadable ? "" : ", not readable")}")))}.");
        }

        if (!check.Missing.IsEmpty)
            text.AppendWrapped("", "  ", $"Not there, none of it needed: {string.Join(", ", check.Missing.Select(missing => missing.File))}.");
        return text.AppendWrapped("", "  ", "--all lists everything, file by file.").ToString();
    }

    /// <summary>A heading and what stands under it, each of one line or more.</summary>
    private sealed record Section(string Heading, ImmutableArray<string> Items)
    {
        public int Lines => LineCount(Heading) + Items.Sum(LineCount);

        /// <summary>As many items as have room, and how many more there are; at least one.</summary>
        public string Within(int lines)
        {
            if (Lines <= lines)
                return Heading + string.Concat(Items);
            // One line says how many are left out.
            int room = lines - LineCount(Heading) - 1;
            int shown = 0;
            while (shown < Items.Length && (room -= LineCount(Items[shown])) >= 0)
                shown++;
            shown = Math.Max(1, shown);
            return Heading + string.Concat(Items.Take(shown))
                + string.Create(CultureInfo.InvariantCulture, $"  and {Items.Length - shown} more: --all lists them\n");
        }
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
