using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A stretch of days on the market at one asking price.</summary>
/// <param name="Start">Days after the first listing at which it begins.</param>
/// <param name="Stop">Days after the first listing at which it ends.</param>
/// <param name="LogAsking">Log of the asking price; null where unknown.</param>
/// <param name="Sold">Whether it ended in a sale.</param>
internal sealed record AskingEpisode(double Start, double Stop, double? LogAsking, bool Sold);

/// <summary>The days of a piece on the market, cut at each change of its asking price.</summary>
internal static class AskingPath
{
    /// <summary>
    /// The episodes of a listed piece up to its sale, its leaving or the log's date; empty where a date needed is unknown.
    /// </summary>
    public static ImmutableArray<AskingEpisode> Of(Piece piece, IEnumerable<AskingPrice> changes, DateOnly logDate)
    {
        if (piece.ListedOn is not { } listed)
            return [];
        DateOnly? end = piece.LastDayOnMarket(logDate);
        if (end is null || end < listed)
            return [];

        double last = Crossing.DaysOnMarket(listed, end.Value);
        var episodes = ImmutableArray.CreateBuilder<AskingEpisode>();
        double start = 0;
        double? asking = Crossing.Log(piece.AskingPrice);
        foreach (AskingPrice change in changes.OrderBy(c => c.Date))
        {
            double at = Crossing.Day(change.Date) - Crossing.Day(listed);
            if (at >= last)
                break;
            if (at > start)
            {
                episodes.Add(new(start, at, asking, Sold: false));
                start = at;
            }

            asking = Crossing.Log(change.Price);
        }

        episodes.Add(new(start, last, asking, piece.State == PieceState.Sold));
        return episodes.ToImmutable();
    }
}
