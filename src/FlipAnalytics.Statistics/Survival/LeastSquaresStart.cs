using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>Starting values: least squares of the log durations, taking censored ones as if they had ended, with the
/// priors as extra observations; on the way it finds columns that repeat earlier ones.</summary>
internal sealed class LeastSquaresStart
{
    // A column whose squared length falls below this share once earlier columns are taken out repeats them.
    private const double RepeatedShare = 1e-11;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal LeastSquaresStart(DesignTiles design, FailureRows rows, NormalPrior?[] priors, LinearPrior? linear)
    {
        int count = design.ColumnCount;
        var gram = new double[count * count];
        var products = new double[count];
        double squares = 0, weightSum = 0;
        var weight = new double[DesignTiles.RowsPerTile];
        var weighted = new double[DesignTiles.RowsPerTile];
        for (int tile = 0; tile < design.TileCount; tile++)
        {
            weight.AsSpan().Clear();
            weighted.AsSpan().Clear();
            for (int i = 0; i < design.RowsIn(tile); i++)
            {
                int row = tile * DesignTiles.RowsPerTile + i;
                double y = LogDuration(rows, row);
                weight[i] = rows.Weight is null ? 1 : rows.Weight[row];
                weighted[i] = weight[i] * y;
                squares += weighted[i] * y;
                weightSum += weight[i];
            }

            design.AddWeightedSums(tile, weighted, products);
            design.AddWeightedGram(tile, weight, gram, count);
        }

        if (weightSum == 0)
        {
            throw new ArgumentException("All weights are zero: at least one row must count.");
        }

        for (int j = 0; j < count; j++)
        {
            gram[j * count + j] += priors[j]?.Precision ?? 0;
            products[j] += (priors[j]?.Precision ?? 0) * (priors[j]?.Mean ?? 0);
        }

        linear?.AddInformation(gram, count);
        linear?.AddProducts(products);
        IndependentColumns = Independent(gram, count);
        Coefficients = Solve(gram, count, products);
        double explained = 0;
        for (int j = 0; j < Coefficients.Length; j++)
        {
            explained += Coefficients[j] * products[IndependentColumns[j]];
        }

        double variance = Math.Max(0, squares - explained) / weightSum;
        LogScale = Math.Log(Math.Clamp(Math.Sqrt(variance), 0.1, 5));
    }

    /// <summary>Columns kept, in order: each that earlier ones do not reproduce.</summary>
    internal ImmutableArray<int> IndependentColumns { get; }

    /// <summary>Of the kept columns.</summary>
    internal double[] Coefficients { get; }

    /// <summary>Logarithm of the residual standard deviation, within bounds from which Newton's method is safe.</summary>
    internal double LogScale { get; }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double LogDuration(FailureRows rows, int row) =>
        rows.LogLower is not null && rows.LogLower[row] > double.NegativeInfinity
            ? (rows.LogLower[row] + rows.LogStop[row]) / 2
            : rows.LogStop[row];

    private static ImmutableArray<int> Independent(double[] gram, int count)
    {
        var kept = ImmutableArray.CreateBuilder<int>();
        var factor = new double[count * count];
        for (int i = 0; i < count; i++)
        {
            double diagonal = gram[i * count + i], left = diagonal;
            foreach (int j in kept)
            {
                double entry = gram[i * count + j];
                foreach (int k in kept)
                {
                    if (k >= j)
                    {
                        break;
                    }

                    entry -= factor[i * count + k] * factor[j * count + k];
                }

                factor[i * count + j] = entry / factor[j * count + j];
                left -= factor[i * count + j] * factor[i * count + j];
            }

            if (left > RepeatedShare * diagonal)
            {
                factor[i * count + i] = Math.Sqrt(left);
                kept.Add(i);
            }
        }

        return kept.ToImmutable();
    }

    private double[] Solve(double[] gram, int count, double[] products)
    {
        int size = IndependentColumns.Length;
        var matrix = new double[size * size];
        var solution = new double[size];
        for (int i = 0; i < size; i++)
        {
            solution[i] = products[IndependentColumns[i]];
            for (int j = 0; j <= i; j++)
            {
                matrix[i * size + j] = gram[IndependentColumns[i] * count + IndependentColumns[j]];
            }
        }

        var factor = new ScaledCholesky(size);
        if (!factor.TryFactor(matrix, size, 0))
        {
            throw new NoEstimateException("The columns of the design are too nearly dependent to be told apart; leave one out.");
        }

        factor.Solve(solution);
        return solution;
    }
}
