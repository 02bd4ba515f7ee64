namespace FlipAnalytics.Statistics.Tests;

/// <summary>Refusals that say what is the matter with these data, and not with others like them.</summary>
public sealed class TrueMessagesTests
{
    [Theory]
    [InlineData(FailureDistribution.Weibull)]
    [InlineData(FailureDistribution.Lognormal)]
    [InlineData(FailureDistribution.LogLogistic)]
    [InlineData(FailureDistribution.Exponential)]
    public void A_level_whose_spells_had_all_ended_before_they_were_seen_is_not_said_to_be_running(FailureDistribution distribution)
    {
        string message = Message<NoEstimateException>(() => Level(distribution, row => Spell.EndedBefore(30 + row)));
        Assert.Contains("'painted'", message, StringComparison.Ordinal);
        Assert.Contains("all ended at some unknown time before a known one", message, StringComparison.Ordinal);
        Assert.DoesNotContain("not ended", message, StringComparison.Ordinal);
        Assert.DoesNotContain("no spell", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_whose_spells_all_still_run_is_said_to_be_running()
    {
        string message = Message<NoEstimateException>(() => Level(FailureDistribution.Weibull, row => Spell.Running(30 + row)));
        Assert.Contains("'painted'", message, StringComparison.Ordinal);
        Assert.Contains("all still running", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_that_end_all_at_once_are_not_said_to_have_no_end()
    {
        string[] groups = ["sage", "white", "sage", "white"];
        string tied = Message<NoEstimateException>(() => LogRank.Test([new(5, true), new(5, true), new(5, true), new(5, true)], groups));
        Assert.Contains("all spells at risk ended with it", tied, StringComparison.Ordinal);
        string running = Message<NoEstimateException>(() => LogRank.Test([new(5, false), new(6, false), new(7, false), new(8, false)], groups));
        Assert.Contains("No spell ended while two groups were at risk", running, StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_followed_one_after_the_other_are_not_said_to_end_at_once()
    {
        string message = Message<NoEstimateException>(() => LogRank.Test(
            [new(0, 3, true), new(0, 5, true), new(5, 8, true), new(5, 9, true)], ["sage", "sage", "white", "white"]));
        Assert.Contains("No spell ended while two groups were at risk", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "give at least 3 rows or a degree of at most 0")]
    [InlineData(2, "give at least 4 rows or a degree of at most 0")]
    [InlineData(5, "give at least 7 rows or a degree of at most 0")]
    public void Two_rows_are_told_how_many_a_polynomial_needs(int degree, string remedy)
    {
        string message = Message<ArgumentException>(() => Polynomial.Fit([1, 2], [3, 5], degree));
        Assert.Contains($"2 rows cannot fit a polynomial of degree {degree}", message, StringComparison.Ordinal);
        Assert.Contains(remedy, message, StringComparison.Ordinal);
        int enough = degree + 2;
        double[] x = [.. Enumerable.Range(1, enough).Select(i => (double)i)], y = [.. x.Select(value => 1 / value)];
        Assert.Equal(degree + 1, Polynomial.Fit(x, y, degree).Coefficients.Length);
        Assert.Throws<ArgumentException>(() => Polynomial.Fit(x.AsSpan(1), y.AsSpan(1), degree));
    }

    [Fact]
    public void Two_rows_are_told_how_many_three_columns_need()
    {
        Regressor[] design = [Regressor.Intercept(2), new("x", new double[] { 1, 2 }), new("z", new double[] { 4, 1 })];
        Assert.Contains("2 rows cannot fit 3 columns and leave a residual; give 4 rows or fewer columns",
            Message<ArgumentException>(() => LeastSquares.Fit(design, [3, 5])), StringComparison.Ordinal);
    }

    [Fact]
    public void A_polynomial_of_fewer_values_than_responses_names_the_variable() => Assert.Contains(
        "The variable has 2 values where the response has 3", Message<ArgumentException>(() => Polynomial.Fit([1, 2], [3, 5, 6], 1)),
        StringComparison.Ordinal);

    private static AcceleratedFailureFit Level(FailureDistribution distribution, Func<int, Spell> ofLevel) => AcceleratedFailure.Fit(
        new(
            ["(Intercept)", "painted"],
            [.. Enumerable.Range(0, 20).Select(row => new double[] { 1, row % 4 == 0 ? 1 : 0 })],
            [.. Enumerable.Range(0, 20).Select(row => row % 4 == 0 ? ofLevel(row) : Spell.Ended(3 + row))],
            [],
            null),
        new AcceleratedFailureOptions { Distribution = distribution });

    private static string Message<T>(Action action)
        where T : Exception => Assert.Throws<T>(action).Message;

    private static string Message<T>(Func<object> action)
        where T : Exception => Message<T>(() => { action(); });
}
