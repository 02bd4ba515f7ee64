namespace FlipAnalytics.Statistics.Tests;

/// <summary>Ratios of totals, by hand and against weighted least squares with robust errors, which is the same thing.</summary>
public sealed class SamplingTests
{
    private static readonly double[] Profit = [30, 90, -12, 150, 66, 20, 75];
    private static readonly double[] Hours = [3, 6, 2, 9, 4, 5, 5];
    private static readonly double[] Year = [0, 0.3, 0.5, 1.1, 1.4, 2, 2.2];

    [Fact]
    public void ThreeRowsByHand()
    {
        // R = 60 / 6 = 10; residuals 0, 10, −10; v = (0 + 100 + 100) / 2 · 3 / 36 = 25 / 3.
        RatioOfTotals ratio = RatioOfTotals.Of([10, 30, 20], [1, 2, 3]);
        Assert.Equal(10, ratio.Ratio);
        Assert.Equal(Math.Sqrt(25 / 3.0), ratio.StandardError, 1e-14);

        // t of 2 degrees of freedom at 95 %: 4.302652729749462 (R: qt(0.975, 2)).
        Assert.Equal(10 + 4.302652729749462 * Math.Sqrt(25 / 3.0), ratio.Interval().High, 1e-12);
    }

    [Fact]
    public void TheRatioIsTheLevelOfARegressionWithRobustErrors()
    {
        LinearFit fit = Fit([Regressor.Intercept(7)]);
        RatioOfTotals ratio = RatioOfTotals.Of(Profit, Hours);
        Assert.Equal(fit.Coefficients[0].Estimate, ratio.Ratio, 1e-12);
        Assert.Equal(Math.Sqrt(RobustCovariance.Hc1(fit)[0][0]), ratio.StandardError, 1e-12);
    }

    [Fact]
    public void TheTrendIsItsSlope()
    {
        LinearFit fit = Fit([Regressor.Intercept(7), new("year", Year)]);
        RatioTrend trend = RatioTrend.Of(Profit, Hours, Year)!;
        Assert.Equal(fit.Coefficients[1].Estimate, trend.Slope, 1e-12);
        Assert.Equal(Math.Sqrt(RobustCovariance.Hc1(fit)[1][1]), trend.SlopeStandardError, 1e-12);
        Assert.Equal(fit.Coefficients[0].Estimate + trend.Slope * trend.MeanTime, trend.Level, 1e-12);
    }

    [Fact]
    public void TimesThatDoNotDifferAndTwoRowsTellNoTrend()
    {
        Assert.Null(RatioTrend.Of(Profit, Hours, [1, 1, 1, 1, 1, 1, 1]));
        Assert.Null(RatioTrend.Of([1, 2], [1, 1], [0, 1]));
    }

    [Fact]
    public void WhatCannotBeDividedByIsRefused()
    {
        Assert.Throws<ArgumentException>(() => RatioOfTotals.Of([1, 2], [1]));
        Assert.Throws<ArgumentException>(() => RatioOfTotals.Of([1, 2], [1, -1]));
        Assert.Throws<ArgumentException>(() => RatioOfTotals.Of([1, 2], [0, 0]));
        Assert.Throws<InvalidOperationException>(() => RatioOfTotals.Of([1], [1]).Interval());
    }

    private static LinearFit Fit(Regressor[] design) =>
        LeastSquares.Fit(design, [.. Profit.Zip(Hours, (profit, hours) => profit / hours)], Hours);
}
