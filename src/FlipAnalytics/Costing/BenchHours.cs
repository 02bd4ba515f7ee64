namespace FlipAnalytics;

/// <summary>Hands-on hours of each piece: the hours in <c>pieces.csv</c>, else the sum of its entries in <c>hours.csv</c>.</summary>
public static class BenchHours
{
    /// <summary>Hours by piece id; a piece without any record of hours is not in it.</summary>
    /// <param name="log">The log.</param>
    public static IReadOnlyDictionary<string, decimal> ByPiece(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        Dictionary<string, decimal> hours = new(StringComparer.OrdinalIgnoreCase);
        foreach (HoursEntry entry in log.Hours)
        {
            if (entry.PieceId is { } piece)
                hours[piece] = hours.GetValueOrDefault(piece) + entry.Hours;
        }

        foreach (Piece piece in log.Pieces)
        {
            if (piece.Hours is { } total)
                hours[piece.Id] = total;
        }

        return hours;
    }
}
