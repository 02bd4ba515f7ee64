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
    /// <exception cref="ArgumentException">As <see cref="LeastSquares.Fit(IReadOnlyList{Regressor}, ReadOnlySpan{double}, ReadOnlySpan{double}, LeastSquaresOptions?)"/>.</exception>
    public static LinearFit Fit(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, int degree, LeastSquaresOptions? options = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(degree);
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
}
