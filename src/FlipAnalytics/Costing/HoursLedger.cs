using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Hours of one piece, at the bench and beyond.</summary>
/// <param name="Bench">Hands-on hours as <see cref="BenchHours"/> gives them; null where unknown.</param>
/// <param name="Outings">Its share of the hours of the outing that brought it home.</param>
/// <param name="General">Its share of the hours that <c>hours.csv</c> gives to no single piece.</param>
public sealed record PieceHours(decimal? Bench, decimal Outings, decimal General)
{
    /// <summary>Hours of it alone, at the bench as far as known and on its outing.</summary>
    internal decimal Own => (Bench ?? 0) + Outings;

    /// <summary>Hours outside the bench.</summary>
    public decimal Outside => Outings + General;

    /// <summary>All hours; null where those at the bench are unknown.</summary>
    public decimal? All => Bench + Outside;
}

/// <summary>Hours that belong to no single piece when they are worked.</summary>
/// <param name="Date">The day; null where the log does not say.</param>
/// <param name="Task">What was done; null where the log does not say.</param>
/// <param name="Hours">Hours, above 0.</param>
/// <param name="Origin">Where they come from.</param>
/// <param name="IsShared">Whether pieces carry them; if not, no piece was worked on in that month.</param>
public sealed record GeneralHours(DateOnly? Date, WorkTask? Task, decimal Hours, CostOrigin Origin, bool IsShared);

/// <summary>
/// Where the hours went: at the bench on a piece, on outings, and on what serves all pieces, such as messages and clearing
/// up. Shares add up to what was worked.
/// </summary>
/// <remarks>
/// The hours of an outing are shared equally by the pieces it brought home; those of a drive to one buyer are the piece's.
/// Those of an outing without any, and entries of
/// <c>hours.csv</c> without a piece, are shared over the pieces worked on in the same month, by hours, as overheads are. An
/// entry for sourcing on the day of outings with hours is taken to be those outings: only what it has beyond them counts.
/// </remarks>
public sealed record HoursLedger
{
    private const int Digits = 2;

    /// <summary>Hours of every piece, in the order of the log.</summary>
    public required ImmutableArray<PieceHours> Pieces { get; init; }

    /// <summary>Hours of outings that brought something home, on the day of the outing.</summary>
    public required ImmutableArray<GeneralHours> Outings { get; init; }

    /// <summary>Hours of no single piece: entries without one, then fruitless outings.</summary>
    public required ImmutableArray<GeneralHours> General { get; init; }

    /// <summary>No hours, for each piece of a log.</summary>
    internal static HoursLedger Empty(SalesLog log) =>
        new() { Pieces = [.. log.Pieces.Select(_ => new PieceHours(null, 0, 0))], Outings = [], General = [] };

    /// <summary>The hours of a log.</summary>
    /// <param name="log">The log, as of its date.</param>
    public static HoursLedger Of(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return Of(log, new WorkCalendar(log));
    }

