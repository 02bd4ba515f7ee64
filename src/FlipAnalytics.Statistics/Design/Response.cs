namespace FlipAnalytics.Statistics;

/// <summary>What a model explains: a column of numbers, as it is or transformed.</summary>
/// <param name="Column">The column's name in the data; for durations, what the spells measure.</param>
/// <param name="By">What is done to it, null for nothing.</param>
public sealed record Response(string Column, Transformation? By = null)
{
    /// <summary>The column's name in the data.</summary>
    public string Column { get; } = !string.IsNullOrWhiteSpace(Column)
        ? Column
        : throw new ArgumentException($"A response needs the name of a column, not '{Column}'.", nameof(Column));

    /// <summary>The response within a sentence.</summary>
    public override string ToString() => By is { } transformation ? transformation.WordsFor(Column) : Column;

    internal double[] Values(DataColumns data) => By is { } transformation
        ? transformation.Apply(Column, data)
        : data.NumbersOf(Column);
}
