namespace FlipAnalytics;

/// <summary>The log as it was known at an earlier date.</summary>
public static class KnownThen
{
    extension(SalesLog log)
    {
        /// <summary>
        /// The log as it was known on a date: whatever is dated later is hidden, a piece sold later is on sale, and one that
        /// came back later is sold.
        /// </summary>
        /// <remarks>
        /// A fact is known by its own date or that of the event it belongs to, never by that of another: the asking price
        /// with the listing; fees and delivery with the sale. What has no date at all is known with the piece, such as its channel,
        /// totals of hours and supplies, color and finish: a later date on the same row, or none,
        /// must change nothing of an earlier day. That forecasts take no totals from a piece whose work is not done is theirs to
        /// see to, as they do with the pieces of today.
        /// </remarks>
        /// <param name="date">The last day whose facts are known.</param>
        public SalesLog AsOf(DateOnly date)
        {
            HashSet<string> notBought = log.Pieces.Where(piece => piece.BoughtOn > date).Select(piece => piece.Id)
                .ToHashSet(StringComparer.OrdinalIgnoreCase);
            ILookup<string, SaleReturn> undone = log.Returns.Where(back => back.CameBack)
                .ToLookup(back => back.PieceId, StringComparer.OrdinalIgnoreCase);
            return log with
            {
                Date = date,
                Pieces = [.. log.Pieces.Where(piece => !notBought.Contains(piece.Id)).Select(piece => Then(
                    piece, undone[piece.Id], date))],
                AskingPrices = [.. log.AskingPrices.Where(change => IsKnownOf(change.PieceId, change.Date))],
                Hours = [.. log.Hours.Where(entry => IsKnownOf(entry.PieceId, entry.Date))],
                Supplies = [.. log.Supplies.Where(purchase => IsKnown(purchase.BoughtOn))],
                Uses = [.. log.Uses.Where(use => IsKnownOf(use.PieceId, use.Date))],
                Counts = [.. log.Counts.Where(count => IsKnown(count.Date))],
                Trips = [.. log.Trips.Where(trip => IsKnown(trip.Date))],
                Tools = [.. log.Tools.Where(tool => IsKnown(tool.BoughtOn))],
                Moves = [.. log.Moves.Where(move => IsKnownOf(move.From, move.Date) && IsKnownOf(move.To, move.Date))],
                Money = [.. log.Money.Where(entry => IsKnownOf(entry.PieceId, entry.Date))],
                Returns = [.. log.Returns.Where(back => IsKnownOf(back.PieceId, back.ReturnedOn))],
                Overheads = [.. log.Overheads.Where(overhead => IsKnown(overhead.Month))],
            };

            bool IsKnown(DateOnly? day) => day is null || day <= date;

            bool IsKnownOf(string? piece, DateOnly? day) =>
                IsKnown(day) && (piece is null || !notBought.Contains(piece));
        }
    }

    private static Piece Then(Piece piece, IEnumerable<SaleReturn> undone, DateOnly date)
    {
        Piece then = piece;
        if (piece.ReadyOn > date)
            then = then with { ReadyOn = null };
        if (piece.ListedOn > date)
            then = then with { ListedOn = null, AskingPrice = null };
        if (piece.SoldOn > date)
        {
            then = then with
            {
                SoldOn = null,
                SoldPrice = null,
                SalesTax = null,
                Fees = null,
                DeliveryCharged = null,
                DeliveryCost = null,
            };
        }

        if (piece.LeftOn > date)
            then = then with { LeftOn = null, LeftAs = null };
        // Until it came back it was sold.
        return undone.FirstOrDefault(back => back.SoldOn <= date && back.ReturnedOn > date) is not { } sale ? then : then with
        {
            LeftOn = null,
            LeftAs = null,
            SoldOn = sale.SoldOn,
            SoldPrice = sale.SoldPrice,
            SalesTax = sale.SalesTax,
            Fees = sale.Fees,
            DeliveryCharged = sale.DeliveryCharged,
            DeliveryCost = sale.DeliveryCost,
        };
    }
}
