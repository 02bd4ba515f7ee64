namespace FlipAnalytics;

/// <summary>A change of a piece's asking price after the first: a row of <c>asking.csv</c>.</summary>
/// <param name="PieceId">The piece.</param>
/// <param name="Date">Day from which the price holds.</param>
/// <param name="Price">The new asking price, in the workshop's currency.</param>
/// <param name="Row">Line of the file.</param>
public sealed record AskingPrice(string PieceId, DateOnly Date, decimal Price, int Row = 0);
