namespace FlipAnalytics.Statistics;

/// <summary>
/// How a ratio of totals moves with time: y / x = a + b (t − t̄), where a and b solve Σ (yᵢ − xᵢ (a + b (tᵢ − t̄))) = 0 and
/// the same sum times tᵢ − t̄. This is the regression of y / x on t with weights x; without a slope it is Σy / Σx. Its errors
/// stay valid when rows scatter differently: A⁻¹ (Σ e² z zᵀ) A⁻¹ · n / (n − 2), the HC1 of MacKinnon and White (1985),
/// J. Econometrics 29, 305–325. A row with x = 0 counts too.
/// </summary>
/// <param name="Level">a, the ratio at the mean time.</param>
/// <param name="MeanTime">t̄, the mean of t with weights x.</param>
/// <param name="Slope">b, the change for a unit of t.</param>
/// <param name="SlopeStandardError">Standard error of b.</param>
/// <param name="Count">Rows, n.</param>
public sealed record RatioTrend(double Level, double MeanTime, double Slope, double SlopeStandardError, int Count)
{
    /// <summary>The trend of the ratio of two columns.</summary>
    /// <param name="y">What is divided, of either sign; finite.</param>
    /// <param name="x">What it is divided by: as many, finite, 0 or more, not all 0.</param>
    /// <param name="t">The time of each row, in any unit; finite.</param>
    /// <returns>Null where fewer than three rows or times that do not differ tell no slope.</returns>
    /// <exception cref="ArgumentException">The columns differ in length, a number is not finite, or x is below 0 or adds up to
    /// 0.</exception>
    public static RatioTrend? Of(ReadOnlySpan<double> y, ReadOnlySpan<double> x, ReadOnlySpan<double> t)
    {
        RatioOfTotals.Refuse(y, x);
        if (t.Length != x.Length)
            throw new ArgumentException($"There are {x.Length} rows and {t.Length} times; each row needs one.");
        GivenNumbers.RefuseNotFinite("The time of row", t, nameof(t));
        int n = x.Length;
        double totalX = 0;
        double meanTime = 0;
        for (int i = 0; i < n; i++)
        {
            totalX += x[i];
            meanTime += x[i] * t[i];
        }

        // With times from their weighted mean the two equations part: Σ x (t − t̄) is 0.
        meanTime /= totalX;
        double level = 0;
        double spread = 0;
        double slope = 0;
        for (int i = 0; i < n; i++)
        {
            double z = t[i] - meanTime;
            level += y[i];
            spread += x[i] * z * z;
            slope += y[i] * z;
        }

        if (n < 3 || !(spread > 1e-12 * totalX))
            return null;
        level /= totalX;
        slope /= spread;
        double meat = 0;
        for (int i = 0; i < n; i++)
        {
            double z = t[i] - meanTime;
            double score = (y[i] - x[i] * (level + slope * z)) * z;
            meat += score * score;
        }

        return new(level, meanTime, slope, Math.Sqrt(meat * n / (n - 2)) / spread, n);
    }

    /// <summary>b ± t · standard error, with Student's t of n − 2 degrees of freedom.</summary>
    /// <param name="level">Confidence level, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public Limits SlopeInterval(double level = 0.95)
    {
        Limits.RefuseLevel(level);
        double reach = Tails.StudentForLevel(level, Count - 2) * SlopeStandardError;
        return new(Slope - reach, Slope + reach);
    }
}
