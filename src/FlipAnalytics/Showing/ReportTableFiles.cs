using System.Collections.Immutable;
using System.Globalization;

using CsvHelper;

namespace FlipAnalytics;

/// <summary>Tables of a report as CSV files.</summary>
public static class ReportTableFiles
{
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with
    {
        NewLine = "\n",
        FormatProvider = CultureInfo.InvariantCulture,
    };

    /// <summary>
    /// Writes each table to <c>NAME.csv</c>, after all have been written in full. A file of that name is replaced where it is
    /// the same table. A text that a spreadsheet would take for a formula gets an apostrophe before it.
    /// </summary>
    /// <param name="tables">The tables.</param>
    /// <param name="folder">The folder; made if it does not exist.</param>
    /// <param name="replaces">Whether a file that is another table, or none, is replaced too.</param>
    /// <returns>Paths of the files, in the order of the tables.</returns>
    /// <exception cref="FileRefusedException">A file may not be replaced; nothing was written.</exception>
    /// <exception cref="IOException">Writing fails.</exception>
    public static ImmutableArray<string> Write(IEnumerable<ReportTable> tables, string folder, bool replaces = false)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        OutputFile[] files = [.. tables.Select(table => OutputFile.Table(Path.Combine(folder, table.Name + ".csv"), Bytes(table)))];
        OutputFiles.Write(files, replaces);
        return [.. files.Select(file => file.Path)];
    }

    /// <summary>A table as the bytes of a CSV file.</summary>
    internal static byte[] Bytes(ReportTable table)
    {
        using MemoryStream bytes = new();
        using (CsvWriter csv = CsvWriter.Create(bytes, Options, leaveOpen: true))
        {
            csv.WriteHeader([.. table.Columns.Select(column => Written(column.Name))]);
            foreach (ImmutableArray<object?> row in table.Rows)
                csv.WriteRecord([.. row.Select(Written)]);
        }

        return bytes.ToArray();
    }

    private static string Written(object? cell) =>
        cell is string text ? CellText.Clean(text) : ReportTable.TextOf(cell);
}
