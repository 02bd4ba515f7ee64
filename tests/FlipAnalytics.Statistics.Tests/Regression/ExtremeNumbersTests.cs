namespace FlipAnalytics.Statistics.Tests;

/// <summary>Numbers whose squares a double cannot hold, and responses that a line explains to the last digit.</summary>
public class ExtremeNumbersTests
{
    // Any line with scatter; only its scale matters here.
    private static readonly double[] X = [1, 2, 3, 4, 5, 6, 7], Y = [2, 5, 5, 9, 10, 14, 13];

    [Theory]
    [InlineData(1e148)]
    [InlineData(1e-134)]
    public void A_response_within_the_range_scales_every_answer(double unit)
    {
        LinearFit plain = Line(X, Y), scaled = Line(X, [.. Y.Select(y => y * unit)]);
        ReferenceCase.AssertClose(plain.Coefficients[1].Estimate * unit, scaled.Coefficients[1].Estimate, 1e-14);
        ReferenceCase.AssertClose(plain.Coefficients[1].StandardError * unit, scaled.Coefficients[1].StandardError, 1e-12);
        ReferenceCase.AssertClose(plain.RSquared, scaled.RSquared, 1e-13);
        ReferenceCase.AssertClose(plain.Coefficients[1].P, scaled.Coefficients[1].P, 1e-10);
    }

    [Theory]
    [InlineData(1e154, "The response reaches 1.4E+155 in size", "larger unit")]
    [InlineData(1e300, "The response reaches 1.4E+301 in size", "larger unit")]
    [InlineData(1e-160, "The response is nowhere above 1.4E-159 in size", "smaller unit")]
    [InlineData(1e-300, "The response is nowhere above 1.4E-299 in size", "smaller unit")]
    public void A_response_whose_squares_cannot_be_summed_is_refused_with_the_remedy(double unit, string what, string remedy)
    {
        double[] y = [.. Y.Select(value => value * unit)];
        AssertRefused(() => Line(X, y), what, remedy);
        CrossProducts totals = new(["x"], intercept: false);
        totals.Add([X], y);
        AssertRefused(() => totals.Fit(), what, remedy);
    }

    [Theory]
    [InlineData(1e200, "Column 'x' reaches 7E+200 in size", "larger unit")]
    [InlineData(1e-200, "Column 'x' is nowhere above 7E-200 in size", "smaller unit")]
    public void A_column_whose_squares_cannot_be_summed_is_refused_with_the_remedy(double unit, string what, string remedy)
    {
        double[] x = [.. X.Select(value => value * unit)];
        AssertRefused(() => Line(x, Y), what, remedy);
        CrossProducts totals = new(["x"], intercept: false);
        totals.Add([x], Y);
        AssertRefused(() => totals.Fit(), what, remedy);
    }

    [Fact]
    public void Totals_of_tiny_numbers_about_a_mean_are_not_taken_for_a_constant()
    {
        CrossProducts totals = new(["x"]);
        totals.Add([X], Y.Select(value => value * 1e-200).ToArray());
        AssertRefused(() => totals.Fit(), "The response is nowhere above", "smaller unit");
    }

    [Fact]
    public void A_weight_that_takes_squares_out_of_range_is_refused()
    {
        double[] weights = [1, 1, 1, 1, 1, 1, 1e300];
        AssertRefused(
            () => LeastSquares.Fit([Regressor.Intercept(7), new("x", X)], [.. Y.Select(y => y * 1e10)], weights),
            "times the root of its weights reaches", "larger unit");
    }

    [Theory]
    [InlineData(1e140, 1e-130)]
    [InlineData(1e-130, 1e140)]
    public void A_variance_beyond_what_a_double_holds_is_refused(double responseUnit, double columnUnit) => AssertRefused(
        () => Line([.. X.Select(x => x * columnUnit)], [.. Y.Select(y => y * responseUnit)]),
        "The coefficient of 'x' is", "in another unit");

    /// <summary>y = 1/3 + 0.7 x is exact but for the rounding of its seven values.</summary>
    [Theory]
    [InlineData(1, true)]
    [InlineData(1, false)]
    [InlineData(1e100, true)]
    [InlineData(1e-100, true)]
    public void A_line_through_every_point_says_that_it_is_exact(double unit, bool refine)
    {
        LinearFit fit = Line(X, [.. X.Select(x => (1 / 3.0 + 0.7 * x) * unit)], new LeastSquaresOptions { Refine = refine });
        Assert.True(fit.IsExact);
    }

    [Fact]
    public void A_line_missed_by_a_millionth_of_a_millionth_is_not_exact()
    {
        LinearFit fit = Line(X, [.. X.Select((x, i) => 1 / 3.0 + 0.7 * x + 1e-12 * Y[i])]);
        Assert.False(fit.IsExact);
        Assert.False(Line(X, Y).IsExact);
    }

    [Fact]
    public void Weights_do_not_decide_whether_a_line_is_exact()
    {
        double[] weights = [1e-20, 2e-20, 3e-20, 1e-20, 5e-20, 1e-20, 1e-20], line = [.. X.Select(x => 1 / 3.0 + 0.7 * x)];
        Assert.True(LeastSquares.Fit([Regressor.Intercept(7), new("x", X)], line, weights).IsExact);
        Assert.False(LeastSquares.Fit([Regressor.Intercept(7), new("x", X)], Y, weights).IsExact);
    }

    [Fact]
    public void Totals_of_a_line_through_every_point_say_that_it_is_exact()
    {
        Assert.True(Totals([.. X.Select(x => 1 / 3.0 + 0.7 * x)]).IsExact);
        Assert.False(Totals(Y).IsExact);
    }

    private static LinearFit Totals(double[] y)
    {
        CrossProducts totals = new(["x"]);
        totals.Add([X], y);
        return totals.Fit();
    }

    private static LinearFit Line(double[] x, double[] y, LeastSquaresOptions? options = null) =>
        LeastSquares.Fit([Regressor.Intercept(x.Length), new("x", x)], y, options: options);

    private static void AssertRefused(Action fit, string what, string remedy)
    {
        string message = Assert.Throws<ArgumentException>(fit).Message;
        Assert.Contains(what, message, StringComparison.Ordinal);
        Assert.Contains(remedy, message, StringComparison.Ordinal);
    }
}
