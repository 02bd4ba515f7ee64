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
        ILookup<string, DateOnly> boughtOnTrips = log.Pieces
            .Where(p => p.Trip is not null && p.BoughtOn is not null)
            .ToLookup(p => p.Trip!, p => p.BoughtOn!.Value, StringComparer.OrdinalIgnoreCase);
        return
        [
            .. dates.Table(Columns.Asking, "date", log.AskingPrices, a => a.Date, a => a.Row, a => dates.OfPiece(a.PieceId, false)),
            .. dates.Table(Columns.Hours, "date", log.Hours, h => h.Date, h => h.Row, h => dates.OfPiece(h.PieceId, true)),
            .. dates.Table(Columns.Supplies, "bought_on", log.Supplies, s => s.BoughtOn, s => s.Row, _ => null),
            .. dates.Table(Columns.Uses, "date", log.Uses, u => u.Date, u => u.Row, u => dates.OfPiece(u.PieceId, true)),
            .. dates.Table(Columns.Counts, "date", log.Counts, c => c.Date, c => c.Row, _ => null),
            .. dates.Table(Columns.Trips, "date", log.Trips, t => t.Date, t => t.Row, t => OfTrip([.. boughtOnTrips[t.Name]])),
            .. dates.Table(Columns.Tools, "bought_on", log.Tools, t => t.BoughtOn, t => t.Row, _ => null),
            .. dates.Table(Columns.Overheads, "month", log.Overheads, o => o.Month, o => o.Row, _ => null),
        ];
    }

    private IEnumerable<LogFinding> Table<T>(
        LogTable table, string column, IEnumerable<T> rows, Func<T, DateOnly?> dateOf, Func<T, int> lineOf,
        Func<T, (Func<DateOnly, double> Score, Func<string> Expected)?> tieOf)
    {
        T[] dated = [.. rows.Where(row => dateOf(row) is not null)];
        var order = new RowOrder(dated.Select(row => dateOf(row)!.Value));
        var sheet = new DateSheet(table.File, today);
        for (int i = 0; i < dated.Length; i++)
        {
            int place = i;
            DateOnly found = dateOf(dated[i])!.Value;
            var tie = tieOf(dated[i]);
            if (sheet.Finding(lineOf(dated[i]), column, found, Expected, Score) is { } finding)
                yield return finding;

            string Expected() => tie is { } known && known.Score(found) < 0
                ? known.Expected() : order.Expected(place) ?? "a day nearer to the rest of your log";

            double Score(DateOnly? date) => date is not { } day ? 0
                : order.Score(place, day) + (tie?.Score(day) ?? 0) + Span(day);
        }
    }

    // Nothing of a workshop's log lies decades before its pieces.
    private double Span(DateOnly date) => first is { } start && date < start ? DateSheet.Off(start.DayNumber - date.DayNumber, 700) : 0;

    private (Func<DateOnly, double>, Func<string>)? OfPiece(string? id, bool isWork)
    {
        if (id is null || !pieces.TryGetValue(id, out Piece? piece))
            return null;
        DateOnly? from = isWork ? piece.BoughtOn : piece.ListedOn;
        DateOnly? to = piece.SoldOn ?? piece.LeftOn;
        if (from is null && to is null)
            return null;
        return (Score, Expected);

        string Expected() => (from, to) switch
        {
            ({ } f, { } t) => $"{LogFinding.Text(f)} to {LogFinding.Text(t)}, while the piece was here",
            ({ } f, null) => $"{LogFinding.Text(f)} or later, when the piece was {(isWork ? "bought" : "listed")}",
            _ => $"{LogFinding.Text(to!.Value)} or earlier, when the piece left",
        };

        double Score(DateOnly date) =>
            date < from ? DateSheet.OutOfOrder(from.Value.DayNumber - date.DayNumber)
            : date > to?.AddDays(isWork ? 14 : 0) ? DateSheet.OutOfOrder(date.DayNumber - to.Value.DayNumber)
            : 0;
    }

    private static (Func<DateOnly, double>, Func<string>)? OfTrip(DateOnly[] bought)
    {
        if (bought.Length == 0)
            return null;
        DateOnly day = bought.Order().ElementAt(bought.Length / 2);
        return (
            date => date == day ? 0 : -2 + DateSheet.Off(Math.Abs(day.DayNumber - date.DayNumber), 10),
            () => $"{LogFinding.Text(day)}, when what it brought home was bought");
    }
}
