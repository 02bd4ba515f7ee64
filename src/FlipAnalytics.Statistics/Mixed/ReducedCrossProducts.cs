using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// The cross-products a fit works on: fixed columns X made orthonormal (X'X = I), the response replaced by its
/// least-squares residual e (X'e = 0), and level indicators turned into the columns Z of independent draws (for a walk
/// Z = Z_period C with C lower triangular, √gap in column s from row s on).
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
        Offsets = new int[terms.Length + 1];
        for (int k = 0; k < terms.Length; k++)
        {
            Offsets[k + 1] = Offsets[k] + terms[k].ColumnCount;
        }

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

        ZXe = DrawsFromLevels(levelProducts, width);
        double[] counts = new double[levels * levels];
        for (int i = 0; i < levels; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                counts[(i * levels) + j] = counts[(j * levels) + i] = sums.LevelCounts[(i * levels) + j];
            }
        }

        double[] half = DrawsFromLevels(counts, levels);
        ZZ = DrawsFromLevels(Transposed(half, DrawCount, levels), DrawCount);
    }

    public int Rows { get; }

    public double SumOfLogWeights { get; }

    public ImmutableArray<RandomTerm> Terms { get; }

    /// <summary>First level of each term, and the number of levels at the end.</summary>
    public int[] LevelOffsets { get; }

    /// <summary>First column of Z of each term, and the number of columns at the end.</summary>
    public int[] Offsets { get; }

    public FixedColumns Fixed { get; }

    public int FixedCount => Fixed.Kept.Length;

    public int DrawCount => Offsets[^1];

    /// <summary>X'y: the least-squares coefficients of the orthonormal columns.</summary>
    public double[] OrdinaryCoefficients { get; }

    /// <summary>e'e.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Z'Z, both triangles.</summary>
    public double[] ZZ { get; }

    /// <summary>Z'(X, e) by rows of length <see cref="FixedCount"/> + 1.</summary>
    public double[] ZXe { get; }

    /// <summary>Level effects from draws, each draw first multiplied by its scale: rows of <paramref name="draws"/>.</summary>
    public double[] LevelsFromDraws(ReadOnlySpan<double> draws, int width, ReadOnlySpan<double> scales)
    {
        double[] levels = new double[LevelOffsets[^1] * width];
        for (int k = 0; k < Terms.Length; k++)
        {
            bool walk = Terms[k].Structure == RandomStructure.RandomWalk;
            for (int t = 0; t < Terms[k].Levels.Length; t++)
            {
                Span<double> level = levels.AsSpan((LevelOffsets[k] + t) * width, width);
                if (walk && t == 0)
                {
                    continue;
                }

                int draw = Offsets[k] + (walk ? t - 1 : t);
                if (walk)
                {
                    levels.AsSpan((LevelOffsets[k] + t - 1) * width, width).CopyTo(level);
                }

                double scale = scales[draw] * (walk ? RootGap(Terms[k], t) : 1);
                VectorKernel.AddScaled(level, scale, draws.Slice(draw * width, width));
            }
        }

        return levels;
    }

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

    /// <summary>Rows of cross-products of level indicators turned into rows for the draws: C' times them.</summary>
    private double[] DrawsFromLevels(ReadOnlySpan<double> levels, int width)
    {
        double[] draws = new double[DrawCount * width];
        double[] tail = new double[width];
        for (int k = 0; k < Terms.Length; k++)
        {
            int count = Terms[k].ColumnCount;
            ReadOnlySpan<double> source = levels.Slice(LevelOffsets[k] * width, Terms[k].Levels.Length * width);
            Span<double> target = draws.AsSpan(Offsets[k] * width, count * width);
            if (Terms[k].Structure == RandomStructure.Exchangeable)
            {
                source.CopyTo(target);
                continue;
            }

            Array.Clear(tail);
            for (int t = count; t >= 1; t--)
            {
                VectorKernel.AddScaled(tail, 1, source.Slice(t * width, width));
                VectorKernel.AddScaled(target.Slice((t - 1) * width, width), RootGap(Terms[k], t), tail);
            }
        }

        return draws;
    }

    private static double RootGap(RandomTerm term, int t) => Math.Sqrt(term.Positions[t] - term.Positions[t - 1]);
}
