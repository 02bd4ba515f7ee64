namespace FlipAnalytics.Benchmarks;

/// <summary>The most to pay for a thousand offers against a log of 300 flips.</summary>
internal static class CandidatesBenchmark
{
    private const int Offers = 1000;

    public static void Run()
    {
        Console.WriteLine(Surroundings.Line());
        DemoLogResult demo = DemoLog.Generate(300, 1);
        SalesLog log = demo.Log.AsOf(DemoLog.LastDay);
        Candidate[] offers = [.. demo.Truth.Offers(Offers, 1001).Select(o => Candidate.Of(o.Seen))];
        var decisions = new MostToPay(FittedModels.Of(log), new());
        Console.WriteLine($"{Offers} offers, models fitted before: {Repeated.Of(1, 9, () => decisions.Decide(offers))}");
        Console.WriteLine(
            $"{Offers} offers, models fitted too: {Repeated.Of(1, 9, () => new MostToPay(FittedModels.Of(log), new()).Decide(offers))}");
        Console.WriteLine($"one offer, models fitted before: {Repeated.Of(20, 50, () => decisions.Decide(offers[0]))}");
    }
}
