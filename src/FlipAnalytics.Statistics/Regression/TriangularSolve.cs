namespace FlipAnalytics.Statistics;

/// <summary>Solves with an upper triangle R held by columns: <c>upper[j][i]</c> is Rᵢⱼ for i ≤ j.</summary>
internal static class TriangularSolve
{
    /// <summary>Overwrites x with R⁻¹ x.</summary>
    public static void Back(IReadOnlyList<double[]> upper, double[] x)
    {
        for (int j = upper.Count - 1; j >= 0; j--)
        {
            double[] column = upper[j];
            double solved = x[j] /= column[j];
            for (int i = 0; i < j; i++)
                x[i] -= column[i] * solved;
        }
    }

    /// <summary>Overwrites x with R⁻ᵀ x.</summary>
    public static void Forward(IReadOnlyList<double[]> upper, double[] x)
    {
        for (int j = 0; j < upper.Count; j++)
        {
            double[] column = upper[j];
            double left = x[j];
            for (int i = 0; i < j; i++)
                left -= column[i] * x[i];
            x[j] = left / column[j];
        }
    }

    /// <summary>(RᵀR)⁻¹.</summary>
    public static double[][] InverseOfSquare(IReadOnlyList<double[]> upper)
    {
        double[][] inverse = new double[upper.Count][];
        for (int j = 0; j < upper.Count; j++)
        {
            inverse[j] = new double[upper.Count];
            inverse[j][j] = 1;
            Forward(upper, inverse[j]);
            Back(upper, inverse[j]);
        }
        return inverse;
    }
}
