namespace FlipAnalytics.Statistics;

/// <summary>
/// The zero of a continuous function between two points where its signs differ: regula falsi by the Illinois rule, which
/// halves the value kept at an end that does not move; Dowell and Jarratt (1971), BIT 11, 168–174.
/// </summary>
internal static class BracketedRoot
{
    private const int MostSteps = 200;

    public static double Find(
        Func<double, double> function, (double X, double Value) low, (double X, double Value) high, double tolerance)
    {
        (double x, int side) = (high.X, 0);
        for (int step = 0; step < MostSteps && Math.Abs(high.X - low.X) > tolerance; step++)
        {
            double next = ((low.X * high.Value) - (high.X * low.Value)) / (high.Value - low.Value);
            if (!(next > Math.Min(low.X, high.X) && next < Math.Max(low.X, high.X)))
            {
                next = low.X + ((high.X - low.X) / 2);
            }

            double value = function(next);
            double moved = Math.Abs(next - x);
            x = next;
            if (value == 0 || moved <= tolerance)
            {
                return x;
            }

            if (Math.Sign(value) == Math.Sign(low.Value))
            {
                low = (x, value);
                high.Value /= side == -1 ? 2 : 1;
                side = -1;
            }
            else
            {
                high = (x, value);
                low.Value /= side == 1 ? 2 : 1;
                side = 1;
            }
        }

        return x;
    }
}
