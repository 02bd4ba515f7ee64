using System.Collections.Immutable;
using System.Globalization;
using System.Text;

using CsvHelper;

namespace FlipAnalytics;

/// <summary>
/// Writes a log as a folder of CSV files and <c>workshop.toml</c> that any spreadsheet opens and
/// <see cref="SalesLogReader"/> reads back as the same log.
/// </summary>
public static class SalesLogWriter
{
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with
    {
        NewLine = "\n",
        FormatProvider = CultureInfo.InvariantCulture,
    };

    /// <summary>
    /// Writes all tables that have rows, and the settings. Columns without any value are left out unless they are
    /// required. No file is touched before all of them are written in full.
    /// </summary>
    /// <param name="log">The log.</param>
    /// <param name="folder">The folder; made if it does not exist.</param>
    /// <param name="overwrite">
    /// Whether files of a log that is there already may be replaced, with the loss of whatever is in them and not in
    /// <paramref name="log"/>, such as unknown columns and rows set aside.
    /// </param>
    /// <exception cref="IOException">A log is there already and may not be replaced, or writing fails.</exception>
    /// <exception cref="ArgumentException">A text of the log has a zero character in it.</exception>
    public static void Write(SalesLog log, string folder, bool overwrite = false)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        if (!overwrite && ExistingFile(folder) is { } existing)
            throw new IOException($"{existing} is there already; name an empty folder, or allow it to be replaced.");

        OutputFiles.WriteLog(Files(log, folder));
    }

    /// <summary>The files of a log, as they are written into a folder.</summary>
    internal static IEnumerable<(string Path, ReadOnlyMemory<byte> Content)> Files(SalesLog log, string folder)
    {
        foreach (LogRecords of in LogRecords.All)
        {
            ImmutableArray<object> records = of.In(log);
            string path = Path.Combine(folder, of.Table.File);
            // An old file of a table that has no rows now keeps its header only, so that its rows do not come back.
            if (records.Length > 0 || of.Table == Columns.Pieces || File.Exists(path))
                yield return (path, Table(of, records));
        }

        yield return (Path.Combine(folder, Columns.WorkshopFile), Encoding.UTF8.GetBytes(WorkshopText.Of(log.Workshop)));
    }

    /// <summary>The first file of a log that a folder holds; null for none.</summary>
    internal static string? ExistingFile(string folder) =>
        Columns.Tables.Select(table => table.File)
            .Append(Columns.WorkshopFile)
            .Select(file => Path.Combine(folder, file))
            .FirstOrDefault(path => File.Exists(path) || Directory.Exists(path));

    private static byte[] Table(LogRecords of, ImmutableArray<object> records)
    {
        LogTable table = of.Table;
        List<LogColumn> columns =
        [
            .. table.Columns.Where(
                column => column.IsRequired || records.Any(record => of.Cell(record, column.Name) is not null)),
        ];
        using MemoryStream bytes = new();
        using (CsvWriter csv = CsvWriter.Create(bytes, Options, leaveOpen: true))
        {
            csv.WriteHeader([.. columns.Select(column => column.Name)]);
            string[] cells = new string[columns.Count];
            foreach (object record in records)
            {
                for (int i = 0; i < cells.Length; i++)
                    cells[i] = Written(columns[i], of.Cell(record, columns[i].Name), table);
                csv.WriteRecord(cells);
            }
        }

        return bytes.ToArray();
    }

    private static string Written(LogColumn column, string? cell, LogTable table)
    {
        if (cell is null)
            return "";
        if (column.Kind is not (ColumnKind.Name or ColumnKind.Label or ColumnKind.Text))
            return cell;
        if (cell.Contains('\0', StringComparison.Ordinal))
            throw new ArgumentException($"A text for {column.Name} in {table.File} has a zero character in it, which no text file may hold; take it out.");
        return CellText.Escape(cell);
    }
}
