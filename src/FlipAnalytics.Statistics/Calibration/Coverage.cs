namespace FlipAnalytics.Statistics;

/// <summary>How often ranges held what came.</summary>
/// <param name="Held">Ranges that held the value, ends included.</param>
/// <param name="Count">Ranges.</param>
/// <param name="MeanWidth">Of the ranges; infinite if one is.</param>
public sealed record Coverage(int Held, int Count, double MeanWidth)
{
    /// <summary>Held over count.</summary>
    public double Share => (double)Held / Count;

    /// <summary>What the true share may be: Wilson's interval.</summary>
    public Limits Uncertainty(double level = 0.95) => Proportion.Wilson(Held, Count, level);

    /// <summary>Counts.</summary>
    /// <param name="ranges">Limits in order; either may be infinite.</param>
    /// <param name="values">Finite, a value a range.</param>
    /// <exception cref="ArgumentException">No ranges, another number of values, a range whose limits are not numbers or reversed,
    /// or a value that is not finite.</exception>
    public static Coverage Of(ReadOnlySpan<Limits> ranges, ReadOnlySpan<double> values)
    {
        if (ranges.IsEmpty || ranges.Length != values.Length)
            throw new ArgumentException(
                $"There are {ranges.Length} ranges and {values.Length} values; each value needs one range.", nameof(values));
        for (int i = 0; i < ranges.Length; i++)
            GivenNumbers.RefuseReversed($"Range {i} (counting from 0)", ranges[i], nameof(ranges));
        GivenNumbers.RefuseNotFinite("Value", values, nameof(values));
        int held = 0;
        double width = 0;
        for (int i = 0; i < values.Length; i++)
        {
            held += ranges[i].Contains(values[i]) ? 1 : 0;
            width += ranges[i].Width;
        }
        return new(held, values.Length, width / values.Length);
    }
}
