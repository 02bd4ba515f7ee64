using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What to offer first, and when to walk away.</summary>
public class OpeningOfferTests
{
    private static readonly Workshop Dollars = new() { Symbol = "$" };

    [Fact]
    public void Without_a_purchase_on_record_a_fifth_off_is_asked_for()
    {
        OpeningOffer offer = For(sticker: 50, ceiling: 120)!;
        Assert.Equal((40, 0.2m, 0), (offer.Offer, offer.Discount, offer.Purchases));
    }

    [Fact]
    public void The_better_bargains_are_asked_for_again_drawn_towards_common_practice()
    {
        // Of 15 purchases the twelfth best came 40 % down: (15 x 40 % + 5 x 20 %) / 20 = 35 %. Of 80 that leaves 52.
        decimal[] discounts = [.. Enumerable.Repeat(0.1m, 10), .. Enumerable.Repeat(0.4m, 5)];
        OpeningOffer offer = For(sticker: 80, ceiling: 120, discounts)!;
        Assert.Equal((52, 0.35m, 15), (offer.Offer, offer.Discount, offer.Purchases));
    }

    [Fact]
    public void The_price_to_walk_away_at_is_the_most_to_pay_as_one_says_it()
    {
        Assert.Equal(42, WalkAway(42.91m));
        Assert.Equal(255, WalkAway(259.99m));
        Assert.Equal(760, WalkAway(764));
        Assert.Equal(1.37m, WalkAway(1.37m));
        Assert.Null(WalkAway(-3));
    }

    [Fact]
    public void A_sticker_above_the_limit_gets_an_offer_below_it_and_a_price_to_walk_away_at()
    {
        PurchaseDecision decision = Answer(45, 42.91m, Verdict.Haggle, []);
        Assert.Equal(
            "Offer $36 first (20 % off is what haggling usually brings); walk away above $42.",
            OpeningOffer.Sentence(decision, Dollars));
    }

    [Theory]
    [InlineData(Verdict.Leave)]
    [InlineData(Verdict.CannotSayYet)]
    public void There_is_no_offer_for_what_is_not_to_be_bought(Verdict verdict) =>
        Assert.Null(Answer(80, 60, verdict, []).Offer);

    [Fact]
    public void An_offer_is_above_zero_and_never_above_the_sticker_or_the_price_to_walk_away_at() =>
        Gen.Select(Gen.Int[1, 500_000], Gen.Int[-1000, 500_000], Gen.Int[0, 100].Array[0, 20], Gen.OneOf(Gen.Const("USD"), Gen.Const("JPY"), Gen.Const("KWD")))
            .Sample((sticker, ceiling, discounts, code) =>
            {
                Workshop workshop = new() { Currency = Currency.Of(code) };
                PurchaseDecision decision = Answer(
                    sticker / 100m, ceiling / 100m, Verdict.Buy, [.. discounts.Order().Select(share => share / 100m)], workshop);
                return decision.WalkAway is not { } limit
                    ? decision.Offer is null
                    : limit <= decision.Ceiling && decision.Offer is not { Offer: var offer }
                        || decision.Offer!.Offer > 0 && decision.Offer.Offer <= limit && decision.Offer.Offer <= sticker / 100m;
            });

    [Fact]
    public void A_generated_log_offers_what_its_owner_can_reach()
    {
        SalesLog log = Workbench.Demo(150, 4);
        PurchaseDecision decision = Workbench.Decide(log, Workbench.MeasuredDresser with { StickerPrice = 100 });
        Assert.Equal(Verdict.Buy, decision.Verdict);
        Assert.InRange(decision.Offer!.Offer, 60, 95);
        Assert.InRange(decision.Offer.Purchases, 50, 150);
    }

    private static decimal? WalkAway(decimal ceiling) => Answer(1, ceiling, Verdict.Buy, []).WalkAway;

    private static OpeningOffer? For(decimal sticker, decimal ceiling, params decimal[] discounts) =>
        Answer(sticker, ceiling, Verdict.Buy, discounts).Offer;

    private static PurchaseDecision Answer(
        decimal sticker, decimal ceiling, Verdict verdict, decimal[] discounts, Workshop? workshop = null)
    {
        var decision = new PurchaseDecision
        {
            Candidate = new() { Id = "C", Type = "dresser", StickerPrice = sticker },
            TargetWage = 15,
            Basis = new(0, null, 0),
            Ceiling = ceiling,
            Verdict = verdict,
            WalkAway = OpeningOffer.WalkAway(ceiling, workshop ?? Dollars),
        };
        var selling = new SellingTerms { FeeRate = 0, FeeFixed = 0, Deliveries = [], SaleCount = 0, Discounts = [.. discounts] };
        return decision with { Offer = OpeningOffer.For(decision, selling, workshop ?? Dollars) };
    }
}
