namespace FlipAnalytics.Statistics;

/// <summary>The next step in the log variance ratios.</summary>
internal static class NewtonDirection
{
    /// <summary>Longest step in any log ratio: a factor of e³ = 20.</summary>
    private const double LongestStep = 3;

    /// <summary>
    /// −(curvature)⁻¹ score over the free terms, 0 for the others; where the curvature is not positive definite the
    /// expected information takes its place, with a ridge if terms cannot be told apart.
    /// </summary>
    public static double[] Step(DevianceSlopes slopes, int[] free)
    {
        int n = free.Length;
        int terms = slopes.Score.Length;
        double[] matrix = new double[n * n];
        double[] solution = [.. free.Select(k => -slopes.Score[k])];
        Fill(matrix, slopes.Hessian, free, terms, 0);
        if (!RowMajorCholesky.TryFactor(matrix, n))
        {
            double scale = 1e-3 + Math.Max(0, free.Max(k => slopes.ExpectedInformation[(k * terms) + k]));
            double ridge = 1e-8;
            Fill(matrix, slopes.ExpectedInformation, free, terms, ridge * scale);
            while (!RowMajorCholesky.TryFactor(matrix, n))
            {
                ridge *= 100;
                Fill(matrix, slopes.ExpectedInformation, free, terms, ridge * scale);
            }
        }

        RowMajorCholesky.SolveLower(matrix, n, solution);
        RowMajorCholesky.SolveLowerTransposed(matrix, n, solution);
        double longest = solution.Select(Math.Abs).DefaultIfEmpty(0).Max();
        double shrink = longest > LongestStep ? LongestStep / longest : 1;
        double[] step = new double[terms];
        for (int i = 0; i < n; i++)
        {
            step[free[i]] = shrink * solution[i];
        }

        return step;
    }

    private static void Fill(double[] matrix, double[] source, int[] free, int terms, double ridge)
    {
        int n = free.Length;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                matrix[(i * n) + j] = source[(free[i] * terms) + free[j]];
            }

            matrix[(i * n) + i] += ridge;
        }
    }
}
