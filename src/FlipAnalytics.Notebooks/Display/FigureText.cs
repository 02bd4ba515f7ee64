using FlipAnalytics.Plots;

namespace FlipAnalytics.Notebooks;

/// <summary>A picture for a notebook, and the words that stand in for it.</summary>
internal static class FigureText
{
    /// <summary>The picture as PNG in base 64.</summary>
    public static string Png(Figure figure) => Convert.ToBase64String(figure.Png());

    /// <summary>What the picture says, for those who do not see it.</summary>
    public static string Alternative(Figure figure) => $"Plot: {figure.Alternative}";
}
