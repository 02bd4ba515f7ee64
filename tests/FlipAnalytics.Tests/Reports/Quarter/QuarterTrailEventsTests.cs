namespace FlipAnalytics.Tests;

/// <summary>What happens beside buying and selling, in the lines of the quarter opened.</summary>
public sealed class QuarterTrailEventsTests
{
    // A drive to the dresser's buyer is its delivery; a run for paint is overhead, but no fruitless outing.
    [Fact]
    public void DrivesForOtherPurposesStandApartFromFruitlessOutings()
    {
        SalesLog log = QuarterTrailLog.Of("""
            trip,date,distance,hours,other_cost,purpose,id
            T1,2026-01-03,30,1.5,6,,
            T2,2026-02-20,10,1,,,
            T3,2026-02-10,20,0.5,,delivery,D1
            T4,2026-03-02,10,0.5,,supplies,
            """);
        ReportPeriod quarter = ReportPeriod.Parse("2026-Q1")!;
        Assert.Equal(
            [("outings that brought nothing home", 7m), ("supply runs", 7m)],
            QuarterTrail.Of(log, quarter, "overhead").Parts.Where(part => part.File == "trips.csv").Select(part => (part.Group!, part.Amount)));
        Assert.Equal(
            [("D1 dresser", 18m), ("D1 dresser, drive T3", 14m)],
            QuarterTrail.Of(log, quarter, "delivery").Parts.Select(part => (part.What, part.Amount)).OrderByDescending(part => part.Item2));
        Assert.Equal(
            [("outings that brought nothing home", 1m), ("other drives", 0.5m)],
            QuarterTrail.Of(log, quarter, "hours").Parts.Where(part => part.Id is null).Select(part => (part.Group!, part.Amount)));
    }

    // The bench's buyer has paid 20 before a sale; 30 was taken out by the owner.
    [Fact]
    public void HeldOpensIntoWhatIsOfOthersAndTheOwnersOwn()
    {
        SalesLog log = QuarterTrailLog.Of(QuarterTrailLog.Trips, "date,kind,id,amount\n2026-03-20,payment,B1,20\n2026-03-25,taken,,30");
        QuarterTrail trail = QuarterTrail.Of(log, ReportPeriod.Parse("2026-Q1")!, "held");
        Assert.Equal(-10m, trail.Total);
        Assert.Equal(
            [
                ("paid by buyers before the sale", "B1, paid by the buyer", "money.csv", 2, 20m),
                ("put in by you, less what you took out", "taken out by you", "money.csv", 3, -30m),
            ],
            trail.Parts.Select(part => (part.Group!, part.What, part.File!, part.Row!.Value, part.Amount)));
    }
}
