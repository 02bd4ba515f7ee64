namespace FlipAnalytics.Tests;

/// <summary>Why a piece lost money, worked by hand.</summary>
public sealed class LosingFlipTests
{
    private static Piece Chair(string id, decimal bought, decimal sold, decimal supplies = 10) => new()
    {
        Id = id,
        Type = "chair",
        BoughtPrice = bought,
        SoldPrice = sold,
        SoldOn = new(2026, 2, 1),
        SuppliesCost = supplies,
        Fees = 0,
        Hours = 2,
    };

    private static LosingFlip Loser(params Piece[] pieces) =>
        Assert.Single(WagesReport.Of(new() { Date = new(2026, 3, 1), Pieces = [.. pieces] }).Losers);

    [Fact]
    public void A_piece_bought_too_dear_says_so_and_the_differences_add_up()
    {
        // The others bring 100 each; 20 of 100 go for the purchase and 10 for supplies, so 70 are usually left. X brought
        // 100, cost 95 and 15 of supplies: 70 − 75 − 5 = −10.
        LosingFlip loser = Loser(Chair("A", 20, 100), Chair("B", 20, 100), Chair("C", 20, 100), Chair("X", 95, 100, 15));
        Assert.Equal((LossYardstick.SameType, 3, 70m, -10m), (loser.Yardstick, loser.Peers, loser.UsualProfit, loser.FullProfit));
        Assert.Equal([("purchase", -75m), ("supplies", -5m)], loser.Parts.Select(part => (part.Item, part.Difference)));
        Assert.Equal("95.00 paid for it, where 20.00 would have been usual", loser.MainReason);
        Assert.Equal(0, loser.Difference);
    }

    [Fact]
    public void A_piece_sold_under_the_owners_own_guess_says_so()
    {
        // At a guess of 150 usual costs are 30 and 15, and 105 are left. X brought 40: −110 on the sale, 30 − 35 = −5 on the
        // purchase, 15 − 10 = 5 saved on supplies: 105 − 110 − 5 + 5 = −5.
        LosingFlip loser = Loser(
            Chair("A", 20, 100), Chair("B", 20, 100), Chair("C", 20, 100), Chair("X", 35, 40) with { ExpectedPrice = 150 });
        Assert.Equal([-110m, -5m, 5m], loser.Parts.Select(part => part.Difference));
        Assert.Equal("sold for 40.00, 110.00 under your own guess", loser.MainReason);
        Assert.Equal(0, loser.Difference);
    }

    [Fact]
    public void A_type_without_others_is_compared_with_all_flips_by_what_it_brought()
    {
        // A desk that brought 50: usual are 10 for the purchase and 5 for supplies; it cost 60 and 10.
        LosingFlip loser = Loser(
            Chair("A", 20, 100), Chair("B", 20, 100), Chair("C", 20, 100), Chair("X", 60, 50) with { Type = "desk" });
        Assert.Equal((LossYardstick.AllFlips, 35m), (loser.Yardstick, loser.UsualProfit));
        Assert.Equal([("purchase", -50m), ("supplies", -5m)], loser.Parts.Select(part => (part.Item, part.Difference)));
    }

    [Fact]
    public void A_long_job_is_named_where_rent_goes_by_hours()
    {
        // 120 of rent by 2 : 2 : 2 : 18 h are 10 each and 90.
        Piece[] pieces = [Chair("A", 20, 100), Chair("B", 20, 100), Chair("C", 20, 100), Chair("X", 20, 100) with { Hours = 18 }];
        LosingFlip loser = Assert.Single(WagesReport.Of(new()
        {
            Date = new(2026, 3, 1),
            Pieces = [.. pieces],
            Overheads = [new(new(2026, 2, 1), "rent", 120)],
        }).Losers);
        Assert.Equal(
            "90.00 of rent and other shared costs, where 10.00 would have been usual: it took 18 h, others 2 h", loser.MainReason);
    }

    [Fact]
    public void With_too_few_others_its_largest_cost_is_named() => Assert.Equal(
        "its largest cost was the price paid, 60.00 of 50.00 it brought", Loser(Chair("X", 60, 50), Chair("A", 20, 100)).MainReason);
}
