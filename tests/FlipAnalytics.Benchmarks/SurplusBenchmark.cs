using System.Globalization;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// How much of the surplus that perfect knowledge of the market would keep is kept by buying whatever has a sticker price
/// at or below the most to pay, and by two rules of thumb, on generated logs whose truth is known.
/// </summary>
internal static class SurplusBenchmark
{
    private const int Seeds = 10;
    private const int OffersPerSeed = 1000;
    private static readonly int[] Sizes = [30, 100, 300];

    public static void Run()
    {
        Console.WriteLine("| flips | market | most to pay | as good as seen | quarter of type's average | type's average left over |");
        Console.WriteLine("|---|---|---|---|---|---|");
        foreach (bool heavyTails in new[] { false, true })
        {
            foreach (int flips in Sizes)
                Console.WriteLine(Row(flips, heavyTails));
        }
    }

    private static string Row(int flips, bool heavyTails)
    {
        var kept = new double[Seeds];
        var asSeen = new double[Seeds];
        var quarter = new double[Seeds];
        var leftOver = new double[Seeds];
        for (int seed = 1; seed <= Seeds; seed++)
        {
            DemoLogResult demo = DemoLog.Generate(flips, (ulong)seed, DemoMarket.Standard with { HeavyTails = heavyTails });
            SalesLog log = demo.Log.AsOf(DemoLog.LastDay);
            DemoOffer[] offers = [.. demo.Truth.Offers(OffersPerSeed, (ulong)(1000 + seed))];
            var decisions = new MostToPay(FittedModels.Of(log), new())
                .Decide([.. offers.Select(o => Candidate.Of(o.Seen))]);
            double perfect = offers.Sum(o => Math.Max(0, o.AffordablePrice - (double)o.StickerPrice));
            double Kept(Func<int, double> ceiling) => offers
                .Select((o, i) => (double)o.StickerPrice <= ceiling(i) ? o.AffordablePrice - (double)o.StickerPrice : 0)
                .Sum() / perfect;
            var rules = new RulesOfThumb(log);
            kept[seed - 1] = Kept(i => (double)decisions[i].Ceiling!.Value);
            asSeen[seed - 1] = Kept(i => offers[i].AffordablePriceAsSeen);
            quarter[seed - 1] = Kept(i => rules.QuarterOfAverage(offers[i].Seen.Type));
            leftOver[seed - 1] = Kept(i => rules.AverageLeftOver(offers[i].Seen.Type));
        }

        return string.Create(CultureInfo.InvariantCulture,
            $"| {flips} | {(heavyTails ? "heavy tails" : "normal")} | {kept.Average():0.000} ({kept.Min():0.000}–{kept.Max():0.000}) "
            + $"| {asSeen.Average():0.000} | {quarter.Average():0.000} | {leftOver.Average():0.000} |");
    }
}
