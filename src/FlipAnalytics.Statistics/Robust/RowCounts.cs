namespace FlipAnalytics.Statistics;

/// <summary>
/// How much a row counts in a fit by its standardised residual u: in full up to c, beyond it ever less. A monotone weight,
/// c/|u| (Huber, 1964, Annals of Mathematical Statistics 35, 73–101), finds its way from any start; a descending one,
/// (c/|u|)⁴, then takes from a wild row all but a trace. Ordinary rows keep the weight 1 exactly, so data without a wild
/// row are fitted as they are.
/// </summary>
public static class RowCounts
{
    /// <summary>How many spreads a residual may be off and still count in full: c. Normal errors pass it once in 16,000.</summary>
    public const double Ordinary = 4;

    /// <summary>min(1, c/|u|).</summary>
    /// <param name="standardised">u; NaN counts in full.</param>
    public static double Monotone(double standardised) =>
        Math.Abs(standardised) > Ordinary ? Ordinary / Math.Abs(standardised) : 1;

    /// <summary>min(1, (c/|u|)⁴).</summary>
    /// <param name="standardised">u; NaN counts in full.</param>
    public static double Descending(double standardised) => Math.Pow(Monotone(standardised), 4);
}
