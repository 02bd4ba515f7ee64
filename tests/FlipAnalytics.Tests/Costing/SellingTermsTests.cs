using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What selling costs, worked by hand from a few sales.</summary>
public class SellingTermsTests
{
    private static readonly Workshop WithRules = new()
    {
        Fees = new Workshop().Fees.Add("online", new(0.1m, 1)).Add("stall", new(0.02m, 0)),
    };

    private static SalesLog Log(params Piece[] pieces) =>
        new() { Date = new(2026, 3, 31), Workshop = WithRules, Pieces = [.. pieces] };

    private static Piece Sold(decimal price) => new() { Id = "P", Type = "dresser", SoldPrice = price };

    /// <summary>(8 + 0.1·200 + 1) / (100 + 200): the second sale's fee is by rule; the third has neither and does not count.</summary>
    [Fact]
    public void The_mix_of_past_fees_is_their_share_of_the_sales_that_tell_a_fee()
    {
        var terms = SellingTerms.Of(
            Log(Sold(100) with { Fees = 8 }, Sold(200) with { Channel = "Online" }, Sold(900)));
        Assert.Equal(29m / 300, terms.FeeRate);
        Assert.Equal(0, terms.FeeFixed);
        Assert.Equal("2 past sales", terms.FeeSource);
    }

    [Fact]
    public void A_channel_with_a_rule_goes_by_its_rule()
    {
        var terms = SellingTerms.Of(Log(Sold(100) with { Fees = 50 }), "online");
        Assert.Equal((0.1m, 1m), (terms.FeeRate, terms.FeeFixed));
    }

    [Fact]
    public void Without_a_sale_the_rules_are_averaged()
    {
        var terms = SellingTerms.Of(Log());
        Assert.Equal((0.06m, 0.5m), (terms.FeeRate, terms.FeeFixed));
    }

    [Fact]
    public void A_channel_that_nothing_is_known_of_takes_the_usual_fees_and_says_so()
    {
        var terms = SellingTerms.Of(Log(Sold(100) with { Fees = 8 }), "auction");
        Assert.Equal(0.08m, terms.FeeRate);
        Assert.False(terms.IsChannelKnown);
    }

    /// <summary>(20 − 5) + (12 − 0) over three sales, the third collected.</summary>
    [Fact]
    public void Delivery_is_cost_less_charge_over_all_sales()
    {
        var terms = SellingTerms.Of(Log(
            Sold(100) with { DeliveryCost = 20, DeliveryCharged = 5 }, Sold(50) with { DeliveryCost = 12 }, Sold(70)));
        Assert.Equal<IEnumerable<decimal>>([12m, 15m], terms.Deliveries);
        Assert.Equal(9, terms.AverageDelivery);
    }

    /// <summary>
    /// At 0.50 a mile. A: 20 miles and 3 of toll are 13, twice, and 4 for a hired hand, less 10 charged: 20. B: 30 miles, nothing
    /// charged: 15. C was collected. D: charged 8, and the miles of its drive are not written down: −8.
    /// </summary>
    [Fact]
    public void ADriveToTheBuyerIsACostOfDelivery()
    {
        Trip drive = new("D1", new(2026, 3, 1), 20, 1, 3, null) { Purpose = TripPurpose.Delivery, PieceId = "a" };
        var terms = SellingTerms.Of(Driven(
            drive, drive with { Name = "D2" },
            drive with { Name = "D3", Distance = 30, OtherCost = null, PieceId = "B" },
            drive with { Name = "D4", Distance = null, OtherCost = null, PieceId = "D" }));
        Assert.Equal<IEnumerable<decimal>>([-8m, 15m, 20m], terms.Deliveries);
        Assert.Equal(27m / 4, terms.AverageDelivery);
    }

