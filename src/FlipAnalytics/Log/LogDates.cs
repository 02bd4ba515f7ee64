namespace FlipAnalytics;

/// <summary>The dates of the facts in a log.</summary>
public static class LogDates
{
    extension(SalesLog log)
    {
        /// <summary>The dates of all dated facts, in no order; a month of overheads counts from its first day.</summary>
        public IEnumerable<DateOnly> FactDates() =>
            log.Pieces.SelectMany(Dates)
                .Concat(log.AskingPrices.Select(change => (DateOnly?)change.Date))
                .Concat(log.Hours.Select(entry => entry.Date))
                .Concat(log.Supplies.Select(purchase => purchase.BoughtOn))
                .Concat(log.Uses.Select(use => use.Date))
                .Concat(log.Counts.Select(count => (DateOnly?)count.Date))
                .Concat(log.Trips.Select(trip => trip.Date))
                .Concat(log.Tools.Select(tool => tool.BoughtOn))
                .Concat(log.Moves.Select(move => (DateOnly?)move.Date))
                .Concat(log.Money.Select(entry => (DateOnly?)entry.Date))
                .Concat(log.Returns.SelectMany(back => (DateOnly?[])[back.ReturnedOn, back.SoldOn]))
                .Concat(log.Overheads.Select(overhead => (DateOnly?)overhead.Month))
                .OfType<DateOnly>();

        /// <summary>The date of the first dated fact; null if no fact has a date.</summary>
        public DateOnly? FirstFact() => log.FactDates().Cast<DateOnly?>().Min();

        /// <summary>The date of the last dated fact; null if no fact has a date.</summary>
        public DateOnly? LastFact() => log.FactDates().Cast<DateOnly?>().Max();

        /// <summary>The date of the last fact that is not later than a day; null if there is none.</summary>
        /// <param name="day">The day.</param>
        public DateOnly? LastFactUpTo(DateOnly day) =>
            log.FactDates().Where(date => date <= day).Cast<DateOnly?>().Max();
    }

    private static DateOnly?[] Dates(Piece piece) =>
        [piece.BoughtOn, piece.ReadyOn, piece.ListedOn, piece.SoldOn, piece.LeftOn];
}
