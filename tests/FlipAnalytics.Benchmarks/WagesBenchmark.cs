namespace FlipAnalytics.Benchmarks;

/// <summary>The wages report of a log of 10,000 flips with all side tables, and the parts of the time.</summary>
internal static class WagesBenchmark
{
    private const int Flips = 10_000;

    public static void Run()
    {
        Console.WriteLine(Surroundings.Line());
        SalesLog log = DemoLog.Generate(Flips, 1).Log.AsOf(DemoLog.LastDay);
        WagesReport report = WagesReport.Of(log);
        Console.WriteLine($"{Flips} flips, books: {Repeated.Of(1, 5, () => CostBook.Of(log))}");
        Console.WriteLine($"{Flips} flips, hours: {Repeated.Of(1, 5, () => HoursLedger.Of(log))}");
        Console.WriteLine($"{Flips} flips, wages with both: {Repeated.Of(1, 5, () => WagesReport.Of(log))}");
        Console.WriteLine($"{Flips} flips, text: {Repeated.Of(1, 5, () => WagesText.Render(report))}");
        Console.WriteLine($"{Flips} flips, hours filled in: {Repeated.Of(1, 3, () => HoursFilledIn.ByPiece(log))}");
    }
}
