namespace FlipAnalytics.Statistics;

/// <summary>
/// R = Σy / Σx, with the standard error that the rows themselves show: the ratio estimator of Cochran, Sampling Techniques
/// (3rd ed., 1977), chapter 6, v(R) = Σ (yᵢ − R xᵢ)² / (n − 1) · n / (Σx)², the rows taken as a sample from very many.
/// </summary>
/// <param name="Ratio">R.</param>
/// <param name="StandardError">√v(R); not a number with fewer than two rows.</param>
/// <param name="Count">Rows, n.</param>
public sealed record RatioOfTotals(double Ratio, double StandardError, int Count)
{
    /// <summary>The ratio of the totals of two columns.</summary>
    /// <param name="y">What is divided, of either sign; finite.</param>
    /// <param name="x">What it is divided by: as many, finite, 0 or more, not all 0.</param>
    /// <exception cref="ArgumentException">The columns differ in length, a number is not finite, or x is below 0 or adds up to
    /// 0.</exception>
    public static RatioOfTotals Of(ReadOnlySpan<double> y, ReadOnlySpan<double> x)
    {
        Refuse(y, x);
        double totalY = 0;
        double totalX = 0;
        for (int i = 0; i < x.Length; i++)
        {
            totalY += y[i];
            totalX += x[i];
        }

        double ratio = totalY / totalX;
        double squares = 0;
        for (int i = 0; i < x.Length; i++)
            squares += (y[i] - ratio * x[i]) * (y[i] - ratio * x[i]);
        double n = x.Length;
        return new(ratio, Math.Sqrt(squares / (n - 1) * n) / totalX, x.Length);
    }

    /// <summary>R ± t · standard error, with Student's t of n − 1 degrees of freedom.</summary>
    /// <param name="level">Confidence level, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    /// <exception cref="InvalidOperationException">There are fewer than two rows.</exception>
    public Limits Interval(double level = 0.95)
    {
        Limits.RefuseLevel(level);
        if (Count < 2)
            throw new InvalidOperationException($"There is {Count} row; a standard error needs two or more.");
        double reach = Tails.StudentForLevel(level, Count - 1) * StandardError;
        return new(Ratio - reach, Ratio + reach);
    }

    internal static void Refuse(ReadOnlySpan<double> y, ReadOnlySpan<double> x)
    {
        if (y.Length != x.Length)
            throw new ArgumentException($"There are {y.Length} values to divide and {x.Length} to divide by; each row needs both.");
        GivenNumbers.RefuseNotFinite("What to divide in row", y, nameof(y));
        GivenNumbers.RefuseNegative("What to divide by in row", x, nameof(x));
        if (x.IndexOfAnyExcept(0.0) < 0)
            throw new ArgumentException("What to divide by adds up to 0; give at least one row above 0.", nameof(x));
    }
}
