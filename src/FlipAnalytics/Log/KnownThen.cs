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
        /// A fact without a date of its own is known with the event it belongs to: the asking price with the listing;
        /// channel, fees and delivery with the sale, and the channel of a piece not sold with the listing; hours, supplies,
        /// colour and finish once the piece is ready, listed, sold or gone, whichever is first. An event without any date
        /// counts as known, save that a piece cannot have been sold or gone before it was listed.
        /// </remarks>
        /// <param name="date">The last day whose facts are known.</param>
        public SalesLog AsOf(DateOnly date)
        {
            HashSet<string> notBought = Ids(piece => piece.BoughtOn > date);
            ILookup<string, SaleReturn> undone = log.Returns.Where(back => back.CameBack)
                .ToLookup(back => back.PieceId, StringComparer.OrdinalIgnoreCase);
            HashSet<string> workUnknown = Ids(piece => !IsWorkKnown(piece, undone[piece.Id], date));
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

            HashSet<string> Ids(Func<Piece, bool> chosen) =>
                log.Pieces.Where(chosen).Select(piece => piece.Id).ToHashSet(StringComparer.OrdinalIgnoreCase);

            bool IsKnown(DateOnly? day) => day is null || day <= date;

            bool IsKnownOf(string? piece, DateOnly? day) =>
                IsKnown(day) && (piece is null || !(day is null ? workUnknown : notBought).Contains(piece));
        }
    }

    private static Piece Then(Piece piece, IEnumerable<SaleReturn> undone, DateOnly date)
    {
        Piece then = piece;
        bool isListedLater = piece.ListedOn > date;
        if (!IsWorkKnown(piece, undone, date))
            then = then with { Hours = null, SuppliesCost = null, Colour = null, Finish = null };
        if (piece.ReadyOn > date)
            then = then with { ReadyOn = null };
        if (isListedLater)
            then = then with { ListedOn = null, AskingPrice = null };
        if (piece.SoldOn > date || (piece.SoldOn is null && isListedLater))
        {
            then = then with
            {
                SoldOn = null,
                SoldPrice = null,
                SalesTax = null,
                Channel = null,
                Fees = null,
                DeliveryCharged = null,
                DeliveryCost = null,
            };
        }

        if (piece.LeftOn > date || (piece.LeftOn is null && isListedLater))
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

    private static bool IsWorkKnown(Piece piece, IEnumerable<SaleReturn> undone, DateOnly date)
    {
        DateOnly?[] ends = [piece.ReadyOn, piece.ListedOn, piece.SoldOn, piece.LeftOn];
        bool isDated = ends.Any(end => end is not null) || undone.Any();
        return !(piece.BoughtOn > date)
            && (!isDated || ends.Any(end => end <= date) || undone.Any(back => back.SoldOn <= date));
    }
}
