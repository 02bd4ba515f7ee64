namespace FlipAnalytics.Statistics;

/// <summary>
/// A factor exp(−(floor/σ)⁸) of the prior of a scale σ, as of Fréchet's law: next to nothing at twice the floor (a 250th of a
/// log unit), steep below it. Durations that are all alike would otherwise take the scale to zero, since a normal prior of its
/// logarithm falls with a square and the likelihood of n alike durations grows with n for as long as it falls.
/// </summary>
internal readonly record struct ScaleFloor(double LogFloor)
{
    private const double Power = 8;

    /// <summary>The logarithm of the factor.</summary>
    internal double Value(double logScale) => -Math.Exp(-Power * (logScale - LogFloor));

    /// <summary>Its slope in log σ.</summary>
    internal double Slope(double logScale) => -Power * Value(logScale);

    /// <summary>Minus its second derivative in log σ.</summary>
    internal double Information(double logScale) => -Power * Power * Value(logScale);
}
