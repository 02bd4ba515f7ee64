namespace FlipAnalytics.Tests;

/// <summary>The answers on generated markets, held against the truth that the logs were drawn from.</summary>
public class ReplayTests
{
    /// <summary>Of 1,000 offers over ten logs; the answers to one log err together, so some points either way are chance.</summary>
    [Theory]
    [InlineData(100, false)]
    [InlineData(100, true)]
    [InlineData(300, false)]
    [InlineData(300, true)]
    public void Eight_in_ten_ranges_hold_eight_times_in_ten(int flips, bool heavyTails)
    {
        var replays = Replay.Of(flips, heavyTails);
        AssertHeld(replays, answer => answer.SalePrice!, offer => offer.DrawnSalePrice);
        AssertHeld(replays, answer => answer.Hours!, offer => offer.DrawnHours);
        AssertHeld(replays, answer => answer.Supplies!, offer => offer.DrawnSupplies);
    }

    /// <summary>
    /// Bought is whatever has a sticker price up to the ceiling; the surplus is the true most to pay less the sticker price,
    /// as a share of what knowing the truth would keep.
    /// </summary>
    [Theory]
    [InlineData(30, 0.85)]
    [InlineData(100, 0.95)]
    public void Buying_up_to_the_ceiling_keeps_most_of_what_perfect_knowledge_would(int flips, double atLeast) =>
        Assert.InRange(Replay.Of(flips).Average(Kept), atLeast, 1);

    private static double Kept(Replay replay)
    {
        static double Surplus(DemoOffer offer) => offer.AffordablePrice - (double)offer.StickerPrice;
        return replay.Offers.Zip(replay.Answers)
            .Where(pair => pair.First.StickerPrice <= pair.Second.Ceiling).Sum(pair => Surplus(pair.First))
            / replay.Offers.Sum(offer => Math.Max(0, Surplus(offer)));
    }

    private static void AssertHeld(
        IEnumerable<Replay> replays, Func<PurchaseDecision, ForecastRange> range, Func<DemoOffer, double> drawn)
    {
        double held = replays.Average(replay => replay.Offers.Zip(replay.Answers).Average(pair =>
            drawn(pair.First) >= (double)range(pair.Second).Low && drawn(pair.First) <= (double)range(pair.Second).High ? 1.0 : 0));
        Assert.InRange(held, 0.75, 0.85);
    }
}
