namespace FlipAnalytics.Statistics.Tests;

public sealed class SamplingExamples : ReadmeExample
{
    [Fact]
    public void Ratios_of_totals()
    {
        // Example: Ratios of totals
        double[] profit = [30, 90, -12, 150, 66, 20, 75], hours = [3, 6, 2, 9, 4, 5, 5], year = [0, 0.3, 0.5, 1.1, 1.4, 2, 2.2];
        RatioOfTotals wage = RatioOfTotals.Of(profit, hours);
        Limits likely = wage.Interval(0.95);
        Console.WriteLine($"{wage.Ratio:F2} an hour, likely {likely.Low:F2} to {likely.High:F2}");
        RatioTrend trend = RatioTrend.Of(profit, hours, year)!;
        Limits change = trend.SlopeInterval(0.95);
        Console.WriteLine($"{trend.Slope:F2} a year, likely {change.Low:F2} to {change.High:F2}");
        // End of example
        ProveSection("Ratios of totals", nameof(SamplingExamples));
    }
}
