using System.Collections.Frozen;
using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Reads the header of a table: which known column stands where, and what the log does not know.</summary>
internal static class TableHeader
{
    /// <summary>Place of each known column among the headers, −1 where it is not there; null if the file cannot be used.</summary>
    public static int[]? Read<T>(
        IReadOnlyList<string> headers, bool isBroken, ReadOnlySpan<byte> bytes, LogProblems problems, ReadTable<T> rows)
        where T : class
    {
        LogTable table = rows.Table;
        if (IsEmpty(bytes))
            return Refused(
                null,
                "a header line",
                $"The file is empty; begin it with the line {string.Join(',', table.Columns.Take(4).Select(column => column.Name))} and so on.");
        if (OtherSeparator(bytes) is { } separator)
            return Refused(
                1,
                "commas between the columns",
                $"The columns are separated by {separator}; save the file again as CSV with commas.");

        if (isBroken)
            return Refused(1, "a header line", "A quote in the header is out of place; take it out.");

        Dictionary<string, int> places = [];
        List<string> unknown = [];
        bool isTwice = false;
        for (int i = 0; i < headers.Count; i++)
        {
            string name = CleanText.OnOneLine(headers[i]).Trim().ToLowerInvariant();
            if (!table.Columns.Any(column => column.Name == name))
            {
                unknown.Add(headers[i].Trim());
            }
            else if (!places.TryAdd(name, i))
            {
                problems.Error(
                    table.File,
                    1,
                    name,
                    null,
                    "each column once",
                    "Two columns have this name; rename or remove one of them.");
                isTwice = true;
            }
        }

        rows.Headers = places.Keys.ToFrozenSet();
        rows.UnknownColumns = [.. unknown.Where(name => name.Length > 0).Select(CleanText.OnOneLine)];
        ReportNearMisses(rows.UnknownColumns, table, places, problems);
        bool isMissing = false;
        foreach (LogColumn column in table.Columns.Where(column => column.IsRequired))
        {
            if (places.ContainsKey(column.Name))
                continue;
            problems.Error(table.File, 1, column.Name, null, "a column of this name", $"Add it: {column.Meaning}");
            isMissing |= !CanDoWithout(column);
        }

        return isTwice || isMissing ? null : [.. table.Columns.Select(column => places.GetValueOrDefault(column.Name, -1))];

        int[]? Refused(int? line, string expected, string remedy)
        {
            problems.Error(table.File, line, null, null, expected, remedy);
            return null;
        }
    }

    // Without a single purchase price the pieces still tell what sells and how fast.
    private static bool CanDoWithout(LogColumn column) => column == Columns.Pieces["bought_price"];

    private static void ReportNearMisses(
        ImmutableArray<string> unknown, LogTable table, Dictionary<string, int> places, LogProblems problems)
    {
        foreach (string name in unknown)
        {
            IEnumerable<string> absent = table.Columns
                .Select(column => column.Name)
                .Where(known => !places.ContainsKey(known));
            if (new KnownWords(absent).Meant(name) is { } meant)
                problems.Warning(
                    table.File,
                    1,
                    name,
                    null,
                    "a column that the log knows",
                    $"It was left out; if you mean {meant}, rename it.");
        }
    }

    private static bool IsEmpty(ReadOnlySpan<byte> bytes) => !bytes.ContainsAnyExcept(" \t\r\n"u8);

    private static string? OtherSeparator(ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> text = bytes.TrimStart("\r\n "u8);
        int end = text.IndexOfAny((byte)'\r', (byte)'\n');
        ReadOnlySpan<byte> line = end < 0 ? text : text[..end];
        int commas = line.Count((byte)',');
        return line.StartsWith("sep="u8) && !line.StartsWith("sep=,"u8) || line.Count((byte)';') > commas ? "semicolons"
            : line.Count((byte)'\t') > commas ? "tabs"
            : line.Count((byte)'|') > commas ? "bars"
            : null;
    }
}
