namespace FlipAnalytics;

/// <summary>Where a known column stands in a file.</summary>
/// <param name="Column">The column.</param>
/// <param name="Position">Its place among the headers, from 0.</param>
internal sealed record ColumnPlace(LogColumn Column, int Position);
