namespace FlipAnalytics;

/// <summary>What the owner says of a colour word: a row of <c>colors.csv</c>.</summary>
/// <param name="Word">The colour word as pieces use it.</param>
/// <param name="Family">The family it belongs to, such as green.</param>
/// <param name="Hex">Its sRGB value as #rrggbb.</param>
/// <param name="Row">Line of the file.</param>
public sealed record Colour(string Word, string? Family, string? Hex, int Row = 0);
