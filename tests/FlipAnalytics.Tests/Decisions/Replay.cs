using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace FlipAnalytics.Tests;

/// <summary>Generated logs whose truth is known, with the answers for offers drawn from that truth.</summary>
internal sealed record Replay(FittedModels Models, ImmutableArray<DemoOffer> Offers, ImmutableArray<PurchaseDecision> Answers)
{
    private const int Seeds = 10;
    private const int OffersEach = 100;

    private static readonly ConcurrentDictionary<(int Flips, bool HeavyTails), Lazy<ImmutableArray<Replay>>> Made = new();

    /// <summary>Ten logs of so many flips, each with 100 offers; made once.</summary>
    public static ImmutableArray<Replay> Of(int flips, bool heavyTails = false) => Made.GetOrAdd(
        (flips, heavyTails),
        key => new(() => [.. Enumerable.Range(1, Seeds).Select(seed => Make(key.Flips, key.HeavyTails, (ulong)seed))])).Value;

    private static Replay Make(int flips, bool heavyTails, ulong seed)
    {
        DemoLogResult demo = DemoLog.Generate(flips, seed, DemoMarket.Standard with { HeavyTails = heavyTails });
        var models = FittedModels.Of(demo.Log);
        ImmutableArray<DemoOffer> offers = demo.Truth.Offers(OffersEach, 1000 + seed);
        return new(models, offers,
            new MostToPay(models, new()).Decide([.. offers.Select(offer => Candidate.Of(offer.Seen))]));
    }
}
