using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Hands-on hours of each piece: the hours in <c>pieces.csv</c>, else the sum of its entries in <c>hours.csv</c>.</summary>
public static class BenchHours
{
    /// <summary>Hours by piece id; a piece without any record of hours is not in it.</summary>
    /// <param name="log">The log.</param>
    public static ImmutableDictionary<string, decimal> ByPiece(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var hours = log.Hours.Where(entry => entry.PieceId is not null)
            .GroupBy(entry => entry.PieceId!, StringComparer.OrdinalIgnoreCase)
            .ToImmutableDictionary(g => g.Key, g => g.Sum(entry => entry.Hours), StringComparer.OrdinalIgnoreCase);
        return hours.SetItems(log.Pieces.Where(p => p.Hours is not null)
            .Select(p => KeyValuePair.Create(p.Id, p.Hours!.Value)));
    }
}
