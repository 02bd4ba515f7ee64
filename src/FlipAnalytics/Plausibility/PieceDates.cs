using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>Dates of <c>pieces.csv</c> that are out of line with the piece's other dates, its trip and the rows around it.</summary>
internal sealed class PieceDates
{
    private static readonly string[] Names = ["bought_on", "ready_on", "listed_on", "sold_on", "left_on"];

    // Steps of a piece's life, from one date to another, used where no date between them is known.
    private static readonly (int From, int To)[] Steps =
        [(0, 1), (0, 2), (1, 2), (2, 3), (2, 4), (0, 3), (1, 3), (0, 4)];

    private const double StepWithin = 1.0;

    private readonly IReadOnlyList<Piece> pieces;
    private readonly DateSheet sheet;
    private readonly (double Middle, double Spread)[] usual = new (double, double)[Steps.Length];
    private readonly Dictionary<string, DateOnly> trips = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, DateOnly> firstWork = new(StringComparer.OrdinalIgnoreCase);
    private readonly bool tripsAreDaysOfBuying;
    private readonly RowOrder order;
    private readonly Dictionary<Piece, int> places = new(ReferenceEqualityComparer.Instance);

    private PieceDates(SalesLog log, IReadOnlyList<Piece> pieces, DateOnly today)
    {
        this.pieces = pieces;
        sheet = new(Columns.Pieces.File, today);
        foreach (Trip trip in log.Trips.Where(trip => trip.Date is not null))
            trips.TryAdd(trip.Name, trip.Date!.Value);
        foreach (var (id, date) in log.Hours.Select(h => (h.PieceId, h.Date)).Concat(log.Uses.Select(u => (u.PieceId, u.Date))))
        {
            if (id is not null && date is { } worked && !(firstWork.TryGetValue(id, out DateOnly known) && known <= worked))
                firstWork[id] = worked;
        }

        DateOnly?[][] lives = [.. pieces.Select(Dates)];
        for (int k = 0; k < Steps.Length; k++)
        {
            var step = Steps[k];
            double[] gaps = [.. lives.Where(d => d[step.From] <= d[step.To]).Select(d => Gap(d, step))];
            double middle = gaps.Length == 0 ? Math.Log(1 + 20) : MedianScale.Median(gaps);
            usual[k] = (middle, Math.Max(0.7, MedianScale.Deviation(gaps, middle, StepWithin, 6)));
        }

        Piece[] onTrips = [.. pieces.Where(p => p.BoughtOn is not null && p.Trip is { } trip && trips.ContainsKey(trip))];
        tripsAreDaysOfBuying = onTrips.Length >= 4 && onTrips.Count(p => trips[p.Trip!] == p.BoughtOn) >= 0.8 * onTrips.Length;
        Piece[] bought = [.. pieces.Where(p => p.BoughtOn is not null)];
        order = new(bought.Select(p => p.BoughtOn!.Value));
        for (int i = 0; i < bought.Length; i++)
            places.TryAdd(bought[i], i);
    }

    /// <summary>Dates that a mend would make much likelier, at most one a piece.</summary>
    /// <param name="log">The log.</param>
    /// <param name="contradicting">Pieces that are set aside as their dates contradict each other.</param>
    /// <param name="today">The last day that can be past.</param>
    public static IEnumerable<LogFinding> Of(SalesLog log, IEnumerable<Piece> contradicting, DateOnly today)
    {
        var dates = new PieceDates(log, [.. log.Pieces.Concat(contradicting).OrderBy(p => p.Row)], today);
        return dates.pieces.Select(dates.Finding).OfType<LogFinding>();
    }

    private LogFinding? Finding(Piece piece)
    {
        DateOnly?[] dates = Dates(piece);
        double score = Score(piece, dates);
        LogFinding? best = null;
        for (int d = 0; d < dates.Length; d++)
        {
            if (dates[d] is not { } found || sheet.IsInLine(found, score))
                continue;
            int place = d;
            LogFinding? finding = sheet.Finding(piece.Row, Names[d], found, () => Expected(piece, dates, place), date =>
            {
                DateOnly?[] mended = [.. dates];
                mended[place] = date;
                return Score(piece, mended);
            });
            if (finding is not null && (best is null || finding.Gain > best.Gain))
                best = finding;
        }

        return best;
    }

    private double Score(Piece piece, DateOnly?[] dates)
    {
        double score = 0;
        for (int k = 0; k < Steps.Length; k++)
        {
            var step = Steps[k];
            if (dates[step.From] is not { } from || dates[step.To] is not { } to
                || IsKnownBetween(dates, step))
                continue;
            score += to < from
                ? DateSheet.OutOfOrder(from.DayNumber - to.DayNumber)
                : DateSheet.Off(Math.Max(0, Math.Abs(Gap(dates, step) - usual[k].Middle)), usual[k].Spread);
        }

        if (dates[0] is { } bought)
        {
            if (places.TryGetValue(piece, out int place))
                score += order.Score(place, bought);
            if (tripsAreDaysOfBuying && piece.Trip is { } trip && trips.TryGetValue(trip, out DateOnly day) && day != bought)
                score += -4 + DateSheet.Off(Math.Abs(day.DayNumber - bought.DayNumber), 10);
            if (firstWork.TryGetValue(piece.Id, out DateOnly first) && first < bought)
                score += DateSheet.OutOfOrder(bought.DayNumber - first.DayNumber) / 2;
        }

        return score;
    }

    // The day of a sale that is followed by leaving is no step of its own.
    private static bool IsKnownBetween(DateOnly?[] dates, (int From, int To) step)
    {
        for (int d = step.From + 1; d < step.To; d++)
        {
            if (dates[d] is not null && d != 3)
                return true;
        }

        return false;
    }

    private string Expected(Piece piece, DateOnly?[] dates, int place)
    {
        if (place == 0 && piece.Trip is { } trip && trips.TryGetValue(trip, out DateOnly day) && tripsAreDaysOfBuying && day != dates[0])
            return $"{LogFinding.Text(day)}, the day of its trip";
        DateOnly? before = dates.Take(place).Max();
        DateOnly? after = dates.Skip(place + 1).Where(d => d is not null).Min();
        if (before is { } b && dates[place] < b)
            return $"{LogFinding.Text(b)} or later, its {Names[Array.IndexOf(dates, before)]}";
        if (after is { } a && dates[place] > a)
            return $"{LogFinding.Text(a)} or earlier, its {Names[place + 1 + Array.IndexOf(dates[(place + 1)..], after)]}";
        return (place == 0 && places.TryGetValue(piece, out int row) ? order.Expected(row) : null)
            ?? "a day nearer to its other dates, by the rest of your log";
    }

    private static double Gap(DateOnly?[] dates, (int From, int To) step) =>
        Math.Log(1 + dates[step.To]!.Value.DayNumber - dates[step.From]!.Value.DayNumber);

    private static DateOnly?[] Dates(Piece piece) =>
        [piece.BoughtOn, piece.ReadyOn, piece.ListedOn, piece.SoldOn, piece.LeftOn];
}