    /// <summary>
    /// An outing that brought B home is in the cost of B, though it went to the buyer of A as well; one without an id, one of
    /// another purpose, and one for a piece that is not sold are overhead. A keeps 4 less 10, D 0 less 8.
    /// </summary>
    [Fact]
    public void ADriveThatIsACostOfSomethingElseIsNotCountedAgain()
    {
        Trip drive = new("H", new(2026, 3, 1), 20, 1, 3, null) { Purpose = TripPurpose.Delivery, PieceId = "A" };
        SalesLog log = Driven(
            drive, drive with { Name = "D2", PieceId = null }, drive with { Name = "D3", Purpose = TripPurpose.Other },
            drive with { Name = "D4", PieceId = "E" });
        Assert.Equal<IEnumerable<decimal>>([-8m, -6m], SellingTerms.Of(log).Deliveries);
    }

    /// <summary>
    /// A went to a first buyer on 1 March (20 miles at 0.50 and 3: 13), came back on the 10th, was fetched on the 11th (10 miles: 5),
    /// and went to the next buyer on the 20th (30 miles: 15). Of the sale that stands are 15 and a hand for 4, less 10 charged: 9.
    /// </summary>
    [Fact]
    public void DrivesOfASaleThatWasUndoneAreNotOfTheOneThatStands()
    {
        Trip drive = new("D1", new(2026, 3, 1), 20, 1, 3, null) { Purpose = TripPurpose.Delivery, PieceId = "A" };
        SalesLog log = Driven(
            drive,
            drive with { Name = "D2", Date = new(2026, 3, 11), Distance = 10, OtherCost = null },
            drive with { Name = "D3", Date = new(2026, 3, 20), Distance = 30, OtherCost = null });
        log = log with
        {
            Pieces = [log.Pieces[0] with { SoldOn = new(2026, 3, 20) }],
            Returns = [new("a", new(2026, 3, 10), 90) { SoldOn = new(2026, 2, 28), SoldPrice = 90, DeliveryCost = 7, Cost = 6 }],
        };
        Assert.Equal<IEnumerable<decimal>>([9m], SellingTerms.Of(log).Deliveries);
    }

    /// <summary>What delivery costs in the forecast is what the books say that it cost, sale by sale; returns are no sales.</summary>
    [Fact]
    public void WhatDeliveriesCostIsWhatTheBooksSay() => MessyLogs.Any.Sample(
        log =>
        {
            CostBook book = CostBook.Of(log);
            decimal[] net =
            [
                .. book.Pieces.Where(cost => cost.Piece.SoldPrice > 0)
                    .Select(cost => cost.Of(CostKind.Delivery) - cost.Returns.Sum(back => back.Delivery + back.TakingBack)
                        - (cost.Piece.DeliveryCharged ?? 0)),
            ];
            // Where few were delivered nothing is held back as a slip.
            if (book.Pieces.Count(cost => cost.Of(CostKind.Delivery) > 0) < 5 && log.Pieces.Count(piece => piece.DeliveryCharged > 0) < 5)
                Assert.Equal(net.Sum(), SellingTerms.Of(log).Deliveries.Sum());
        },
        iter: 500);

    private static SalesLog Driven(params Trip[] trips) => Log(
        Sold(100) with { Id = "A", DeliveryCost = 4, DeliveryCharged = 10 }, Sold(60) with { Id = "B", Trip = "H" },
        Sold(50) with { Id = "C" }, Sold(70) with { Id = "D", DeliveryCharged = 8 },
        new Piece { Id = "E", Type = "desk" }) with
    {
        Workshop = WithRules with { Mileage = [new(new(2026, 1, 1), 0.5m)] },
        Trips = [.. trips],
    };

    /// <summary>1 − (30 + 20) / (40 + 20); a piece without a sticker price tells no discount.</summary>
    [Fact]
    public void The_usual_discount_is_what_was_saved_of_all_sticker_prices()
    {
        Piece bought = new() { Id = "P", Type = "desk" };
        var terms = SellingTerms.Of(Log(
            bought with { StickerPrice = 40, BoughtPrice = 30 },
            bought with { StickerPrice = 20, BoughtPrice = 20 },
            bought with { BoughtPrice = 1 }));
        Assert.Equal(1 - 50m / 60, terms.UsualDiscount);
    }
}
