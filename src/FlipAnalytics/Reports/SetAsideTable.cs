using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Rows of the log that are in no figure of a report, as a table beside its figures.</summary>
internal static class SetAsideTable
{
    /// <summary>A row a file.</summary>
    public static ReportTable Of(ImmutableArray<RowsSetAside> tables) => ReportTable.Of(
        "set-aside",
        "Rows of the log that could not be used",
        tables,
        ("file", "file of the log", table => table.File),
        ("rows", "rows set aside", table => table.Rows),
        ("of_rows", "rows it has", table => table.OfRows));
}
