namespace FlipAnalytics.Statistics;

/// <summary>Cholesky of a matrix of sums of products, columns taken in order and dependent later ones set aside; the last
/// row and column belong to the response. Golub and Van Loan, Matrix Computations (4th ed.), section 5.3.2.</summary>
internal sealed class CrossProductSolver
{
    public CrossProductSolver(Func<int, int, double> product, int columns, double tolerance)
    {
        for (int j = 0; j < columns; j++)
        {
            double[] column = Against(product, j);
            double left = product(j, j) - column.Sum(value => value * value);
            if (!(left > tolerance * tolerance * product(j, j)))
                continue;
            Upper.Add([.. column, Math.Sqrt(left)]);
            Kept.Add(j);
        }
        Coefficients = Against(product, columns);
        Explained = Coefficients.Sum(value => value * value);
        TriangularSolve.Back(Upper, Coefficients);
    }

    public List<int> Kept { get; } = [];

    public List<double[]> Upper { get; } = [];

    public double[] Coefficients { get; }

    /// <summary>The part of the response's sum of squares that the columns explain.</summary>
    public double Explained { get; }

    private double[] Against(Func<int, int, double> product, int j)
    {
        double[] column = [.. Kept.Select(k => product(k, j))];
        TriangularSolve.Forward(Upper, column);
        return column;
    }
}
