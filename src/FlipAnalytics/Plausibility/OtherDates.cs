namespace FlipAnalytics;

/// <summary>Dates of the other tables that are out of line with the rows around them and with the piece they are of.</summary>
internal sealed class OtherDates
{
    private readonly DateOnly today;
    private readonly DateOnly? first;
    private readonly Dictionary<string, Piece> pieces;

    private OtherDates(SalesLog log, DateOnly today)
    {
        first = log.Pieces.Select(piece => piece.BoughtOn ?? piece.ListedOn ?? piece.SoldOn).Where(day => day is not null)
            .Order().Skip(1).FirstOrDefault();
        this.today = today;
        pieces = log.Pieces.ToDictionary(piece => piece.Id, StringComparer.OrdinalIgnoreCase);
    }

    public static IEnumerable<LogFinding> Of(SalesLog log, DateOnly today)
    {
        var dates = new OtherDates(log, today);
        Dictionary<string, DateOnly> boughtOnTrips = log.Pieces
            .Where(p => p.Trip is not null && p.BoughtOn is not null)
            .GroupBy(p => p.Trip!, p => p.BoughtOn!.Value, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(trip => trip.Key, trip => trip.Order().ElementAt(trip.Count() / 2), StringComparer.OrdinalIgnoreCase);
        return
        [
            .. dates.Table(Columns.Asking, "date", log.AskingPrices, a => a.Date, a => a.Row, dates.OfPiece<AskingPrice>(a => a.PieceId, false)),
            .. dates.Table(Columns.Hours, "date", log.Hours, h => h.Date, h => h.Row, dates.OfPiece<HoursEntry>(h => h.PieceId, true)),
            .. dates.Table(Columns.Supplies, "bought_on", log.Supplies, s => s.BoughtOn, s => s.Row),
            .. dates.Table(Columns.Uses, "date", log.Uses, u => u.Date, u => u.Row, dates.OfPiece<SupplyUse>(u => u.PieceId, true)),
            .. dates.Table(Columns.Counts, "date", log.Counts, c => c.Date, c => c.Row),
            .. dates.Table(Columns.Trips, "date", log.Trips, t => t.Date, t => t.Row, OfTrip(boughtOnTrips)),
            .. dates.Table(Columns.Tools, "bought_on", log.Tools, t => t.BoughtOn, t => t.Row),
            .. dates.Table(Columns.Overheads, "month", log.Overheads, o => o.Month, o => o.Row),
        ];
    }

    private IEnumerable<LogFinding> Table<T>(
        LogTable table, string column, IEnumerable<T> rows, Func<T, DateOnly?> dateOf, Func<T, int> lineOf, Tie<T>? tie = null)
    {
        T[] dated = [.. rows.Where(row => dateOf(row) is not null)];
        var order = new RowOrder(dated.Select(row => dateOf(row)!.Value));
        var sheet = new DateSheet(table.File, today);
        for (int i = 0; i < dated.Length; i++)
        {
            DateOnly found = dateOf(dated[i])!.Value;
            if (!sheet.IsInLine(found, Score(i, found)) && Slip(i, found) is { } finding)
                yield return finding;
        }

        double Score(int place, DateOnly day) => order.Score(place, day) + (tie?.Score(dated[place], day) ?? 0) + Span(day);

        LogFinding? Slip(int place, DateOnly found) => sheet.Finding(
            lineOf(dated[place]), column, found,
            () => tie?.Score(dated[place], found) < 0 ? tie.Expected(dated[place])
                : order.Expected(place) ?? "a day nearer to the rest of your log",
            date => date is { } day ? Score(place, day) : 0);
    }

    // Nothing of a workshop's log lies decades before its pieces.
    private double Span(DateOnly date) => first is { } start && date < start ? DateSheet.Off(start.DayNumber - date.DayNumber, 700) : 0;

    private Tie<T> OfPiece<T>(Func<T, string?> idOf, bool isWork)
    {
        return new(Score, Expected);

        (DateOnly? From, DateOnly? To) Here(T row) => idOf(row) is { } id && pieces.TryGetValue(id, out Piece? piece)
            ? (isWork ? piece.BoughtOn : piece.ListedOn, piece.SoldOn ?? piece.LeftOn) : default;

        double Score(T row, DateOnly date)
        {
            var (from, to) = Here(row);
            return date < from ? DateSheet.OutOfOrder(from.Value.DayNumber - date.DayNumber)
                : date > to?.AddDays(isWork ? 14 : 0) ? DateSheet.OutOfOrder(date.DayNumber - to.Value.DayNumber)
                : 0;
        }

        string Expected(T row) => Here(row) switch
        {
            ({ } f, { } t) => $"{LogFinding.Text(f)} to {LogFinding.Text(t)}, while the piece was here",
            ({ } f, null) => $"{LogFinding.Text(f)} or later, when the piece was {(isWork ? "bought" : "listed")}",
            var (_, to) => $"{LogFinding.Text(to!.Value)} or earlier, when the piece left",
        };
    }

    private static Tie<Trip> OfTrip(Dictionary<string, DateOnly> bought) => new(
        (trip, date) => !bought.TryGetValue(trip.Name, out DateOnly day) || date == day ? 0
            : -2 + DateSheet.Off(Math.Abs(day.DayNumber - date.DayNumber), 10),
        trip => $"{LogFinding.Text(bought[trip.Name])}, when what it brought home was bought");

    /// <summary>What another row says of a row's date.</summary>
    /// <param name="Score">What a date is worth by it; below 0 where it speaks against it.</param>
    /// <param name="Expected">What it expects, to be read after "expected"; asked only where it speaks against the date.</param>
    private sealed record Tie<T>(Func<T, DateOnly, double> Score, Func<T, string> Expected);
}
