namespace FlipAnalytics.Statistics.Tests;

/// <summary>Comparisons of numbers that say by how much they differ.</summary>
internal static class Near
{
    public static void Absolute(double expected, double actual, double tolerance, string what) => Assert.True(
        Math.Abs(expected - actual) <= tolerance,
        FormattableString.Invariant(
            $"{what}: expected {expected:R}, got {actual:R}, off by {Math.Abs(expected - actual):E2} > {tolerance:E2}"));

    public static void Relative(double expected, double actual, double tolerance, string what) =>
        Absolute(expected, actual, tolerance * Math.Abs(expected), what);
}
