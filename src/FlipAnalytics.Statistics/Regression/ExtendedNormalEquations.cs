namespace FlipAnalytics.Statistics;

/// <summary>XᵀWX b = XᵀWy held to about 32 digits and solved by iterative refinement, each correction made with the
/// ordinary QR factor R: δ = R⁻¹R⁻ᵀ(XᵀWy − XᵀWX b). The squared condition number costs digits only out of the second
/// sixteen. Björck, Numerical Methods for Least Squares Problems (1996), sections 2.9 and 6.6.</summary>
internal sealed class ExtendedNormalEquations
{
    private readonly DoubleDouble[][] gram;
    private readonly DoubleDouble[] crossResponse;

    /// <param name="columns">The design by columns.</param>
    /// <param name="remainders">What the columns lack for being doubles, or null if they are exact.</param>
    /// <param name="response">y, a value a row.</param>
    /// <param name="weights">A weight a row, or empty for ones.</param>
    public ExtendedNormalEquations(
        IReadOnlyList<double[]> columns, IReadOnlyList<double[]>? remainders, double[] response, double[] weights)
    {
        int width = columns.Count;
        gram = [.. columns.Select((_, j) => new DoubleDouble[j + 1])];
        crossResponse = new DoubleDouble[width];
        DoubleDouble[] row = new DoubleDouble[width];
        for (int i = 0; i < response.Length; i++)
        {
            for (int j = 0; j < width; j++)
                row[j] = new(columns[j][i], remainders is null ? 0 : remainders[j][i]);
            for (int j = 0; j < width; j++)
            {
                DoubleDouble weighted = weights.Length == 0 ? row[j] : row[j] * weights[i];
                DoubleDouble[] gramRow = gram[j];
                for (int k = 0; k < gramRow.Length; k++)
                    gramRow[k] += weighted * row[k];
                crossResponse[j] += weighted * response[i];
            }
        }
    }

    /// <summary>b to full double precision, kept in two parts so that residuals lose nothing either.</summary>
    public DoubleDouble[] Coefficients(IReadOnlyList<double[]> upper) => Refine(crossResponse, upper);

    /// <summary>(XᵀWX)⁻¹.</summary>
    public double[][] Inverse(IReadOnlyList<double[]> upper)
    {
        double[][] inverse = new double[gram.Length][];
        for (int j = 0; j < gram.Length; j++)
        {
            DoubleDouble[] unit = new DoubleDouble[gram.Length];
            unit[j] = 1;
            inverse[j] = [.. Refine(unit, upper).Select(value => (double)value)];
        }
        return inverse;
    }

    private DoubleDouble[] Refine(DoubleDouble[] target, IReadOnlyList<double[]> upper)
    {
        DoubleDouble[] solution = new DoubleDouble[target.Length];
        double first = double.NaN, last = double.PositiveInfinity;
        while (true)
        {
            double[] correction = [.. target.Select((t, j) => (double)(t - Row(j, solution)))];
            TriangularSolve.Forward(upper, correction);
            double size = Math.Sqrt(correction.Sum(c => c * c));
            first = double.IsNaN(first) ? size : first;
            // A correction that no longer halves is rounding noise; 1e-24 of the start is beyond any double.
            if (size <= 1e-24 * first || !(size < last / 2))
                return solution;
            last = size;
            TriangularSolve.Back(upper, correction);
            for (int j = 0; j < solution.Length; j++)
                solution[j] += correction[j];
        }
    }

    private DoubleDouble Row(int j, DoubleDouble[] solution)
    {
        DoubleDouble sum = 0;
        for (int k = 0; k < solution.Length; k++)
            sum += (k <= j ? gram[j][k] : gram[k][j]) * solution[k];
        return sum;
    }
}
