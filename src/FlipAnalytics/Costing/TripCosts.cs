using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// An outing costs its distance at the rate in force on its day, and what else was paid. The pieces it brought home bear
/// it in equal parts, for the drive would have cost the same whatever each of them fetched; a drive to one buyer is a
/// delivery cost of the piece sold; any other outing that brought nothing home is overhead.
/// </summary>
internal static class TripCosts
{
    /// <summary>
    /// Writes all outings and returns what those that brought something home cost, and what deliveries of sold pieces did.
    /// </summary>
    public static (decimal BroughtHome, decimal Delivered) Write(CostSheet sheet)
    {
        decimal total = 0;
        decimal delivered = 0;
        foreach (OutingCost outing in Of(sheet.Log, sheet.PlaceOf, sheet.Notes))
        {
            (Trip trip, DateOnly? day, decimal? driving, string rule, ImmutableArray<int> pieces) = outing;
            string onDay = trip.Date is null && day is not null ? " Its day is that of the last purchase it brought home." : "";
            CostOrigin origin = new(Columns.Trips.File, trip.Row, Invariant(
                $"{rule}{(trip.OtherCost is { } other ? Invariant($", and {other} of other cost") : "")}.{onDay}"));
            if (driving is > 0)
            {
                sheet.Cash.Add(new(day, -driving.Value, $"driving, {trip.Name}", origin)
                {
                    Kind = CostKind.Trip,
                    Outing = trip,
                    IsReckoned = true,
                });
            }

            if (trip.OtherCost is not (null or 0))
            {
                sheet.Cash.Add(new(day, -trip.OtherCost.Value, $"other cost of {trip.Name}", origin)
                {
                    Kind = CostKind.Trip,
                    Outing = trip,
                });
            }

            decimal cost = outing.Cost;
            if (driving is null)
            {
                sheet.Notes.Add($"What driving cost on {trip.Name} is unknown: {rule}.");
                if (outing.Buyer is { } taken)
                    sheet.Gaps[taken].Add(new(CostKind.Delivery, $"What driving cost on {trip.Name} is unknown: {rule}."));
                foreach (int i in pieces)
                    sheet.Gaps[i].Add(new(CostKind.Trip, $"What driving cost on {trip.Name} is unknown: {rule}."));
            }

            if (pieces.Length == 0)
            {
                if (cost == 0)
                    continue;
                if (outing.Buyer is { } place)
                {
                    delivered += cost;
                    sheet.Lines[place].Add(new(CostKind.Delivery, day, cost, $"drive {trip.Name}", origin with
                    {
                        Rule = $"{origin.Rule} It took the piece to its buyer, so it is a cost of the sale.",
                    }));
                }
                else
                {
                    sheet.Overheads.Add(new(CostKind.Overhead, day, cost, $"{Words(trip.Purpose)} {trip.Name}", origin));
                }

                continue;
            }

            total += cost;
            ImmutableArray<decimal> shares = Shares.InProportion(
                cost, [.. pieces.Select(_ => 1m)], sheet.Currency.MinorDigits);
            CostOrigin shared = pieces.Length == 1 ? origin
                : origin with { Rule = Invariant($"{origin.Rule} Shared equally by {pieces.Length} pieces.") };
            for (int k = 0; k < pieces.Length && cost != 0; k++)
                sheet.Lines[pieces[k]].Add(new(CostKind.Trip, day, shares[k], $"trip {trip.Name}", shared));
        }

        return (total, delivered);
    }

    /// <summary>What each outing cost, in the order of the days: distances of a year add up towards a threshold.</summary>
    /// <param name="log">The log.</param>
    /// <param name="placeOf">Place of a piece in the log by its id; null for none.</param>
    /// <param name="notes">What is to be said of the rates.</param>
    internal static IEnumerable<OutingCost> Of(SalesLog log, Func<string, int?> placeOf, List<string> notes)
    {
        ILookup<string, int> broughtHome = Enumerable.Range(0, log.Pieces.Length)
            .Where(i => log.Pieces[i].Trip is not null)
            .ToLookup(i => log.Pieces[i].Trip!, StringComparer.OrdinalIgnoreCase);
        Dictionary<DateOnly, decimal> driven = [];
        foreach ((Trip trip, DateOnly? day) in log.Trips.Select(trip => (trip, DayOf(trip))).OrderBy(outing => outing.Item2))
        {
            (decimal? driving, string rule) = Driving(log.Workshop, notes, trip, day, driven);
            ImmutableArray<int> pieces = [.. broughtHome[trip.Name]];
            yield return new(trip, day, driving, rule, pieces)
            {
                Buyer = pieces.IsEmpty ? DeliveredBy(log, trip, placeOf) : null,
            };
        }

        DateOnly? DayOf(Trip trip) => trip.Date ?? broughtHome[trip.Name].Select(i => log.Pieces[i].BoughtOn).Max();
    }

