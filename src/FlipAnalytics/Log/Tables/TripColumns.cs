namespace FlipAnalytics;

/// <summary><c>trips.csv</c>: outings, mostly to look for pieces.</summary>
internal static class TripColumns
{
    public static readonly RecordTable<Trip> Table = new(
        "trips.csv",
        "With your outings, driving and searching are in the cost and the wage, fruitless trips included.",
        Row);

    private static readonly Column<Trip, string> Name = Table.RequiredName(
        "trip", "Your own name for the outing; pieces refer to it.", trip => trip.Name);
    private static readonly Column<Trip, DateOnly?> Date = Table.Date("date", "Day of the outing.", trip => trip.Date);
    private static readonly Column<Trip, decimal?> Distance = Table.Number(
        "distance", "Distance driven.", trip => trip.Distance, "the workshop's distance unit", Smallest.Zero);
    private static readonly Column<Trip, decimal?> Hours = Table.Number(
        "hours", "Hours away.", trip => trip.Hours, "hours", Smallest.Zero);
    private static readonly Column<Trip, decimal?> OtherCost = Table.Money(
        "other_cost", "Parking, tolls, van hire.", trip => trip.OtherCost, Smallest.Zero);
    private static readonly Column<Trip, TripPurpose?> Purpose = Table.Word<TripPurpose>(
        "purpose",
        "What the outing was for; empty means sourcing, that is looking for pieces.",
        trip => trip.Purpose == TripPurpose.Sourcing ? null : trip.Purpose);
    private static readonly Column<Trip, string?> PieceId = Table.Name(
        "id", "The piece you took to its buyer, where the purpose is delivery; an id of pieces.csv.", trip => trip.PieceId);
    private static readonly Column<Trip, string?> Notes = Table.Text("notes", "Anything else.", trip => trip.Notes);

    private static Trip Row(Cells cells) => new(
        Name.In(cells), Date.In(cells), Distance.In(cells), Hours.In(cells), OtherCost.In(cells),
        Notes.In(cells), cells.Row)
    {
        Purpose = Purpose.In(cells) ?? TripPurpose.Sourcing,
        PieceId = PieceId.In(cells),
    };
}
