namespace FlipAnalytics.Statistics;

/// <summary>Marks for a forecast once the value is known, all in lower-is-better form and in the unit of the value. Each is
/// proper: no one gains by stating anything but the truth. Gneiting and Raftery (2007), J. Am. Stat. Assoc. 102, 359–378.
/// </summary>
public static class ScoringRules
{
    /// <summary>Width plus 2/α times what the value lies outside, α = 1 − level (their equation 43).</summary>
    /// <param name="range">Limits in order; either may be infinite.</param>
    /// <param name="level">Between 0 and 1.</param>
    /// <param name="value">Finite.</param>
    /// <exception cref="ArgumentException">Limits that are not numbers or reversed, or a value that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static double Interval(Limits range, double level, double value)
    {
        Limits.RefuseLevel(level);
        GivenNumbers.RefuseReversed("The range", range, nameof(range));
        GivenNumbers.RefuseNotFinite("The value", value, nameof(value));
        double outside = Math.Max(0, range.Low - value) + Math.Max(0, value - range.High);
        return outside == 0 ? range.Width : range.Width + 2 / (1 - level) * outside;
    }

    /// <summary>Pinball loss of a quantile: (y − q) τ above it, (q − y)(1 − τ) below (Koenker and Bassett 1978).</summary>
    /// <exception cref="ArgumentException">A quantile or value that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not between 0 and 1.</exception>
    public static double Pinball(double quantile, double probability, double value)
    {
        Limits.RefuseLevel(probability);
        GivenNumbers.RefuseNotFinite("The quantile", quantile, nameof(quantile));
        GivenNumbers.RefuseNotFinite("The value", value, nameof(value));
        return (value - quantile) * (probability - (value < quantile ? 1 : 0));
    }

    /// <summary>Continuous ranked probability score of a normal forecast, σ (z (2Φ(z) − 1) + 2φ(z) − 1/√π) (their equation
    /// 21).</summary>
    /// <exception cref="ArgumentException">A mean or value that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is not finite and above 0.</exception>
    public static double NormalContinuousRanked(double mean, double standardDeviation, double value)
    {
        double z = Standardised(mean, standardDeviation, value);
        double density = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
        return standardDeviation * (z * (2 * Tails.Normal(z) - 1) + 2 * density - 1 / Math.Sqrt(Math.PI));
    }

    /// <summary>Minus the log density of a normal forecast; without unit.</summary>
    /// <exception cref="ArgumentException">A mean or value that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is not finite and above 0.</exception>
    public static double NormalLogarithmic(double mean, double standardDeviation, double value)
    {
        double z = Standardised(mean, standardDeviation, value);
        return z * z / 2 + Math.Log(standardDeviation) + 0.5 * Math.Log(2 * Math.PI);
    }

    internal static double Standardised(double mean, double standardDeviation, double value)
    {
        GivenNumbers.RefuseNotFinite("The mean", mean, nameof(mean));
        GivenNumbers.RefuseNotFinite("The value", value, nameof(value));
        return standardDeviation > 0 && double.IsFinite(standardDeviation)
            ? (value - mean) / standardDeviation
            : throw new ArgumentOutOfRangeException(
                nameof(standardDeviation), standardDeviation, "A standard deviation must be finite and above 0.");
    }
}
