namespace FlipAnalytics.Statistics;

/// <summary>What every way of solving least squares must deliver; <see cref="LinearFit"/> derives the rest from it.
/// Arrays run over the kept columns.</summary>
internal sealed record LinearSolution(
    string[] Names, int[] Kept, double[] Coefficients, double[][] Inverse, IReadOnlyList<double[]> Upper)
{
    public required int RowCount { get; init; }

    public required bool HasIntercept { get; init; }

    public required double ResidualSumOfSquares { get; init; }

    /// <summary>What rounding alone may make of <see cref="ResidualSumOfSquares"/>.</summary>
    public required double RoundingSumOfSquares { get; init; }

    public required double ModelSumOfSquares { get; init; }

    public required double SumOfLogWeights { get; init; }

    /// <summary>Σ w (x − x̄)² of each column; 0 for a constant one.</summary>
    public required double[] CentredSumsOfSquares { get; init; }
}

/// <summary>The rows a fit was made from: kept columns, y, e = y − ŷ, and weights (empty for ones).</summary>
internal sealed record FittedRows(double[][] Columns, double[] Response, double[] Residuals, double[] Weights)
{
    public double Weight(int row) => Weights.Length == 0 ? 1 : Weights[row];
}
