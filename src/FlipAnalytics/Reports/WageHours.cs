using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Hours in one place.</summary>
/// <param name="Name">The place, in snake_case.</param>
/// <param name="What">The same in words.</param>
/// <param name="Hours">The hours; 0 or more.</param>
public sealed record HoursPlace(string Name, string What, decimal Hours);

/// <summary>
/// Every hour written down in the log, each in one place: in the wage of a span, or outside it, with the reason.
/// </summary>
/// <param name="InSpanWage">In the wage of the span.</param>
/// <param name="Outside">Outside it, by reason.</param>
/// <param name="Written">All hours of <c>pieces.csv</c>, <c>hours.csv</c> and <c>trips.csv</c>.</param>
public sealed record WageHours(decimal InSpanWage, ImmutableArray<HoursPlace> Outside, decimal Written)
{
    /// <summary>What is written down less where it is: always 0.</summary>
    public decimal Difference => Written - InSpanWage - Outside.Sum(place => place.Hours);

    /// <summary>Where the hours of a log are, seen from a span.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="hours">Its hours.</param>
    /// <param name="period">The span; null for the whole log, what has no day included.</param>
    /// <param name="bridge">The wages of the span; null where there is none.</param>
    public static WageHours Of(SalesLog log, HoursLedger hours, ReportPeriod? period, WageBridge? bridge)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(hours);
        decimal sold = 0, kept = 0, here = 0, writtenOff = 0, elsewhere = 0;
        foreach (var (piece, own) in log.Pieces.Zip(hours.Pieces, (piece, worked) => (piece, worked.Own)))
        {
            DateOnly? end = piece.IsSold ? piece.SoldOn : piece.LeftOn;
            if (!piece.IsSold && !piece.IsGone)
                here += own;
            else if (!IsIn(end))
                elsewhere += own;
            else if (piece.IsSold)
                sold += own;
            else if (piece.LeftAs is LeftAs.Kept)
                kept += own;
            else
                writtenOff += own;
        }

        decimal general = hours.General.Where(entry => IsIn(entry.Date)).Sum(entry => entry.Hours);
        elsewhere += hours.General.Where(entry => !IsIn(entry.Date)).Sum(entry => entry.Hours);
        return new(
            bridge?.SpanHours ?? 0,
            [
                new("sold_without_wage", "pieces sold whose price or hours are not written down", sold - (bridge?.OwnHours ?? 0)),
                new("their_part_of_the_rest", "their part of what no piece sold bears alone", general + writtenOff - (bridge?.BorneHours ?? 0)),
                new("kept", "pieces you kept", kept),
                new("still_here", "pieces still here", here),
                new("outside_the_span", "other spans, or no day written down", elsewhere),
                new("told_twice", "told in two files, counted once", ToldTwice(log, hours)),
            ],
            log.Pieces.Sum(piece => piece.Hours ?? 0) + log.Hours.Sum(entry => entry.Hours)
                + log.Trips.Sum(trip => Math.Max(0, trip.Hours ?? 0)));

        bool IsIn(DateOnly? day) => period is null || period.Contains(day);
    }

    // Entries of pieces whose total pieces.csv states, and sourcing that trips.csv has as well.
    private static decimal ToldTwice(SalesLog log, HoursLedger hours)
    {
        var stated = log.Pieces.Where(piece => piece.Hours is not null).Select(piece => piece.Id)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        return HoursReconciliation.Twice(log, hours)
            + log.Hours.Where(entry => entry.PieceId is { } id && stated.Contains(id)).Sum(entry => entry.Hours);
    }
}