    /// <summary>Place of the sold piece that an outing took to its buyer; null for none.</summary>
    internal static int? DeliveredBy(SalesLog log, Trip trip, Func<string, int?> placeOf) =>
        trip is { Purpose: TripPurpose.Delivery, PieceId: { } id } && placeOf(id) is { } place
            && (log.Pieces[place].IsSold || log.Returns.Any(back => back.CameBack && string.Equals(back.PieceId, id, StringComparison.OrdinalIgnoreCase)))
            ? place : null;

    /// <summary>An outing that brought nothing home, in words before its name.</summary>
    private static string Words(TripPurpose purpose) => purpose switch
    {
        TripPurpose.Delivery => "delivery drive",
        TripPurpose.Supplies => "supply run",
        TripPurpose.Other => "other drive",
        _ => "fruitless trip",
    };

    private static (decimal? Cost, string Rule) Driving(
        Workshop workshop, List<string> notes, Trip trip, DateOnly? day, Dictionary<DateOnly, decimal> driven)
    {
        string unit = workshop.DistanceUnit == DistanceUnit.Mile ? "miles" : "km";
        if (trip.Distance is not { } distance)
            return (null, "its distance is not written down");
        if (distance == 0)
            return (0, "no driving");
        if (day is not { } date)
            return (null, "its day is not written down, so no rate can be told");
        if (workshop.Mileage.LastOrDefault(rate => rate.From <= date) is { } own)
        {
            return (workshop.Currency.Round(distance * own.Rate),
                Invariant($"{distance:0.##} {unit} at {own.Rate}, the rate of workshop.toml from {own.From:yyyy-MM-dd}"));
        }

        if (MileageRates.CountryOf(workshop.Currency) is not { } country
            || MileageRates.On(country, date) is not { } published)
        {
            return (null, Invariant($"no rate is known for {date:yyyy-MM-dd}; set one under [mileage] in workshop.toml"));
        }

        if (published.To < date)
        {
            notes.Add(Invariant(
                $"No mileage rate after {published.To:yyyy-MM-dd} is known here; {published.Rate} is used on. Set yours under [mileage] in workshop.toml."));
        }
        else if (published.Status.Contains("not verified", StringComparison.Ordinal))
        {
            notes.Add(Invariant(
                $"The mileage rate of {published.Rate} from {published.From:yyyy-MM-dd} is {published.Status}."));
        }

        DateOnly year = MileageRates.YearStart(country, date);
        decimal there = MileageRates.Convert(distance, workshop.DistanceUnit, published.Per);
        decimal before = driven.GetValueOrDefault(year);
        driven[year] = before + there;
        string per = published.Per == DistanceUnit.Mile ? "mile" : "km";
        string beyond = published is { Threshold: { } threshold, Beyond: { } lower } && before + there > threshold
            ? Invariant($", {Math.Min(there, before + there - threshold):0.##} of them at {lower} as beyond {threshold} in the year")
            : "";
        return (workshop.Currency.Round(MileageRates.Amount(published, there, before)),
            Invariant($"{distance:0.##} {unit} at {published.Rate} a {per}{beyond} ({published.Source})"));
    }
}

/// <summary>What an outing cost.</summary>
/// <param name="Trip">The outing.</param>
/// <param name="Day">Its day; without one, that of the last purchase it brought home; null where unknown.</param>
/// <param name="Driving">Driving at the rate; null where it cannot be reckoned.</param>
/// <param name="Rule">How the driving was reckoned, or why it cannot be.</param>
/// <param name="Pieces">Places in the log of the pieces it brought home.</param>
internal sealed record OutingCost(Trip Trip, DateOnly? Day, decimal? Driving, string Rule, ImmutableArray<int> Pieces)
{
    /// <summary>Place in the log of the sold piece it took to its buyer and brought nothing home; null for none.</summary>
    public int? Buyer { get; init; }

    /// <summary>Driving, as far as it can be reckoned, and what else was paid.</summary>
    public decimal Cost => (Driving ?? 0) + (Trip.OtherCost ?? 0);
}
