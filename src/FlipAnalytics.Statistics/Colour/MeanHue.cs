namespace FlipAnalytics.Statistics;

/// <summary>The mean of directions on a circle, where 350° and 10° lie about 0° and not about 180°: the direction of the sum of
/// their arrows; Mardia and Jupp, Directional Statistics (2000), section 2.2.</summary>
/// <param name="Degrees">From 0 to below 360; null when the arrows cancel and no direction is in the middle.</param>
/// <param name="Concentration">Length of the mean arrow, 0 (spread all round) to 1 (all alike).</param>
public sealed record MeanHue(double? Degrees, double Concentration)
{
    // Arrows of length 1 that cancel leave rounding of about this size.
    private const double Cancelled = 1e-14;

    /// <summary>Takes the mean.</summary>
    /// <param name="hues">In degrees, any turn.</param>
    /// <param name="weights">0 or more, a weight a hue, such as chromas, so that greys hardly count; empty for equal weights.</param>
    /// <exception cref="ArgumentException">No hues, a hue that is not finite, another number of weights, a negative weight, or
    /// weights of 0 only.</exception>
    public static MeanHue Of(ReadOnlySpan<double> hues, ReadOnlySpan<double> weights = default)
    {
        if (hues.IsEmpty || (!weights.IsEmpty && weights.Length != hues.Length))
            throw new ArgumentException($"There are {hues.Length} hues and {weights.Length} weights; give one hue or more, and a weight each or none.");
        double x = 0, y = 0, total = 0;
        for (int i = 0; i < hues.Length; i++)
        {
            double weight = weights.IsEmpty ? 1 : weights[i];
            if (!double.IsFinite(hues[i]) || !(weight >= 0 && double.IsFinite(weight)))
                throw new ArgumentException($"Hue {i} (counting from 0) is {hues[i]} with weight {weight}; both must be finite, the weight 0 or more.");
            (double sine, double cosine) = Math.SinCos(hues[i] * (Math.PI / 180));
            x += weight * cosine;
            y += weight * sine;
            total += weight;
        }
        if (total == 0)
            throw new ArgumentException("All weights are 0; at least one must be above.", nameof(weights));
        double length = Math.Min(1, Math.Sqrt(x * x + y * y) / total);
        return length < Cancelled ? new(null, 0) : new(LabColour.Angle(y, x), length);
    }
}
