namespace FlipAnalytics;

/// <summary>
/// Holds the mean of equally likely amounts within the range of the middle eight in ten of them: where so few tell so
/// little that a far end alone carries the mean out, that end is drawn in until it does not. A mean that eight in ten
/// outcomes fall short of is no forecast that anyone could use.
/// </summary>
internal static class HeldMean
{
    /// <summary>Chance that the range holds.</summary>
    public const double RangeLevel = 0.8;

    private const double Tail = (1 - RangeLevel) / 2;
    private const int Halvings = 60;

    /// <summary>Draws in what carries the mean out of the range; leaves all else as it is.</summary>
    public static void WithinRange(double[] amounts)
    {
        // One more than the tail holds, so that the quantile lies on the right side however it is interpolated.
        int enough = (int)Math.Ceiling(Tail * amounts.Length) + 1;
        if (amounts.Length < 2 * enough)
            return;
        double mean = amounts.Average();
        if (amounts.Count(a => a >= mean) < enough)
            DrawInHighest(amounts, amounts.OrderDescending().ElementAt(enough - 1));
        else if (amounts.Count(a => a <= mean) < enough)
            LiftLowest(amounts, amounts.Order().ElementAt(enough - 1));
    }

    private static void DrawInHighest(double[] amounts, double top)
    {
        (double below, double above) = (top, amounts.Max());
        for (int i = 0; i < Halvings; i++)
        {
            double cap = (below + above) / 2;
            if (amounts.Average(a => Math.Min(a, cap)) <= top)
                below = cap;
            else
                above = cap;
        }

        for (int i = 0; i < amounts.Length; i++)
            amounts[i] = Math.Min(amounts[i], below);
    }

    private static void LiftLowest(double[] amounts, double bottom)
    {
        (double below, double above) = (amounts.Min(), bottom);
        for (int i = 0; i < Halvings; i++)
        {
            double floor = (below + above) / 2;
            if (amounts.Average(a => Math.Max(a, floor)) >= bottom)
                above = floor;
            else
                below = floor;
        }

        for (int i = 0; i < amounts.Length; i++)
            amounts[i] = Math.Max(amounts[i], above);
    }
}
