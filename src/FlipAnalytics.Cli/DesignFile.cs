using CsvHelper;

namespace FlipAnalytics.Cli;

/// <summary>Writes the data of a fit as CSV.</summary>
internal static class DesignFile
{
    public static void Write(DesignTable table, string path)
    {
        using CsvWriter csv = CsvWriter.Create(
            new StreamWriter(path), CsvWriterOptions.Default with { NewLine = "\n" }, leaveOpen: false);
        csv.WriteHeader([.. table.Columns]);
        foreach (var row in table.Rows)
            csv.WriteRecord([.. row]);
    }
}
