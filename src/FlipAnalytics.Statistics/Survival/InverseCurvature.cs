namespace FlipAnalytics.Statistics;

/// <summary>The approximate inverse of minus the matrix of second derivatives that BFGS keeps while it climbs
/// (Nocedal and Wright, Numerical Optimization, equation 6.17).</summary>
internal sealed class InverseCurvature(double[] initialDiagonal)
{
    // One step changes a variance by at most a factor e³ ≈ 20 down and e² ≈ 7 up.
    private const double MostDown = -3;
    private const double MostUp = 2;
    private readonly double[] initial = initialDiagonal;
    private double[][] matrix = Diagonal(initialDiagonal);

    /// <summary>A step uphill within bounds.</summary>
    internal double[] Step(double[] gradient)
    {
        double[] step = Bounded(Times(gradient));
        if (Product(step, gradient) > 0)
        {
            return step;
        }

        matrix = Diagonal(initial);
        return Bounded(Times(gradient));
    }

    /// <summary>Learns from how a step changed the gradient.</summary>
    internal void Update(double[] step, double[] before, double[] after)
    {
        double[] change = [.. before.Zip(after, (a, b) => a - b)];
        double along = Product(step, change);
        if (!(along > 1e-10 * Product(step, step)))
        {
            // Not concave here, as on the plain towards zero variance: go on in longer steps.
            matrix = [.. matrix.Select(row => row.Select(entry => 4 * entry).ToArray())];
            return;
        }

        double[] spread = Times(change);
        double factor = (1 + Product(change, spread) / along) / along;
        for (int i = 0; i < step.Length; i++)
        {
            for (int j = 0; j < step.Length; j++)
            {
                matrix[i][j] += factor * step[i] * step[j] - (spread[i] * step[j] + step[i] * spread[j]) / along;
            }
        }
    }

    private static double[] Bounded(double[] step) => [.. step.Select(d => Math.Clamp(d, MostDown, MostUp))];

    private static double Product(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    private static double[][] Diagonal(double[] entries) =>
        [.. entries.Select((entry, i) => { var row = new double[entries.Length]; row[i] = entry; return row; })];

    private double[] Times(double[] vector) => [.. matrix.Select(row => Product(row, vector))];
}
