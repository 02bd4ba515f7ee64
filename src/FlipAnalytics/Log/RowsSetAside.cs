using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Rows of a file that could not be used, so that no figure holds what they say.</summary>
/// <param name="File">File name, such as pieces.csv.</param>
/// <param name="Rows">How many of its rows; all of them where the file cannot be read.</param>
/// <param name="OfRows">How many it has.</param>
public sealed record RowsSetAside(string File, int Rows, int OfRows)
{
    /// <summary>The files that have such rows.</summary>
    /// <param name="reading">What came of reading a log.</param>
    public static ImmutableArray<RowsSetAside> Of(LogReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return
        [
            .. reading.Tables.Where(table => table.IsPresent)
                .Select(table => new RowsSetAside(table.File, table.IsReadable ? table.RowsSetAside : table.Rows, table.Rows))
                .Where(table => table.Rows > 0),
        ];
    }

    /// <summary>What is set aside, in a sentence; null where nothing is.</summary>
    /// <param name="tables">The files with such rows.</param>
    public static string? Sentence(ImmutableArray<RowsSetAside> tables) => tables.IsDefaultOrEmpty ? null
        : string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"Set aside and in none of these figures: {string.Join(", ", tables.Select(table => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{table.Rows} of {TextLines.Counted(table.OfRows, "row")} of {table.File}")))}; flip check says why.");
}
