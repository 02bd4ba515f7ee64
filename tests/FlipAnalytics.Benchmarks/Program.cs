using FlipAnalytics.Benchmarks;

switch (args)
{
    case ["surplus"]:
        SurplusBenchmark.Run();
        return 0;
    default:
        Console.Error.WriteLine("Say which benchmark to run: surplus.");
        return 2;
}
