namespace FlipAnalytics.Statistics.Tests;

/// <summary>Spreads and counts that a wild value cannot move, worked by hand.</summary>
public class RobustTests
{
    private static readonly double[] OneWild = [1, 2, 3, 4, 1000];

    [Fact]
    public void The_median_and_its_deviation_of_five_values_by_hand()
    {
        // Deviations from 3: 2, 1, 0, 1, 997; their median is 1.
        Assert.Equal(3, MedianScale.Median(OneWild));
        Assert.Equal(1.4826022185056018, MedianScale.Deviation(OneWild, 3), 1e-15);
    }

    [Fact]
    public void Few_values_lean_on_the_expected_spread()
    {
        // √((5·1.4826² + 4·2²)/(5 + 4)).
        Assert.Equal(Math.Sqrt(((5 * 1.4826022185056018 * 1.4826022185056018) + 16) / 9), MedianScale.Deviation(OneWild, 3, 2, 4), 1e-14);
        Assert.Equal(2, MedianScale.Deviation(Array.Empty<double>(), 0, 2, 4));
    }

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(-4, 1, 1)]
    [InlineData(5, 0.8, 0.4)]
    [InlineData(8, 0.5, 1e-6)]
    [InlineData(-40, 0.1, 1e-6)]
    [InlineData(double.NaN, 1, 1)]
    public void Up_to_four_spreads_a_row_counts_in_full(double standardised, double monotone, double descending)
    {
        Assert.Equal(monotone, RowCounts.Monotone(standardised), 1e-15);
        Assert.Equal(descending, RowCounts.Descending(standardised), 1e-15);
    }

    [Fact]
    public void A_wild_value_is_drawn_in_and_four_values_are_left_alone()
    {
        Winsorised ends = Winsorised.Ends(OneWild, expected: 1.4826022185056018, expectedCounts: 5);
        Assert.Equal(3 + (4 * 1.4826022185056018), ends.Hold(1000), 1e-12);
        Assert.Equal(1, ends.Hold(1));
        Assert.False(ends.Holds(1000));
        Assert.Equal(1000, Winsorised.Ends([1, 2, 3, 1000], 1, 5).Hold(1000));
    }
}
