namespace FlipAnalytics.Statistics.Tests;

/// <summary>Certified values of the NIST Statistical Reference Datasets, linear regression. The measure is the number of
/// right digits, −log₁₀ of the relative error (of the absolute error where the certified value is 0), the worst of the
/// table; 15 digits are certified. What is lost below 15 is lost in writing the file's decimals as doubles.</summary>
public class NistLinearRegressionTests
{
    [Theory]
    [InlineData("Longley", 14.5, 14.5)]
    [InlineData("NoInt1", 14.6, 14.9)]
    [InlineData("NoInt2", 14.9, 14.8)]
    [InlineData("Norris", 14.0, 13.8)]
    [InlineData("Pontius", 13.4, 13.7)]
    [InlineData("Wampler1", 14.9, 14.9)]
    [InlineData("Wampler2", 13.1, 14.9)]
    [InlineData("Wampler3", 14.9, 14.4)]
    [InlineData("Wampler4", 14.9, 14.4)]
    [InlineData("Wampler5", 14.9, 14.4)]
    public void At_R_s_rank_tolerance_at_least_these_digits_are_right(
        string name, double coefficientDigits, double errorDigits)
    {
        NistFile file = new(name);
        AssertDigits(file, LeastSquares.Fit(Design(file, name), file.Response), coefficientDigits, errorDigits);
    }

    [Fact]
    public void Filip_from_rounded_powers_keeps_the_digits_its_condition_leaves()
    {
        NistFile file = new("Filip");
        LinearFit fit = LeastSquares.Fit(
            Design(file, "Filip"), file.Response, options: new LeastSquaresOptions { RankTolerance = 1e-14 });
        AssertDigits(file, fit, 7.5, 7.5);
        Assert.InRange(fit.ConditionNumber, 5e9, 6e9);
    }

    [Fact]
    public void Filip_from_powers_carried_to_32_digits_keeps_thirteen()
    {
        NistFile file = new("Filip");
        AssertDigits(file, Polynomial.Fit(file.Predictors[0], file.Response, 10), 13.2, 13.4);
    }

    [Fact]
    public void Filip_at_R_s_rank_tolerance_has_a_column_too_many_as_in_R()
    {
        NistFile file = new("Filip");
        LinearFit fit = LeastSquares.Fit(Design(file, "Filip"), file.Response);
        Assert.Equal(["x10"], fit.DroppedColumns.AsEnumerable());
    }

    /// <summary>The residual standard deviation of Wampler1 and 2 is certified to be 0, that of the others is not.</summary>
    [Theory]
    [InlineData("Wampler1", true)]
    [InlineData("Wampler2", true)]
    [InlineData("Wampler3", false)]
    [InlineData("NoInt2", false)]
    [InlineData("Pontius", false)]
    public void Exactly_those_with_no_residual_say_that_they_are_exact(string name, bool exact)
    {
        NistFile file = new(name);
        Assert.Equal(exact, file.ResidualStandardDeviation == 0);
        Assert.Equal(exact, LeastSquares.Fit(Design(file, name), file.Response).IsExact);
    }

    private static Regressor[] Design(NistFile file, string name)
    {
        Regressor intercept = Regressor.Intercept(file.Response.Length);
        if (file.Predictors.Length > 1)
            return [intercept, .. file.Predictors.Select((x, j) => new Regressor($"x{j + 1}", x))];
        Regressor[] powers =
        [
            .. Enumerable.Range(1, name.StartsWith("NoInt", StringComparison.Ordinal) ? 1 : file.Estimates.Length - 1)
                .Select(k => new Regressor($"x{k}", file.Predictors[0].Select(x => Math.Pow(x, k)).ToArray())),
        ];
        return name.StartsWith("NoInt", StringComparison.Ordinal) ? powers : [intercept, .. powers];
    }

    private static void AssertDigits(NistFile file, LinearFit fit, double coefficientDigits, double errorDigits)
    {
        Assert.Empty(fit.DroppedColumns);
        Assert.Equal(file.Estimates.Length, fit.Coefficients.Length);
        Assert.InRange(Digits(file.Estimates, fit.Coefficients.Select(c => c.Estimate)), coefficientDigits, 15);
        Assert.InRange(Digits(file.StandardErrors, fit.Coefficients.Select(c => c.StandardError)), errorDigits, 15);
        Assert.InRange(Digits([file.ResidualStandardDeviation], [fit.Sigma]), Math.Min(errorDigits, 9.5), 15);
        Assert.InRange(Digits([file.RSquared], [fit.RSquared]), 11.5, 15);
    }

    private static double Digits(double[] certified, IEnumerable<double> found) => certified
        .Zip(found, (c, f) => c == f ? 15 : Math.Min(15, -Math.Log10(c == 0 ? Math.Abs(f) : Math.Abs((f - c) / c))))
        .Min();
}
