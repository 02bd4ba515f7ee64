namespace FlipAnalytics.Statistics.Tests;

/// <summary>Small fits worked with pencil and paper, and inputs from which nothing can be fitted.</summary>
public class LeastSquaresByHandTests
{
    /// <summary>x = 0, 1, 2 and y = 1, 2, 4: slope 3/2, intercept 5/6, residuals 1/6, −1/3, 1/6.</summary>
    [Fact]
    public void Three_points_by_hand()
    {
        LinearFit fit = Line([0, 1, 2], [1, 2, 4]);
        Assert.Equal(5 / 6.0, fit[Regressor.InterceptName].Estimate, 1e-15);
        Assert.Equal(1.5, fit["x"].Estimate, 1e-15);
        Assert.Equal(1 / 6.0, fit.ResidualSumOfSquares, 1e-15);
        Assert.Equal(Math.Sqrt(1 / 12.0), fit["x"].StandardError, 1e-15);
        Assert.Equal(27 / 28.0, fit.RSquared, 1e-15);
        Assert.Equal([5 / 6.0, 1 / 3.0, 5 / 6.0], fit.ByRow.Leverage, (a, b) => Math.Abs(a - b) < 1e-15);
    }

    /// <summary>Duan (1983) on the logs of six prices; the check values were worked out separately to ten digits.</summary>
    [Fact]
    public void Smearing_takes_a_log_price_back_to_a_mean_price()
    {
        double[] prices = [120, 150, 180, 260, 300, 420];
        LinearFit fit = Line([1, 2, 3, 4, 5, 6], [.. prices.Select(price => Math.Log(price))]);
        Assert.Equal(4.51153567, fit[Regressor.InterceptName].Estimate, 5e-9);
        Assert.Equal(0.24888518, fit["x"].Estimate, 5e-9);
        Assert.Equal(1.00098132, Smearing.Factor(fit), 5e-9);
        double naive = Math.Exp(LinearPrediction.Of(fit, [1, 4]).Fit);
        Assert.Equal(246.4296, naive, 5e-5);
        Assert.Equal(246.6714, naive * Smearing.Factor(fit), 5e-5);
    }

    [Fact]
    public void A_row_counted_twice_weighs_as_much_as_two_rows()
    {
        LinearFit weighted = LeastSquares.Fit(
            [Regressor.Intercept(4), new("x", new double[] { 0, 1, 3, 7 })], [1, 2, 4, 5], [1, 2, 1, 1]);
        LinearFit repeated = Line([0, 1, 1, 3, 7], [1, 2, 2, 4, 5]);
        Assert.Equal(repeated["x"].Estimate, weighted["x"].Estimate, 1e-14);
        Assert.Equal(repeated.ResidualSumOfSquares, weighted.ResidualSumOfSquares, 1e-14);
        Assert.Equal(repeated.RSquared, weighted.RSquared, 1e-14);
    }

    [Fact]
    public void A_second_constant_column_is_dropped_and_named()
    {
        LinearFit fit = LeastSquares.Fit(
            [Regressor.Intercept(4), new("always seven", new double[] { 7, 7, 7, 7 }), new("x", new double[] { 0, 1, 3, 7 })],
            [1, 2, 4, 5]);
        Assert.Equal(["always seven"], fit.DroppedColumns.AsEnumerable());
        Assert.Equal(Line([0, 1, 3, 7], [1, 2, 4, 5])["x"].Estimate, fit["x"].Estimate, 1e-14);
    }

    [Fact]
    public void Points_on_a_line_leave_no_error()
    {
        LinearFit fit = Line([1, 2, 3, 4], [3, 5, 7, 9]);
        Assert.InRange(fit.ResidualSumOfSquares, 0, 1e-40);
        Assert.Equal(1, fit.RSquared);
        Assert.InRange(fit["x"].P, 0, 1e-20);
    }

    [Fact]
    public void A_gap_in_a_column_is_named_with_its_row()
    {
        var error = Assert.Throws<ArgumentException>(() => Line([1, 2, double.NaN, 4], [1, 2, 3, 5]));
        Assert.Contains("Column 'x' is NaN in row 2", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_response_that_never_varies_is_refused_with_its_value()
    {
        var error = Assert.Throws<ArgumentException>(() => Line([1, 2, 3], [5, 5, 5]));
        Assert.Contains("The response is 5 in all 3 rows", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "The response has no rows")]
    [InlineData(2, "2 rows cannot fit 2 coefficients")]
    public void Too_few_rows_are_refused_with_the_number_needed(int rows, string message)
    {
        double[] values = [.. Enumerable.Range(0, rows).Select(i => (double)i)];
        var error = Assert.Throws<ArgumentException>(() => Line(values, values));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_weight_of_nothing_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(
            () => LeastSquares.Fit([Regressor.Intercept(3)], [1, 2, 3], [1, 0, 1]));
        Assert.Contains("The weight of row 1 is 0", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_row_without_a_column_is_refused_by_its_name()
    {
        LinearFit fit = Line([0, 1, 2], [1, 2, 4]);
        var error = Assert.Throws<ArgumentException>(() => LinearPrediction.Of(fit, [Regressor.Intercept(1)]));
        Assert.Contains("no column 'x'", error.Message, StringComparison.Ordinal);
    }

    private static LinearFit Line(double[] x, double[] y) =>
        LeastSquares.Fit([Regressor.Intercept(y.Length), new("x", x)], y);
}
