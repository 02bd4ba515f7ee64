using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Rows of a file that could not be used, so that no figure holds what they say.</summary>
/// <param name="File">File name, such as pieces.csv.</param>
/// <param name="Rows">How many of its rows; all of them where the file cannot be read.</param>
/// <param name="OfRows">How many it has.</param>
/// <param name="Amounts">What they hold, as far as it can be read.</param>
public sealed record RowsSetAside(string File, int Rows, int OfRows, AmountsSetAside Amounts)
{
    /// <summary>The files that have such rows.</summary>
    /// <param name="reading">What came of reading a log.</param>
    public static ImmutableArray<RowsSetAside> Of(LogReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return
        [
            .. reading.Tables.Where(table => table.IsPresent)
                .Select(table => new RowsSetAside(table.File, table.IsReadable ? table.RowsSetAside : table.Rows, table.Rows, table.Aside))
                .Where(table => table.Rows > 0),
        ];
    }
}
