namespace FlipAnalytics.Statistics;

/// <summary>Which of n sorted scores bounds the next one with a given chance, whatever the distribution: Vovk, Gammerman and
/// Shafer, Algorithmic Learning in a Random World (2005), section 2.2.</summary>
public static class ConformalRank
{
    // 20 × 0.95 is not quite 19 in doubles; a product this close to a whole number is that number.
    private const double Snap = 1e-9;

    /// <summary>⌈(n + 1) level⌉, counted from 1; above n when n scores are too few for the level, and the bound is infinite.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative count, or a level not between 0 and 1.</exception>
    public static int Upper(int count, double level) => (int)Math.Ceiling(Product(count, level));

    /// <summary>⌊(n + 1)(1 − level)⌋, counted from 1; 0 when n scores are too few, and the bound is minus infinity.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative count, or a level not between 0 and 1.</exception>
    public static int Lower(int count, double level) => count + 1 - Upper(count, level);

    /// <summary>The score that the next one does not exceed with the chance of the level; infinite when there are too few.
    /// </summary>
    /// <param name="scores">In any order; infinite ones count.</param>
    /// <param name="level">Between 0 and 1.</param>
    /// <exception cref="ArgumentException">A score that is not a number.</exception>
    public static double Quantile(ReadOnlySpan<double> scores, double level)
    {
        GivenNumbers.RefuseNaN("Score", scores, nameof(scores));
        return Smallest(scores.ToArray(), Upper(scores.Length, level));
    }

    /// <summary>The value of that rank, −∞ below rank 1 and +∞ above the last. Sorts the values in place.</summary>
    internal static double Smallest(double[] values, int rank)
    {
        if (rank < 1)
            return double.NegativeInfinity;
        if (rank > values.Length)
            return double.PositiveInfinity;
        Array.Sort(values);
        return values[rank - 1];
    }

    private static double Product(int count, double level)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        Limits.RefuseLevel(level);
        double product = (count + 1) * level, whole = Math.Round(product);
        return Math.Abs(product - whole) < Snap * (count + 1) ? whole : product;
    }
}
