namespace FlipAnalytics.Statistics.Tests;

public sealed class RobustExamples : ReadmeExample
{
    [Fact]
    public void Wild_values()
    {
        // Example: Wild values
        double[] days = [1, 2, 3, 4, 1000];
        double middle = MedianScale.Median(days);
        Console.WriteLine($"Median {middle}, spread {MedianScale.Deviation(days, middle):F4}");
        Console.WriteLine($"A row 5 spreads off counts {RowCounts.Monotone(5):F1}, then {RowCounts.Descending(5):F1}");
        Winsorised ends = Winsorised.Ends(days, expected: 1.5, expectedCounts: 5);
        Console.WriteLine($"1000 is drawn in to {ends.Hold(1000):F2}, 4 stays {ends.Hold(4)}");
        // End of example
        ProveSection("Wild values", nameof(RobustExamples));
    }
}
