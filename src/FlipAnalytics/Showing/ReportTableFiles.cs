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
    /// Writes each table to <c>NAME.csv</c>; a file of that name is replaced, after all have been written in full. A text
    /// that a spreadsheet would take for a formula gets an apostrophe before it.
    /// </summary>
    /// <param name="tables">The tables.</param>
    /// <param name="folder">The folder; made if it does not exist.</param>
    /// <returns>Paths of the files, in the order of the tables.</returns>
    /// <exception cref="IOException">Writing fails.</exception>
    public static ImmutableArray<string> Write(IEnumerable<ReportTable> tables, string folder)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        Directory.CreateDirectory(folder);
        List<string> paths = [];
        using StagedFiles files = new(folder);
        foreach (ReportTable table in tables)
        {
            WriteTo(files.Add(table.Name + ".csv"), table);
            paths.Add(Path.Combine(folder, table.Name + ".csv"));
        }

        files.Commit();
        return [.. paths];
    }

    /// <summary>A table as the bytes of a CSV file.</summary>
    internal static byte[] Bytes(ReportTable table)
    {
        using MemoryStream bytes = new();
        WriteTo(bytes, table);
        return bytes.ToArray();
    }

    // Closes the stream.
    private static void WriteTo(Stream stream, ReportTable table)
    {
        using CsvWriter csv = CsvWriter.Create(stream, Options, leaveOpen: false);
        csv.WriteHeader([.. table.Columns.Select(column => column.Name)]);
        foreach (ImmutableArray<object?> row in table.Rows)
            csv.WriteRecord([.. row.Select(Written)]);
    }

    private static string Written(object? cell) =>
        cell is string text ? CellText.Escape(text.Replace("\0", "", StringComparison.Ordinal)) : ReportTable.TextOf(cell);
}
