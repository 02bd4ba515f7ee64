namespace FlipAnalytics.Tests;

/// <summary>The model of supplies learns from the ledger where the ledger speaks of a piece, and nowhere else.</summary>
public sealed class SuppliesSpentTests
{
    private static readonly DateOnly January = new(2025, 1, 1);

    // A quart of paint at 20.00, and 12.00 of sandpaper that nobody writes down.
    private static readonly SalesLog Shop = new()
    {
        Date = January.AddDays(60),
        Supplies =
        [
            new("paint", "paint", January, 1, "quart", 20, null, null),
            new("sandpaper", "abrasive", January, 50, "sheet", 12, null, null),
        ],
    };

    /// <summary>Half a quart is 10.00, and a share of the sandpaper, 6.00 of 12.00 by equal hours, comes on top.</summary>
    [Fact]
    public void What_is_stated_counts_and_without_it_what_the_uses_cost()
    {
        SalesLog log = Shop with
        {
            Pieces = [Finished("A"), Finished("B") with { SuppliesCost = 17.5m }],
            Uses = [Half("a"), new("B", January, "paint", 0.25m, "quart", null, null)],
        };
        Assert.Equal([("A", 16), ("B", 17.5)], Learned(log));
    }

    [Fact]
    public void A_piece_that_bears_a_share_of_sandpaper_alone_is_unknown_and_not_cheap()
    {
        SalesLog log = Shop with { Pieces = [Finished("A"), Finished("B")], Uses = [Half("A")] };
        Assert.True(CostBook.Of(log)["B"].Of(CostKind.Supplies) > 0);
        Assert.Equal(["A"], Learned(log).Select(row => row.Id));
    }

    [Fact]
    public void A_use_without_a_cost_leaves_its_piece_out()
    {
        SalesLog log = Shop with
        {
            Pieces = [Finished("A"), Finished("B")],
            Uses = [Half("A"), new("B", January, "varnish", 1, "tin", null, null)],
        };
        Assert.Equal(["A"], Learned(log).Select(row => row.Id));
    }

    [Fact]
    public void A_piece_still_on_the_bench_may_take_more_and_is_left_out()
    {
        SalesLog log = Shop with { Pieces = [Finished("A") with { ReadyOn = null }], Uses = [Half("A")] };
        Assert.Empty(Learned(log));
        Assert.Single(Learned(log with { Pieces = [Finished("A") with { ReadyOn = null, SoldPrice = 90 }] }));
    }

    [Fact]
    public void Without_uses_only_what_is_stated_counts()
    {
        SalesLog log = Shop with { Pieces = [Finished("A"), Finished("B") with { SuppliesCost = 17.5m }] };
        Assert.Equal([("B", 17.5)], Learned(log));
    }

    /// <summary>
    /// The generated log states what some pieces took and writes down the uses of others; both come from one market, so a
    /// model of either should forecast alike.
    /// </summary>
    [Theory]
    [InlineData("nightstand")]
    [InlineData("dresser")]
    public void The_ledger_alone_teaches_about_the_same_as_what_is_stated(string type)
    {
        SalesLog both = Workbench.Demo(1000, 3);
        SalesLog ledger = both with { Pieces = [.. both.Pieces.Select(p => p with { SuppliesCost = null })] };
        SalesLog stated = both with { Uses = [] };
        Assert.Equal(1, Median(ledger) / Median(stated), 0.12);

        double Median(SalesLog log) =>
            (double)Workbench.Decide(log, new Candidate { Id = "C1", Type = type, Count = 1 }).Supplies!.Median;
    }

    private static IEnumerable<(string Id, double Cost)> Learned(SalesLog log) => new AmountRows(log).SuppliesRows()
        .Select(row => (row.PieceId!, Math.Round(Math.Exp(row.Response), 6)));

    private static Piece Finished(string id) => new()
    {
        Id = id,
        Type = "dresser",
        BoughtOn = January,
        ReadyOn = January.AddDays(9),
        Hours = 4,
    };

    private static SupplyUse Half(string id) => new(id, January.AddDays(5), "paint", 1, "pint", null, null);
}
