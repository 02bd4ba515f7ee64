namespace FlipAnalytics.Statistics.Tests;

public sealed class ScaleFloorTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(8)]
    [InlineData(110)]
    [InlineData(100_000)]
    public void DurationsAllAlikeHaveTheScaleThatTheFloorLeavesThem(int durations)
    {
        // At the location log 7 each adds -log σ - log 7 - 1, so the slope in log σ is -n + 8 (0.05/σ)⁸.
        AcceleratedFailureFit fit = Fit([.. Enumerable.Repeat(7.0, durations)], 0.05);
        Assert.Equal(0.05 * Math.Pow(8.0 / durations, 1.0 / 8), fit.Scale, 1e-9);
        Assert.Equal(Math.Log(7), fit.Coefficients[0].Estimate, 1e-9);
    }

    [Fact]
    public void DurationsThatScatterHaveTheScaleThatTheyHadWithoutAFloor()
    {
        double[] scattered = [3, 9, 12, 30, 31, 44, 58, 70, 120];
        AcceleratedFailureFit free = Fit(scattered, null), held = Fit(scattered, 0.05);
        Assert.InRange(free.Scale, 0.5, 1);
        Assert.Equal(free.Scale, held.Scale, 1e-8);
        Assert.Equal(free.VarianceOfLogScale, held.VarianceOfLogScale, 1e-8);
    }

    [Fact]
    public void WithoutAFloorDurationsAllAlikeHaveNoEstimateAndItIsSaidWhy()
    {
        NoEstimateException refusal = Assert.Throws<NoEstimateException>(() => Fit([7, 7, 7, 7], null));
        Assert.True(refusal.IsWithoutSpread);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void AFloorThatIsNoScaleIsRefused(double floor) =>
        Assert.Throws<ArgumentException>(() => Fit([1, 2, 3], floor));

    private static AcceleratedFailureFit Fit(double[] durations, double? floor) => AcceleratedFailure.Fit(
        new(["intercept"], [.. durations.Select(_ => new[] { 1.0 })], [.. durations.Select(t => Spell.Ended(t))], [], null),
        new() { ScaleFloor = floor });
}
