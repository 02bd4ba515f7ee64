using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>A plot and the size at which its text fits.</summary>
/// <param name="Plot">The plot.</param>
/// <param name="Width">Width in pixels.</param>
/// <param name="Height">Height in pixels.</param>
public sealed record Figure(Plot Plot, int Width, int Height);
