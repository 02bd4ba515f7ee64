using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A row that took no part because something the model needs is missing in it.</summary>
/// <param name="Row">Its place in the data, counting from 0.</param>
/// <param name="MissingColumns">The columns without a value there, in the order the model names them.</param>
public sealed record LeftOutRow(int Row, ImmutableArray<string> MissingColumns)
{
    /// <summary>For people.</summary>
    public override string ToString() =>
        $"row {Row}: {Listing.Quoted(MissingColumns)} {(MissingColumns.Length == 1 ? "is" : "are")} missing";
}
