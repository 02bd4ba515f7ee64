using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>An outing of the year, for the record of driving.</summary>
/// <param name="Trip">Its name in <c>trips.csv</c>.</param>
/// <param name="Date">Its day; where <c>trips.csv</c> has none, that of the latest purchase it brought home.</param>
/// <param name="Distance">Distance, in the workshop's unit; null where unknown.</param>
/// <param name="Driving">What driving comes to at the rate; null where it cannot be reckoned.</param>
/// <param name="Rate">Driving over distance, to four digits; null where there is none.</param>
/// <param name="OtherCost">Parking, tolls, van hire.</param>
/// <param name="Pieces">Pieces it brought home; their cost bears it. With none it is an overhead, or a delivery of one sale.</param>
/// <param name="Rule">Which rate was taken, and from where.</param>
/// <param name="Notes">What <c>trips.csv</c> says of it.</param>
public sealed record YearOuting(
    string Trip, DateOnly? Date, decimal? Distance, decimal? Driving, decimal? Rate, decimal OtherCost, int Pieces, string? Rule,
    string? Notes)
{
    /// <summary>What it was for.</summary>
    public TripPurpose Purpose { get; init; }

    /// <summary>Whether it took a piece to its buyer.</summary>
    public bool IsDelivery { get; init; }

    /// <summary>Whether it looked for pieces and brought nothing home.</summary>
    public bool IsFruitless => IsOverhead && Purpose == TripPurpose.Sourcing;

    /// <summary>Whether it is a cost of no single piece.</summary>
    public bool IsOverhead => Pieces == 0 && !IsDelivery;

    internal static ImmutableArray<YearOuting> In(QuarterBooks books, ReportPeriod period)
    {
        Dictionary<string, int> pieces = books.Log.Pieces.Where(piece => piece.Trip is not null)
            .GroupBy(piece => piece.Trip!, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(trip => trip.Key, trip => trip.Count(), StringComparer.OrdinalIgnoreCase);
        HashSet<int> delivered = [.. books.Selling.Where(line => line.IsDrive).Select(drive => drive.Line.Origin.Row ?? 0)];
        ILookup<Trip, CashMovement> paid = books.Costs.Cash.Where(movement => movement.Outing is not null)
            .ToLookup(movement => movement.Outing!, movement => movement);
        return
        [
            .. books.Log.Trips.Select(trip => Of(trip, paid[trip], pieces.GetValueOrDefault(trip.Name)) with
                {
                    IsDelivery = !pieces.ContainsKey(trip.Name) && delivered.Contains(trip.Row),
                })
                .Where(outing => period.Contains(outing.Date))
                .OrderBy(outing => outing.Date),
        ];
    }

    private static YearOuting Of(Trip trip, IEnumerable<CashMovement> paid, int pieces)
    {
        CashMovement? driving = paid.FirstOrDefault(movement => movement.IsReckoned);
        decimal? cost = driving is not null ? -driving.Amount : trip.Distance == 0 ? 0 : null;
        return new(
            trip.Name,
            trip.Date ?? paid.FirstOrDefault()?.Date,
            trip.Distance,
            cost,
            cost > 0 ? decimal.Round(cost.Value / trip.Distance!.Value, 4, MidpointRounding.AwayFromZero) : null,
            trip.OtherCost ?? 0,
            pieces,
            driving?.Origin.Rule,
            trip.Notes)
        {
            Purpose = trip.Purpose,
        };
    }
}

/// <summary>The driving of the year at the mileage rate. It is all in other lines of the sheet already.</summary>
/// <param name="Outings">Each outing, by date.</param>
/// <param name="InPieces">Driving in the cost of pieces.</param>
/// <param name="InOverheads">Driving of no single piece, for whatever purpose.</param>
/// <param name="InDelivery">Driving to buyers.</param>
public sealed record YearDriving(
    ImmutableArray<YearOuting> Outings, decimal InPieces, decimal InOverheads, decimal InDelivery)
{
    /// <summary>All driving at the rate.</summary>
    public decimal Amount => InPieces + InOverheads + InDelivery;

    /// <summary>Driving on outings that looked for pieces and brought nothing home.</summary>
    public decimal InFruitless => Outings.Where(outing => outing.IsFruitless).Sum(outing => outing.Driving ?? 0);

    /// <summary>Driving of no single piece for anything but looking for pieces, such as supplies.</summary>
    public decimal InOtherDrives => InOverheads - InFruitless;

    /// <summary>Distance driven, as far as it is written down, in the workshop's unit.</summary>
    public decimal Distance => Outings.Sum(outing => outing.Distance ?? 0);

    /// <summary>Outings whose driving cannot be reckoned.</summary>
    public int Unknown => Outings.Count(outing => outing.Driving is null);

    internal static YearDriving Of(QuarterBooks books, ReportPeriod period)
    {
        ImmutableArray<YearOuting> outings = YearOuting.In(books, period);
        return new(
            outings,
            outings.Where(outing => outing.Pieces > 0).Sum(outing => outing.Driving ?? 0),
            outings.Where(outing => outing.IsOverhead).Sum(outing => outing.Driving ?? 0),
            outings.Where(outing => outing.IsDelivery).Sum(outing => outing.Driving ?? 0));
    }
}
