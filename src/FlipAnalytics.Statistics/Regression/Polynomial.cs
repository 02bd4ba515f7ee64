namespace FlipAnalytics.Statistics;

/// <summary>Least squares on the powers of one variable.</summary>
public static class Polynomial
{
    /// <summary>Fits y = b₀ + b₁x + … + b_d x^d. The powers are carried to 32 digits, so that the coefficients of a badly
    /// conditioned polynomial are those of the numbers given, not of their rounded powers.</summary>
    /// <param name="x">The variable, a value a row.</param>
    /// <param name="y">The response, a value a row.</param>
    /// <param name="degree">0 or more.</param>
    /// <param name="options">By default a rank tolerance of 1e-14, because powers of one variable resemble each other
    /// without being the same.</param>
    /// <exception cref="ArgumentException">No more rows than powers; else as <see cref="LeastSquares.Fit(IReadOnlyList{Regressor}, ReadOnlySpan{double}, ReadOnlySpan{double}, LeastSquaresOptions?)"/>.</exception>
    public static LinearFit Fit(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, int degree, LeastSquaresOptions? options = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(degree);
        LeastSquaresChecks.RefuseLength("The variable", x.Length, y.Length);
        RefuseTooFewRows(x, y, degree);
        double[][] powers = new double[degree + 1][], remainders = new double[degree + 1][];
        for (int j = 0; j <= degree; j++)
        {
            powers[j] = new double[x.Length];
            remainders[j] = new double[x.Length];
        }
        for (int i = 0; i < x.Length; i++)
        {
            DoubleDouble power = 1;
            for (int j = 0; j <= degree; j++, power *= x[i])
                (powers[j][i], remainders[j][i]) = power;
        }
        string[] names = [.. Enumerable.Range(0, degree + 1).Select(j => j == 0 ? Regressor.InterceptName : $"x^{j}")];
        return LeastSquares.Fit(
            names, powers, remainders, y.ToArray(), [], options ?? new LeastSquaresOptions { RankTolerance = 1e-14 });
    }

    // A power more takes a row more, as long as the rows differ in x; a constant response has a reason of its own.
    private static void RefuseTooFewRows(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int degree)
    {
        int rows = x.Length;
        if (rows >= 2 && rows <= degree + 1 && y.IndexOfAnyExcept(y[0]) >= 0 && x.ToArray().Distinct().Count() == rows)
            throw new ArgumentException(
                $"{rows} rows cannot fit a polynomial of degree {degree} and leave a residual; give at least {degree + 2} rows or a degree of at most {rows - 2}.");
    }
}
