using System.Globalization;
using CsvHelper;

namespace FlipAnalytics.Cli;

/// <summary>Writes the data of a fit as CSV.</summary>
internal static class DesignFile
{
    public static void Write(DesignTable table, string path, bool replaces)
    {
        using var bytes = new MemoryStream();
        using (CsvWriter csv = CsvWriter.Create(bytes, CsvWriterOptions.Default with { NewLine = "\n" }, leaveOpen: true))
        {
            csv.WriteHeader([.. table.Columns.Select(CellText.Clean)]);
            foreach (var row in table.Rows)
                csv.WriteRecord([.. row.Select(Written)]);
        }

        OutputFiles.Write([OutputFile.Table(path, bytes.ToArray())], replaces);
    }

    // A number below zero begins as a formula does, and is none.
    private static string Written(string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? cell : CellText.Clean(cell);
}