    /// <summary>The hours of a log whose calendar of work is at hand.</summary>
    internal static HoursLedger Of(SalesLog log, WorkCalendar calendar)
    {
        decimal[] outings = new decimal[log.Pieces.Length];
        decimal[] general = new decimal[log.Pieces.Length];
        Dictionary<DateOnly, SharesByWeight> months = [];
        List<GeneralHours> fruitful = [];
        List<GeneralHours> others = [];

        ILookup<string, int> broughtHome = Enumerable.Range(0, log.Pieces.Length)
            .Where(i => log.Pieces[i].Trip is not null)
            .ToLookup(i => log.Pieces[i].Trip!, StringComparer.OrdinalIgnoreCase);
        Lazy<Dictionary<string, int>> places = new(() => Enumerable.Range(0, log.Pieces.Length)
            .GroupBy(i => log.Pieces[i].Id, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(same => same.Key, same => same.First(), StringComparer.OrdinalIgnoreCase));
        foreach (Trip trip in log.Trips.Where(trip => trip.Hours > 0))
        {
            int[] pieces = [.. broughtHome[trip.Name]];
            if (pieces.Length == 0 && TripCosts.DeliveredBy(log, trip, PlaceOf) is { } delivered)
                pieces = [delivered];
            WorkTask task = TaskOf(trip.Purpose);
            DateOnly? day = trip.Date ?? pieces.Select(i => log.Pieces[i].BoughtOn).Max();
            CostOrigin origin = new(Columns.Trips.File, trip.Row, Invariant($"{trip.Hours:0.##} hours on {trip.Name}."));
            if (pieces.Length == 0)
                others.Add(new(day, task, trip.Hours!.Value, origin, Share(day, trip.Hours.Value)));
            else
                fruitful.Add(new(day, task, trip.Hours!.Value, origin, true));
            ImmutableArray<decimal> shares = pieces.Length == 0 ? []
                : Shares.InProportion(trip.Hours.Value, [.. pieces.Select(_ => 1m)], Digits);
            for (int k = 0; k < pieces.Length; k++)
                outings[pieces[k]] += shares[k];
        }

        var away = fruitful.Concat(others).Where(outing => outing is { Date: not null, Task: WorkTask.Sourcing })
            .GroupBy(outing => outing.Date!.Value)
            .ToDictionary(day => day.Key, day => day.Sum(outing => outing.Hours));
        foreach (HoursEntry entry in log.Hours.Where(entry => entry.PieceId is null))
        {
            decimal counted = entry.Hours;
            if (entry is { Task: WorkTask.Sourcing, Date: { } date } && away.TryGetValue(date, out decimal known))
            {
                counted = Math.Max(0, entry.Hours - known);
                away[date] = Math.Max(0, known - entry.Hours);
            }

            if (counted == 0)
                continue;
            CostOrigin origin = new(Columns.Hours.File, entry.Row, counted == entry.Hours
                ? "As written down, for no single piece."
                : Invariant($"{entry.Hours:0.##} hours of sourcing, less those of the day's outings in trips.csv."));
            others.Add(new(entry.Date, entry.Task, counted, origin, Share(entry.Date, counted)));
        }

        return new()
        {
            Pieces =
            [
                .. log.Pieces.Select((piece, i) => new PieceHours(
                    calendar.Hours.TryGetValue(piece.Id, out decimal hours) ? hours : null, outings[i], general[i])),
            ],
            Outings = [.. fruitful],
            General = [.. others],
        };

        int? PlaceOf(string id) => places.Value.TryGetValue(id, out int place) ? place : null;

        bool Share(DateOnly? day, decimal hours)
        {
            if (day is not { } date || calendar.In(date) is not { IsEmpty: false } work)
                return false;
            DateOnly month = new(date.Year, date.Month, 1);
            if (!months.TryGetValue(month, out SharesByWeight? shares))
            {
                months.Add(month, shares = new([.. work.Select(share => share.Weight)], Digits));
                // A share of nothing is written to as many digits as any other.
                foreach (WorkShare share in work)
                    general[share.Index] += 0.00m;
            }

            foreach (var (place, share) in shares.Of(hours))
                general[work[place].Index] += share;
            return true;
        }
    }

    private static WorkTask TaskOf(TripPurpose purpose) => purpose switch
    {
        TripPurpose.Sourcing => WorkTask.Sourcing,
        TripPurpose.Delivery => WorkTask.Delivery,
        _ => WorkTask.Other,
    };

    /// <summary>
    /// What pieces carry of hours of no single piece, by their place in the log: none where none was worked on that month.
    /// </summary>
    internal static ImmutableArray<(int Index, decimal Hours)> SharedOver(
        WorkCalendar calendar, DateOnly? day, decimal hours)
    {
        ImmutableArray<WorkShare> work = day is { } month ? calendar.In(month) : [];
        if (work.IsEmpty)
            return [];
        decimal[] weights = [.. work.Select(share => share.Weight)];
        ImmutableArray<decimal> shares = Shares.InProportion(hours, weights, Digits);
        return [.. work.Select((share, k) => (share.Index, shares[k]))];
    }
}
