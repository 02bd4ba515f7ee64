namespace FlipAnalytics.Statistics;

/// <summary>
/// How much a row counts in a fit by its standardised residual u: in full up to c, beyond it ever less. A monotone weight,
/// c/|u| (Huber, 1964, Annals of Mathematical Statistics 35, 73–101), finds its way from any start; a descending one, whose
/// pull falls to nothing at d (Hampel, 1974, JASA 69, 383–393, from memory), then takes from a wild row all but a trace.
/// Ordinary rows keep the weight 1 exactly, so data without a wild row are fitted as they are.
/// </summary>
public static class RowCounts
{
    /// <summary>How many spreads a residual may be off and still count in full: c. Normal errors pass it once in 16,000.</summary>
    public const double Ordinary = 4;

    /// <summary>How many spreads off a row hardly counts at all: d.</summary>
    public const double Wild = 6;

    private const double Trace = 1e-6;

    /// <summary>min(1, c/|u|).</summary>
    /// <param name="standardised">u; NaN counts in full.</param>
    public static double Monotone(double standardised) =>
        Math.Abs(standardised) > Ordinary ? Ordinary / Math.Abs(standardised) : 1;

    /// <summary>c/|u| · (d − |u|)/(d − c) between c and d; a trace of 1e-6 beyond, as no row may weigh nothing.</summary>
    /// <param name="standardised">u; NaN counts in full.</param>
    public static double Descending(double standardised) => Math.Abs(standardised) <= Ordinary || double.IsNaN(standardised)
        ? 1
        : Math.Max(Trace, Monotone(standardised) * (Wild - Math.Abs(standardised)) / (Wild - Ordinary));
}
