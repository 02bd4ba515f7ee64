using System.Collections.Immutable;
using System.Globalization;
using System.Text;

using CsvHelper;

namespace FlipAnalytics;

/// <summary>The rows of a table on which figures rest, as text: a line of CSV each, after its line in the file.</summary>
/// <param name="File">File of the log.</param>
/// <param name="Columns">Columns, as the header of a CSV file.</param>
/// <param name="Rows">Rows such as <c>33: P0031,dresser,2026-02-11</c>, in file order.</param>
public sealed record QuarterKeptTable(string File, string Columns, ImmutableArray<string> Rows);

/// <summary>A row of the log in the columns that figures rest on.</summary>
/// <param name="Of">Its table.</param>
/// <param name="Line">Line of the file; 0 where the log was not read from one.</param>
/// <param name="Cells">Its cells, a cell a column of <see cref="QuarterKeptFacts.ColumnsOf"/>; empty where unknown.</param>
/// <param name="Record">The record.</param>
internal sealed record QuarterKeptRow(LogRecords Of, int Line, ImmutableArray<string> Cells, object Record)
{
    /// <summary>A cell; null where empty or where the table has no such column.</summary>
    public string? this[string column] => QuarterKeptFacts.ColumnsOf(Of.Table).FindIndex(known => known.Name == column) is >= 0 and var place
        && Cells[place].Length > 0 ? Cells[place] : null;
}

/// <summary>
/// The rows of a log that a quarter's figures rest on. Any row up to its date may bear on them (a can opened earlier, hours
/// that share a cost), so all are kept, but only in columns that count; what is free text, looks or asking history is not.
/// </summary>
internal static class QuarterKeptFacts
{
    // No figure of a quarter rests on these.
    private static readonly string[] ColumnsThatDoNotCount =
        ["title", "material", "condition", "color", "finish", "source", "sticker_price", "notes"];

    private static readonly LogTable[] TablesThatDoNotCount = [Columns.Asking, Columns.Colors];

    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with
    {
        NewLine = "\n",
        FormatProvider = CultureInfo.InvariantCulture,
    };

    private static readonly Dictionary<LogTable, List<LogColumn>> ColumnsByTable = LogRecords.All.ToDictionary(
        table => table.Table,
        table => table.Table.Columns.Where(column => !ColumnsThatDoNotCount.Contains(column.Name)).ToList());

    /// <summary>The tables that count.</summary>
    public static ImmutableArray<LogRecords> Tables { get; } =
        [.. LogRecords.All.Where(table => !TablesThatDoNotCount.Contains(table.Table))];

    /// <summary>The columns of a table that count.</summary>
    public static List<LogColumn> ColumnsOf(LogTable table) => ColumnsByTable[table];

    /// <summary>The rows of a table.</summary>
    /// <param name="log">The log.</param>
    /// <param name="of">The table.</param>
    /// <param name="lineOf">Line of a record in its file; null for the line it was read from.</param>
    public static ImmutableArray<QuarterKeptRow> RowsOf(SalesLog log, LogRecords of, Func<LogRecords, object, int>? lineOf = null) =>
        [.. of.In(log).Select(record => RowOf(of, record, lineOf?.Invoke(of, record) ?? of.Row(record)))];

    /// <summary>The tables of a log that have rows, as text.</summary>
    public static ImmutableArray<QuarterKeptTable> Write(SalesLog log) =>
        [.. Tables.Select(of => Write(of, RowsOf(log, of))).Where(table => table.Rows.Length > 0)];

    /// <summary>
    /// The log that the text tells of, and where each of its records stood in the files; null where a row cannot be read.
    /// </summary>
    /// <param name="tables">The tables.</param>
    /// <param name="asOf">Date of the log.</param>
    /// <param name="workshop">Its settings.</param>
    public static (SalesLog Log, Func<LogRecords, object, int> LineOf)? Read(
        ImmutableArray<QuarterKeptTable> tables, DateOnly asOf, Workshop workshop)
    {
        Dictionary<string, byte[]> texts = [];
        Dictionary<string, int[]> lines = [];
        foreach (QuarterKeptTable table in tables)
        {
            StringBuilder text = new(table.Columns);
            List<int> numbers = [];
            foreach (string row in table.Rows)
            {
                int end = row.IndexOf(": ", StringComparison.Ordinal);
                if (end < 0 || !int.TryParse(row.AsSpan(0, end), NumberStyles.None, CultureInfo.InvariantCulture, out int line))
                    return null;
                text.Append('\n').Append(row, end + 2, row.Length - end - 2);
                numbers.Add(line);
            }

            texts[table.File] = Encoding.UTF8.GetBytes(text.Append('\n').ToString());
            lines[table.File] = [.. numbers];
        }

        LogProblems problems = new();
        RowReading reading = new("", workshop.Currency, new Spellings(mergesWords: false), problems) { AtHand = texts };
        SalesLog log = new() { Date = asOf, Workshop = workshop };
        Dictionary<(LogTable, int), int> known = [];
        foreach (LogRecords of in Tables)
        {
            IReadOnlyList<object> records = of.Read(reading);
            int[] numbers = lines.GetValueOrDefault(of.Table.File) ?? [];
            if (records.Count != numbers.Length)
                return null;
            log = of.With(log, records);
            // A record knows its line in the text at hand, also once the log is looked at as of an earlier day.
            for (int i = 0; i < numbers.Length; i++)
                known[(of.Table, of.Row(records[i]))] = numbers[i];
        }

        return problems.Sorted().Any(problem => problem.Severity == Severity.Error) ? null
            : (log, (of, record) => known[(of.Table, of.Row(record))]);
    }

    private static QuarterKeptRow RowOf(LogRecords of, object record, int line) => new(
        of,
        line,
        [.. ColumnsOf(of.Table).Select(column => Canonical(column, of.Cell(record, column.Name)))],
        record);

    // The same number is the same text, however many zeros the owner wrote behind it.
    private static string Canonical(LogColumn column, string? cell) => cell is null ? ""
        : column.Kind is ColumnKind.Money or ColumnKind.Number
            && decimal.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal number)
            ? number.Trimmed().ToString(CultureInfo.InvariantCulture)
            : cell;

    private static QuarterKeptTable Write(LogRecords of, ImmutableArray<QuarterKeptRow> rows)
    {
        List<LogColumn> all = ColumnsOf(of.Table);
        int[] places = [.. Enumerable.Range(0, all.Count).Where(i => all[i].IsRequired || rows.Any(row => row.Cells[i].Length > 0))];
        return new(
            of.Table.File,
            Csv([.. places.Select(i => all[i].Name)]),
            [
                .. rows.Select(row => string.Create(CultureInfo.InvariantCulture,
                    $"{row.Line}: {Csv([.. places.Select(i => Written(all[i], row.Cells[i]))])}")),
            ]);
    }

    private static string Written(LogColumn column, string cell) =>
        column.Kind is ColumnKind.Name or ColumnKind.Label or ColumnKind.Text ? CellText.Escape(cell) : cell;

    private static string Csv(string[] cells)
    {
        using MemoryStream stream = new();
        using (CsvWriter csv = CsvWriter.Create(stream, Options, leaveOpen: true))
            csv.WriteRecord(cells);
        return Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length)).TrimEnd('\n');
    }
}
