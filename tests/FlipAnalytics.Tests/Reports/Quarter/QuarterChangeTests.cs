namespace FlipAnalytics.Tests;

/// <summary>What drove a change of net profit, worked by hand.</summary>
public sealed class QuarterChangeTests
{
    private static readonly Currency Dollar = Currency.Of("USD");

    [Fact]
    public void NumberMixPriceAndCostAddUpToTheChange()
    {
        // Then: two dressers at 200 that had cost 80, and a chair at 50 that had cost 20: 120 + 120 + 30 = 270, 90 each.
        // Now: a dresser at 220 that had cost 90, three chairs at 45 that had cost 20 each, a lamp at 40 that had cost 10:
        // 130 + 75 + 30 = 235.
        var then = Sales(("dresser", 200, 80), ("dresser", 200, 80), ("chair", 50, 20));
        var now = Sales(("dresser", 220, 90), ("chair", 45, 20), ("chair", 45, 20), ("chair", 45, 20), ("lamp", 40, 10));
        var effects = QuarterChange.EffectsOf(then, now, Profit(then, 5, 40), Profit(now, 8, 30), Dollar)
            .ToDictionary(effect => effect.Name, effect => effect.Amount);
        // Two more pieces at 90.
        Assert.Equal(180, effects["number sold"]);
        // Dresser (120 − 90), three chairs 3 × (30 − 90), and the lamp, a new type, at its own 30 − 90.
        Assert.Equal(-210, effects["mix"]);
        // Dresser 20, three chairs 3 × −5.
        Assert.Equal(5, effects["price"]);
        // The dresser cost 10 more.
        Assert.Equal(-10, effects["cost"]);
        Assert.Equal(-3, effects["wear of tools"]);
        Assert.Equal(10, effects["overheads"]);
        // 235 − 270 − 3 + 10
        Assert.Equal(-28, effects.Values.Sum());
    }

    [Fact]
    public void AgainstAQuarterWithoutSalesEverythingIsNumber()
    {
        var now = Sales(("dresser", 220, 90));
        var effects = QuarterChange.EffectsOf([], now, Profit([], 0, 0), Profit(now, 0, 0), Dollar);
        Assert.Equal(130, effects.Single(effect => effect.Amount != 0).Amount);
        Assert.Equal("number sold", effects.Single(effect => effect.Amount != 0).Name);
    }

    [Fact]
    public void ThirdsOfACentStillAddUp()
    {
        // Three pieces left 100 in all, 33.333… each; now one left 50.
        var then = Sales(("dresser", 100, 0), ("chair", 0.01m, 0.01m), ("lamp", 0.02m, 0.02m));
        var now = Sales(("chair", 50, 0));
        var effects = QuarterChange.EffectsOf(then, now, Profit(then, 0, 0), Profit(now, 0, 0), Dollar);
        Assert.Equal(-50, effects.Sum(effect => effect.Amount));
        Assert.All(effects, effect => Assert.Equal(Dollar.Round(effect.Amount), effect.Amount));
    }

    private static System.Collections.Immutable.ImmutableArray<QuarterSale> Sales(params (string Type, decimal Price, decimal Cost)[] sales) =>
        [.. sales.Select(sale => new QuarterSale("", sale.Type, default, sale.Price, 0, sale.Cost, 0, 0, 0, 0, null, 0, []))];

    private static QuarterProfit Profit(
        System.Collections.Immutable.ImmutableArray<QuarterSale> sales, decimal wear, decimal overheads) =>
        new(sales.Length, sales.Sum(sale => sale.SalePrice!.Value), 0, 0, sales.Sum(sale => sale.Purchase), 0, 0, 0, 0, 0, wear, overheads, 0);
}
