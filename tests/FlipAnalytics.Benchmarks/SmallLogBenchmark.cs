namespace FlipAnalytics.Benchmarks;

/// <summary>All models of logs as small as real ones, refitted from scratch.</summary>
internal static class SmallLogBenchmark
{
    public static void Run()
    {
        Console.WriteLine(Surroundings.Line());
        foreach (int flips in new[] { 300, 30, 100, 1000 })
        {
            SalesLog log = DemoLog.Generate(flips, 1).Log.AsOf(DemoLog.LastDay);
            Console.WriteLine($"all models of {flips} flips: {Repeated.Of(20, 50, () => FittedModels.Of(log))}");
        }
    }
}
