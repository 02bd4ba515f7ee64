namespace FlipAnalytics.Tests;

/// <summary>A small log, written and read, whose quarter can be worked by hand.</summary>
internal static class QuarterTrailLog
{
    // A dresser sold through a channel with a rule, a chair sold for cash, a desk thrown away, rent, a fruitless outing.
    private const string Pieces = """
        id,type,trip,bought_on,bought_price,ready_on,sold_on,sold_price,channel,fees,delivery_charged,delivery_cost,hours,supplies_cost,left_on,left_as
        D1,dresser,T1,2026-01-03,40,2026-01-20,2026-02-10,210,online,,25,18,6,22.50,,
        C1,chair,T1,2026-01-03,10,2026-01-25,2026-02-12,60,stall,5,,,2,,,
        K1,desk,,2025-12-01,15,,,,,,,,1,,2026-03-01,scrapped
        B1,bench,T1,2026-01-03,30,,,,,,,,,,,
        """;

    public const string Trips = """
        trip,date,distance,hours,other_cost
        T1,2026-01-03,30,1.5,6
        T2,2026-02-20,10,1,
        """;

    private const string Overheads = """
        month,item,amount
        2026-01,rent,50
        2026-02,rent,50
        2026-02,insurance,12.30
        2026-04,rent,50
        """;

    private const string Settings = """
        symbol = "$"
        [fees.online]
        rate = 0.10
        fixed = 0.30
        [mileage]
        "2025-01-01" = 0.70
        """;

    public static SalesLog Of(string trips = Trips, string money = "date,kind,id,amount")
    {
        using LogFolder folder = new();
        LogReading read = folder.With("pieces.csv", Pieces).With("trips.csv", trips).With("money.csv", money).With("overheads.csv", Overheads)
            .With("workshop.toml", Settings).Read();
        return read.Log!.AsOf(new(2026, 3, 31));
    }
}
