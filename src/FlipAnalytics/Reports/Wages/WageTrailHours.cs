using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Where the hours of one piece come from.</summary>
internal static class WageTrailHours
{
    /// <summary>Its hours at the bench and its shares of all others.</summary>
    public static IEnumerable<WageTrailLine> Of(SalesLog log, HoursLedger ledger, int place) =>
        [.. Own(log, ledger, place), .. General(log, ledger, place)];

    /// <summary>Hours of it alone: at the bench, and its share of the outing that brought it home.</summary>
    public static IEnumerable<WageTrailLine> Own(SalesLog log, HoursLedger ledger, int place)
    {
        Piece piece = log.Pieces[place];
        HoursEntry[] entries =
        [
            .. log.Hours.Where(entry => string.Equals(entry.PieceId, piece.Id, StringComparison.OrdinalIgnoreCase)),
        ];
        if (piece.Hours is { } stated)
        {
            string rule = entries.Length == 0 ? "As written down."
                : Invariant($"As written down; it counts instead of the {entries.Sum(entry => entry.Hours):0.##} h in {Columns.Hours.File}.");
            yield return new("at the bench", null, Columns.Pieces.File, piece.Row, rule, stated);
        }
        else
        {
            foreach (HoursEntry entry in entries)
            {
                string what = entry.Task?.ToString().ToLowerInvariant() ?? "work on it";
                yield return new(what, entry.Date, Columns.Hours.File, entry.Row, "As written down.", entry.Hours);
            }
        }

        Trip[] drives =
        [
            .. log.Trips.Where(trip => trip.Hours > 0
                && TripCosts.DeliveredBy(log, trip, id => string.Equals(id, piece.Id, StringComparison.OrdinalIgnoreCase) ? place : null) == place
                && !log.Pieces.Any(home => string.Equals(home.Trip, trip.Name, StringComparison.OrdinalIgnoreCase))),
        ];
        foreach (Trip drive in drives)
        {
            yield return new(
                $"drive {drive.Name}", drive.Date, Columns.Trips.File, drive.Row,
                Invariant($"All {drive.Hours:0.##} h: it took this piece to its buyer."), drive.Hours!.Value);
        }

        decimal outing = ledger.Pieces[place].Outings - drives.Sum(drive => drive.Hours!.Value);
        if (outing != 0)
        {
            Trip[] trips =
            [
                .. log.Trips.Where(trip => trip.Hours > 0
                    && string.Equals(trip.Name, piece.Trip, StringComparison.OrdinalIgnoreCase)),
            ];
            int others = log.Pieces.Count(
                other => string.Equals(other.Trip, piece.Trip, StringComparison.OrdinalIgnoreCase));
            yield return new(
                $"outing {piece.Trip}", trips[0].Date, Columns.Trips.File, trips.Length == 1 ? trips[0].Row : null,
                others == 1
                    ? Invariant($"All {trips.Sum(trip => trip.Hours):0.##} h: it brought home this piece alone.")
                    : Invariant($"{trips.Sum(trip => trip.Hours):0.##} h, shared equally by the {others} pieces brought home."),
                outing);
        }
    }

    private static IEnumerable<WageTrailLine> General(SalesLog log, HoursLedger ledger, int place)
    {
        WorkCalendar calendar = new(log);
        foreach (GeneralHours general in ledger.General.Where(general => general.IsShared))
        {
            ImmutableArray<(int Index, decimal Hours)> shares =
                HoursLedger.SharedOver(calendar, general.Date, general.Hours);
            decimal own = shares.Where(share => share.Index == place).Sum(share => share.Hours);
            if (own == 0)
                continue;
            yield return new(
                general.Task?.ToString().ToLowerInvariant() ?? "work for all pieces", general.Date, general.Origin.File,
                general.Origin.Row,
                Invariant($"{general.Origin.Rule} Shared by the hours of {general.Date:yyyy-MM} over {TextLines.Counted(shares.Length, "piece")}."),
                own);
        }
    }
}
