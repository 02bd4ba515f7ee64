namespace FlipAnalytics.Tests;

/// <summary>On ten generated logs of 300 flips the models find the truth of <see cref="DemoMarket.Standard"/>.</summary>
public class RecoveryTests
{
    private static readonly DemoMarket Truth = DemoMarket.Standard;

    public static TheoryData<string, double> PriceSlopes => new()
    {
        { TermNames.Count, Truth.CountOnPrice },
        { TermNames.Size, Truth.SizeOnPrice },
        { TermNames.Hours, Truth.HoursOnPrice },
        // The model takes hours over what such a condition takes, the truth over what a sound piece takes.
        { TermNames.Worn, Of(Condition.Worn).OnPrice + Truth.HoursOnPrice * Of(Condition.Worn).OnHours },
        { TermNames.Damaged, Of(Condition.Damaged).OnPrice + Truth.HoursOnPrice * Of(Condition.Damaged).OnHours },
    };

    public static TheoryData<string, double> HoursSlopes => new()
    {
        { TermNames.Count, Truth.CountOnHours },
        { TermNames.Size, Truth.SizeOnHours },
        { TermNames.Worn, Of(Condition.Worn).OnHours },
        { TermNames.Damaged, Of(Condition.Damaged).OnHours },
    };

    public static TheoryData<string, double> SuppliesSlopes => new()
    {
        { TermNames.Count, Truth.CountOnSupplies },
        { TermNames.Size, Truth.SizeOnSupplies },
        { TermNames.Worn, Of(Condition.Worn).OnSupplies },
        { TermNames.Damaged, Of(Condition.Damaged).OnSupplies },
    };

    [Theory]
    [MemberData(nameof(PriceSlopes))]
    public void Slopes_of_the_sale_price_are_found(string term, double truth) => AssertFound(m => m.Price!, term, truth);

    [Theory]
    [MemberData(nameof(HoursSlopes))]
    public void Slopes_of_the_hours_are_found(string term, double truth) => AssertFound(m => m.Hours, term, truth);

    [Theory]
    [MemberData(nameof(SuppliesSlopes))]
    public void Slopes_of_the_supplies_are_found(string term, double truth) => AssertFound(m => m.Supplies!, term, truth);

    [Fact]
    public void What_the_terms_leave_unexplained_is_the_markets_noise()
    {
        Assert.Equal(Truth.PriceNoise, Spread(m => m.Price!), 0.015);
        Assert.Equal(Truth.HoursNoise, Spread(m => m.Hours), 0.015);
        Assert.Equal(Truth.SuppliesNoise, Spread(m => m.Supplies!), 0.03);
    }

    [Fact]
    public void Asking_more_makes_the_wait_longer_in_every_log() =>
        Assert.All(Replay.Of(300), replay => Assert.True(replay.Models.Days.Slope(TermNames.Asking) > 0));

    private static double Spread(Func<FittedModels, EffectsModel> model) =>
        Replay.Of(300).Average(replay => Math.Sqrt(model(replay.Models).Fit.ResidualVariance));

    // The mean of ten errors, in standard errors each, has a standard deviation of 0.32.
    private static void AssertFound(Func<FittedModels, EffectsModel> model, string term, double truth)
    {
        double[] errors =
        [
            .. Replay.Of(300).Select(replay => model(replay.Models).Fit.Coefficients.Single(c => c.Name == term))
                .Select(c => (c.Estimate - truth) / c.StandardError),
        ];
        Assert.InRange(errors.Average(), -1, 1);
        Assert.All(errors, error => Assert.InRange(error, -4, 4));
    }

    private static DemoCondition Of(Condition condition) => Truth.Conditions.Single(c => c.Condition == condition);
}
