using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// The cross-products a fit works on: fixed columns X made orthonormal (X'X = I), the response replaced by its
/// least-squares residual e (X'e = 0), and level indicators laid out in blocks and border. The independent draws behind a
/// walk's levels have the columns Z = Z_period C with C lower triangular, √gap in column s from row s on.
/// </summary>
internal sealed class ReducedCrossProducts
{
    /// <summary>Share of the response's sum of squares below which a residual is only rounding.</summary>
    private const double ExactFitTolerance = 1e-14;

    public ReducedCrossProducts(RawCrossProducts sums, ImmutableArray<RandomTerm> terms, int[] levelOffsets)
    {
        Rows = sums.Rows;
        SumOfLogWeights = sums.SumOfLogWeights;
        Terms = terms;
        LevelOffsets = levelOffsets;
        Fixed = new FixedColumns(sums);
        int p = FixedCount;
        int response = sums.Columns;
        OrdinaryCoefficients = [.. Fixed.Kept.Select(j => Fixed.Product(j, response))];
        Fixed.ToOrthonormal(OrdinaryCoefficients);
        double total = Fixed.Product(response, response);
        double rest = total - VectorKernel.Dot(OrdinaryCoefficients, OrdinaryCoefficients);
        ResidualSumOfSquares = rest > ExactFitTolerance * total ? rest : 0;

        int levels = sums.LevelCount;
        int width = p + 1;
        double[] levelProducts = new double[levels * width];
        for (int level = 0; level < levels; level++)
        {
            Span<double> row = levelProducts.AsSpan(level * width, width);
            for (int a = 0; a < p; a++)
            {
                row[a] = Fixed.LevelProduct(level, Fixed.Kept[a]);
            }

            Fixed.ToOrthonormal(row[..p]);
            row[p] = Fixed.LevelProduct(level, response) - VectorKernel.Dot(row[..p], OrdinaryCoefficients);
        }

        LevelNeighbours neighbours = sums.Meetings.Neighbours();
        Products = new BorderedProducts(
            LayoutChoice.Of(terms, levelOffsets, neighbours, p), sums.Meetings.Own, neighbours, levelProducts, p,
            ResidualSumOfSquares);
        DrawWeights = [.. terms.Select((term, k) =>
            WeightsOfDraws(term, sums.Meetings.Own.AsSpan(levelOffsets[k]..levelOffsets[k + 1])))];
    }

    public int Rows { get; }

    public double SumOfLogWeights { get; }

    public ImmutableArray<RandomTerm> Terms { get; }

    /// <summary>First level of each term, and the number of levels at the end.</summary>
    public int[] LevelOffsets { get; }

    public FixedColumns Fixed { get; }

    public int FixedCount => Fixed.Kept.Length;

    /// <summary>X'y: the least-squares coefficients of the orthonormal columns.</summary>
    public double[] OrdinaryCoefficients { get; }

    /// <summary>e'e.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Z'(Z, X, e) in blocks and border.</summary>
    public BorderedProducts Products { get; }

    /// <summary>Diagonal of Z'Z, term by term: Σw of each level, or of a walk's step on all that comes after it.</summary>
    public double[][] DrawWeights { get; }

    /// <summary>The transpose of a matrix held by rows.</summary>
    public static double[] Transposed(ReadOnlySpan<double> matrix, int rows, int columns)
    {
        double[] result = new double[matrix.Length];
        for (int i = 0; i < rows; i++)
        {
            for (int j = 0; j < columns; j++)
            {
                result[(j * rows) + i] = matrix[(i * columns) + j];
            }
        }

        return result;
    }

    private static double[] WeightsOfDraws(RandomTerm term, ReadOnlySpan<double> own)
    {
        if (term.Structure == RandomStructure.Exchangeable)
        {
            return own.ToArray();
        }

        double[] weights = new double[term.ColumnCount];
        double tail = 0;
        for (int t = weights.Length; t >= 1; t--)
        {
            tail += own[t];
            weights[t - 1] = (term.Positions[t] - term.Positions[t - 1]) * tail;
        }

        return weights;
    }
}
