namespace FlipAnalytics.Statistics;

/// <summary>Ordinary and weighted least squares: b minimises Σ wᵢ (yᵢ − xᵢᵀb)². Householder QR, the columns taken in
/// order and dependent later ones dropped and named, as R's <c>lm</c> does; then refinement to full double precision.
/// Checked against R and the NIST StRD linear regression sets.</summary>
public static class LeastSquares
{
    // A response and its columns are each rounded by up to 1.1e-16 of their size, 2⁻⁵³: what is left below a hundred such
    // roundings tells nothing. R's summary.lm warns below 1e-15.
    private const double RoundingShare = 1e-14;

    /// <summary>Fits response on the columns of a design.</summary>
    /// <param name="design">The columns, the intercept included if there is to be one.</param>
    /// <param name="response">y, a value a row.</param>
    /// <param name="weights">Precision weights above 0, a weight a row; empty for equal weights.</param>
    /// <param name="options">Rank tolerance and refinement; R's when null.</param>
    /// <exception cref="ArgumentException">No rows or columns, lengths that differ, a value that is not finite, a weight
    /// not above 0, a name used twice, a constant response beside an intercept or one of 0, no more rows than coefficients, or
    /// numbers so large (1e150) or small (1e-135) that their squares cannot be summed. The message names the column and the row.
    /// </exception>
    public static LinearFit Fit(
        IReadOnlyList<Regressor> design,
        ReadOnlySpan<double> response,
        ReadOnlySpan<double> weights = default,
        LeastSquaresOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        double[][] columns = [.. design.Select(column => column.Values.ToArray())];
        return Fit(
            [.. design.Select(column => column.Name)], columns, null, response.ToArray(), weights.ToArray(),
            options ?? LeastSquaresOptions.Default);
    }

    internal static LinearFit Fit(
        string[] names, double[][] columns, double[][]? remainders, double[] response, double[] weights,
        LeastSquaresOptions options)
    {
        LeastSquaresChecks.Refuse(names, columns, response, weights);
        double[] rootWeights = [.. weights.Select(Math.Sqrt)];
        HouseholderQr qr = new([.. columns.Select(column => Scaled(column, rootWeights))], options.RankTolerance);
        LeastSquaresChecks.RefuseTooFewRows(response.Length, qr.Kept.Count, columns.Length);

        double[][] kept = [.. qr.Kept.Select(j => columns[j])];
        double[][]? keptRemainders = remainders is null ? null : [.. qr.Kept.Select(j => remainders[j])];
        DoubleDouble[] coefficients;
        double[][] inverse;
        if (options.Refine)
        {
            ExtendedNormalEquations equations = new(kept, keptRemainders, response, weights);
            coefficients = equations.Coefficients(qr.Upper);
            inverse = equations.Inverse(qr.Upper);
        }
        else
        {
            coefficients = [.. qr.Solve(Scaled(response, rootWeights)).Select(value => (DoubleDouble)value)];
            inverse = TriangularSolve.InverseOfSquare(qr.Upper);
        }

        double[] residuals = Residuals(kept, keptRemainders, response, coefficients);
        LinearFit fit = new(
            new LinearSolution(names, [.. qr.Kept], [.. coefficients.Select(value => (double)value)], inverse, qr.Upper)
            {
                RowCount = response.Length,
                HasIntercept = kept.Any(IsConstant),
                ResidualSumOfSquares = SumOfSquares(residuals, weights, 0),
                RoundingSumOfSquares = RoundingShare * RoundingShare * SumOfSquares(response, weights, 0),
                ModelSumOfSquares = ModelSumOfSquares(kept, response, residuals, weights),
                SumOfLogWeights = weights.Sum(Math.Log),
                CentredSumsOfSquares =
                    [.. kept.Select(column => IsConstant(column) ? 0 : SumOfSquares(column, weights, Mean(column, weights)))],
            },
            new FittedRows(kept, response, residuals, weights));
        LeastSquaresChecks.RefuseUnheldVariances(fit);
        return fit;
    }

    internal static bool IsConstant(double[] column) =>
        column[0] != 0 && column.AsSpan().IndexOfAnyExcept(column[0]) < 0;

    internal static double[] Scaled(double[] column, double[] rootWeights) =>
        rootWeights.Length == 0 ? column : [.. column.Select((value, i) => value * rootWeights[i])];

    private static double[] Residuals(
        double[][] columns, double[][]? remainders, double[] response, DoubleDouble[] coefficients)
    {
        double[] residuals = new double[response.Length];
        for (int i = 0; i < residuals.Length; i++)
        {
            DoubleDouble rest = response[i];
            for (int j = 0; j < columns.Length; j++)
                rest -= new DoubleDouble(columns[j][i], remainders is null ? 0 : remainders[j][i]) * coefficients[j];
            residuals[i] = (double)rest;
        }
        return residuals;
    }

    /// <summary>Σ w (ŷ − ȳ)² with an intercept, Σ w ŷ² without.</summary>
    private static double ModelSumOfSquares(double[][] columns, double[] response, double[] residuals, double[] weights)
    {
        double[] fitted = [.. response.Select((y, i) => y - residuals[i])];
        return SumOfSquares(fitted, weights, columns.Any(IsConstant) ? Mean(fitted, weights) : 0);
    }

    private static double Mean(double[] values, double[] weights) => weights.Length == 0
        ? values.Average()
        : values.Select((value, i) => value * weights[i]).Sum() / weights.Sum();

    private static double SumOfSquares(double[] values, double[] weights, double centre)
    {
        DoubleDouble sum = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double distance = values[i] - centre;
            sum += (DoubleDouble)distance * distance * (weights.Length == 0 ? 1 : weights[i]);
        }
        return (double)sum;
    }
}
