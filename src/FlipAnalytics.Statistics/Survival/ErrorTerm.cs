namespace FlipAnalytics.Statistics;

/// <summary>A logarithm of density or probability as a function of the standardised error z, with its first two
/// derivatives in z.</summary>
internal readonly record struct ErrorTerm(double Value, double First, double Second);
