namespace FlipAnalytics.Statistics;

/// <summary>A level's effect on log duration, shrunk towards zero.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="Effect">Zero for a level without rows, or where the group's variance is zero.</param>
/// <param name="StandardError">Standard error of effect less true effect, given the group variances.</param>
public sealed record FailureTimeLevel(string Level, double Effect, double StandardError);
