using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>An asking price from a day on.</summary>
/// <param name="Day">Days since the first listing.</param>
/// <param name="Price">The asking price.</param>
public sealed record AskedPrice(int Day, decimal Price);

/// <summary>What was asked for a piece since it was first listed, and what came of it.</summary>
/// <param name="PieceId">The piece.</param>
/// <param name="Name">Its type, with its colour where known.</param>
/// <param name="Asked">Asking prices, the first at day 0.</param>
/// <param name="LastDay">Days from the first listing to the sale, to its leaving or to the log's date.</param>
/// <param name="State">Where it stands.</param>
/// <param name="SalePrice">Sale price; null unless sold.</param>
public sealed record AskingHistory(
    string PieceId, string Name, ImmutableArray<AskedPrice> Asked, int LastDay, PieceState State, decimal? SalePrice)
{
    /// <summary>Histories of pieces, longest on the market first; those without a listing date or a first asking price are
    /// left out.</summary>
    /// <param name="log">The log as known at its date.</param>
    /// <param name="pieceIds">Which pieces; null for all that are on sale.</param>
    public static ImmutableArray<AskingHistory> Of(SalesLog log, IReadOnlyCollection<string>? pieceIds = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        var changes = log.AskingPrices.ToLookup(change => change.PieceId, StringComparer.OrdinalIgnoreCase);
        return
        [
            .. from piece in log.Pieces
               where pieceIds is null
                   ? piece.State == PieceState.OnSale
                   : pieceIds.Contains(piece.Id, StringComparer.OrdinalIgnoreCase)
               where piece.ListedOn is not null && piece.AskingPrice is not null
               let listed = piece.ListedOn.GetValueOrDefault()
               let last = piece.LastDayOnMarket(log.Date)
               where last >= listed
               let days = last.GetValueOrDefault().DayNumber - listed.DayNumber
               orderby days descending, piece.Row
               select new AskingHistory(
                   piece.Id, piece.Colour is null ? piece.Type : $"{piece.Type}, {piece.Colour}",
                   [
                       new(0, piece.AskingPrice.GetValueOrDefault()),
                       .. changes[piece.Id].OrderBy(change => change.Date)
                           .Select(change => new AskedPrice(change.Date.DayNumber - listed.DayNumber, change.Price))
                           .Where(asked => asked.Day > 0 && asked.Day <= days),
                   ],
                   days, piece.State, piece.SoldPrice),
        ];
    }
}
