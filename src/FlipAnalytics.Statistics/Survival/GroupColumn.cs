using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A grouping of the rows whose level effects are shrunk towards zero.</summary>
/// <param name="Name">What the grouping is called.</param>
/// <param name="Levels">The levels; one that no row has is allowed.</param>
/// <param name="Level">Per row the index into <paramref name="Levels"/>; −1 where the row has none and so no effect.</param>
public sealed record GroupColumn(string Name, ImmutableArray<string> Levels, int[] Level)
{
    /// <summary>Checks lengths and indices against the number of rows.</summary>
    internal void Validate(int rowCount)
    {
        if (Levels.IsDefault || Level.Length != rowCount)
        {
            throw new ArgumentException(
                $"Group '{Name}' must have levels and one level index a row: {rowCount} rows, {Level.Length} indices.");
        }

        for (int row = 0; row < rowCount; row++)
        {
            if (Level[row] < -1 || Level[row] >= Levels.Length)
            {
                throw new ArgumentException(
                    $"Group '{Name}', row {row}: level index {Level[row]} is not between -1 (none) and {Levels.Length - 1}.");
            }
        }
    }
}
