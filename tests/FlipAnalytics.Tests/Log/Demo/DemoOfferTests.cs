namespace FlipAnalytics.Tests;

/// <summary>Offers come with a true most to pay that simulation confirms, and with stickers from bargain to trap.</summary>
public sealed class DemoOfferTests
{
    private static readonly DemoMarket Market = DemoLog.Generate(150, 9).Truth;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_true_most_to_pay_is_what_is_left_on_average(bool heavyTails)
    {
        DemoMarket market = Market with { HeavyTails = heavyTails };
        double[] differences = [.. market.Offers(40_000, 3).Select(offer =>
            offer.DrawnSalePrice * (1 - market.MeanFeeRate) - market.MeanFixedFee - market.MeanDelivery
            - offer.DrawnSupplies - market.TargetWage * offer.DrawnHours - offer.AffordablePrice)];

        AssertMeanIsZero(differences);
    }

    [Fact]
    public void With_size_or_colour_unseen_the_most_to_pay_is_the_mean_over_what_it_may_be()
    {
        DemoOffer[] unseen = [.. Market.Offers(40_000, 4).Where(offer => offer.Seen.Colour is null || offer.Seen.Height is null)];

        Assert.InRange(unseen.Length, 7_000, 13_000);
        AssertMeanIsZero([.. unseen.Select(offer => offer.AffordablePrice - offer.AffordablePriceAsSeen)]);
        AssertMeanIsZero([.. unseen.Where(offer => offer.Seen.Width is null).Select(offer => offer.AffordablePrice - offer.AffordablePriceAsSeen)]);
    }

    [Fact]
    public void With_all_seen_the_two_agree() =>
        Assert.All(
            Market.Offers(500, 5).Where(offer => offer.Seen.Colour is not null && offer.Seen.Height is not null),
            offer => Assert.Equal(offer.AffordablePrice, offer.AffordablePriceAsSeen, 1e-9));

    [Fact]
    public void Stickers_span_bargains_and_traps()
    {
        DemoOffer[] offers = [.. Market.Offers(2_000, 6)];
        double[] paying = [.. offers.Where(offer => offer.AffordablePrice >= 20)
            .Select(offer => (double)offer.StickerPrice / offer.AffordablePrice)];

        Assert.InRange(paying.Min(), 0.25, 0.4);
        Assert.InRange(paying.Max(), 2.8, 3.7);
        Assert.InRange(paying.Count(ratio => ratio < 1) / (double)paying.Length, 0.45, 0.55);
        Assert.InRange(offers.Count(offer => offer.AffordablePrice < 20) / 2000.0, 0.02, 0.3);
        Assert.All(offers, offer => Assert.Equal(offer.StickerPrice, offer.Seen.StickerPrice));
        Assert.All(offers.Where(offer => offer.AffordablePrice < 8), offer => Assert.InRange(offer.StickerPrice, 2, 25));
    }

    [Fact]
    public void The_same_seed_gives_the_same_offers()
    {
        Assert.Equal<DemoOffer>([.. Market.Offers(50, 7)], [.. Market.Offers(50, 7)]);
        Assert.NotEqual<DemoOffer>([.. Market.Offers(50, 7)], [.. Market.Offers(50, 8)]);
    }

    [Fact]
    public void Another_town_has_other_prices_but_the_same_words()
    {
        DemoMarket town = DemoMarket.Drawn(1);

        Assert.Equal(DemoMarket.Standard.Types.Select(type => type.Name), town.Types.Select(type => type.Name));
        Assert.NotEqual(DemoMarket.Standard.Types[0].OnPrice, town.Types[0].OnPrice);
        Assert.NotEqual(town.Colours[0].OnDays, DemoMarket.Drawn(2).Colours[0].OnDays);
    }

    /// <summary>Within 3.5 standard errors of zero.</summary>
    private static void AssertMeanIsZero(double[] values)
    {
        double mean = values.Average();
        double variance = values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1);
        Assert.Equal(0, mean, 3.5 * Math.Sqrt(variance / values.Length));
    }
}
