namespace FlipAnalytics;

/// <summary>One outing, mostly to look for pieces: a row of <c>trips.csv</c>.</summary>
/// <param name="Name">The owner's name for it; pieces refer to it.</param>
/// <param name="Date">Day of the outing.</param>
/// <param name="Distance">Distance driven, in the workshop's distance unit.</param>
/// <param name="Hours">Hours away.</param>
/// <param name="OtherCost">Parking, tolls, van hire.</param>
/// <param name="Notes">Anything else.</param>
/// <param name="Row">Line of the file.</param>
public sealed record Trip(
    string Name,
    DateOnly? Date,
    decimal? Distance,
    decimal? Hours,
    decimal? OtherCost,
    string? Notes,
    int Row = 0)
{
    /// <summary>What it was for.</summary>
    public TripPurpose Purpose { get; init; }

    /// <summary>The piece that was taken to its buyer; null for none or several.</summary>
    public string? PieceId { get; init; }
}
