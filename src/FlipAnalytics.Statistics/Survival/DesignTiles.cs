using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FlipAnalytics.Statistics;

/// <summary>The design matrix in tiles of <see cref="RowsPerTile"/> rows, column by column within a tile, so that
/// products over rows run over short contiguous arrays that stay in the processor's nearest cache. The last tile
/// is filled up with zeros. The columns of categories come last and are held as indices. Sums are in a fixed order with
/// four lanes, whatever the processor.</summary>
internal sealed class DesignTiles
{
    internal const int RowsPerTile = 256;
    private readonly double[] values;
    private readonly double[] turned;
    private readonly int numberCount;
    private readonly ImmutableArray<IndicatorColumns> categories;

    /// <param name="data">The rows.</param>
    /// <param name="columns">Which of all its columns, in order.</param>
    /// <param name="centred">Which of all its columns are taken from their means.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal DesignTiles(AcceleratedFailureData data, ImmutableArray<int> columns, CentredColumns centred)
    {
        RowCount = data.X.Length;
        ColumnCount = columns.Length;
        TileCount = (RowCount + RowsPerTile - 1) / RowsPerTile;
        int[] numbers = [.. columns.Where(column => column < data.CoefficientNames.Length)];
        numberCount = numbers.Length;
        categories = Indicators(data, columns);
        turned = new double[RowsPerTile * ColumnCount];
        values = new double[checked(TileCount * RowsPerTile * numberCount)];
        double[] means = [.. numbers.Select(centred.Mean)];
        for (int row = 0; row < RowCount; row++)
        {
            int at = row / RowsPerTile * RowsPerTile * numberCount + row % RowsPerTile;
            double[] x = data.X[row];
            for (int j = 0; j < numbers.Length; j++)
            {
                values[at] = x[numbers[j]] - means[j];
                at += RowsPerTile;
            }
        }
    }

    internal int RowCount { get; }

    internal int ColumnCount { get; }

    internal int TileCount { get; }

    /// <summary>Rows in use in a tile: all but in the last.</summary>
    internal int RowsIn(int tile) => Math.Min(RowsPerTile, RowCount - tile * RowsPerTile);

    /// <summary>The values in a tile of a column that is no category's.</summary>
    private ReadOnlySpan<double> Number(int tile, int column) =>
        values.AsSpan((tile * numberCount + column) * RowsPerTile, RowsPerTile);

    /// <summary>Lays a tile out row by row for <see cref="RowOf"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void TurnToRows(int tile)
    {
        for (int j = 0; j < numberCount; j++)
        {
            ReadOnlySpan<double> column = Number(tile, j);
            for (int i = 0, at = j; i < column.Length; i++, at += ColumnCount)
            {
                turned[at] = column[i];
            }
        }

        for (int i = 0; i < RowsIn(tile) && !categories.IsEmpty; i++)
        {
            Span<double> row = turned.AsSpan(i * ColumnCount, ColumnCount);
            row[numberCount..].Clear();
            foreach (IndicatorColumns category in categories)
            {
                int column = category.ColumnOf(tile * RowsPerTile + i);
                if (column >= 0)
                {
                    row[column] = 1;
                }
            }
        }
    }

    /// <summary>A row of the tile last turned.</summary>
    internal ReadOnlySpan<double> RowOf(int rowInTile) => turned.AsSpan(rowInTile * ColumnCount, ColumnCount);

    /// <summary>How far each column strays from its mean at most; the size of a constant column.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal double[] Reach()
    {
        var reach = new double[ColumnCount];
        for (int j = 0; j < numberCount; j++)
        {
            double sum = 0, least = double.PositiveInfinity, most = double.NegativeInfinity;
            for (int tile = 0; tile < TileCount; tile++)
            {
                foreach (double x in Number(tile, j)[..RowsIn(tile)])
                {
                    sum += x;
                    least = Math.Min(least, x);
                    most = Math.Max(most, x);
                }
            }

            double mean = sum / RowCount;
            reach[j] = least == most ? Math.Abs(most) : Math.Max(most - mean, mean - least);
        }

        double[] ones = [.. Enumerable.Repeat(1.0, RowsPerTile)];
        for (int tile = 0; tile < TileCount; tile++)
        {
            foreach (IndicatorColumns category in categories)
            {
                category.AddWeights(tile * RowsPerTile, RowsIn(tile), ones, reach);
            }
        }

        for (int j = numberCount; j < ColumnCount; j++)
        {
            double share = reach[j] / RowCount;
            reach[j] = share is 0 or 1 ? share : Math.Max(share, 1 - share);
        }

        return reach;
    }

    /// <summary>X β for a tile's rows.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Predict(int tile, ReadOnlySpan<double> coefficients, Span<double> result)
    {
        result.Clear();
        ref double to = ref MemoryMarshal.GetReference(result);
        for (int j = 0; j < numberCount; j++)
        {
            ref double x = ref MemoryMarshal.GetReference(Number(tile, j));
            var coefficient = Vector256.Create(coefficients[j]);
            for (nuint i = 0; i < RowsPerTile; i += 4)
            {
                (Vector256.LoadUnsafe(ref to, i) + coefficient * Vector256.LoadUnsafe(ref x, i)).StoreUnsafe(ref to, i);
            }
        }

        foreach (IndicatorColumns category in categories)
        {
            category.AddCoefficients(tile * RowsPerTile, RowsIn(tile), coefficients, result);
        }
    }

    /// <summary>Adds X'w of a tile's rows to <paramref name="sums"/>.</summary>
    internal void AddWeightedSums(int tile, ReadOnlySpan<double> weights, Span<double> sums)
    {
        AddProducts(tile, ref MemoryMarshal.GetReference(weights), sums[..numberCount]);
        foreach (IndicatorColumns category in categories)
        {
            category.AddWeights(tile * RowsPerTile, RowsIn(tile), weights, sums);
        }
    }

    /// <summary>Adds the lower triangle of X' diag(w) X of a tile's rows to a square array of row length
    /// <paramref name="stride"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void AddWeightedGram(int tile, ReadOnlySpan<double> weights, Span<double> gram, int stride)
    {
        Span<double> weighted = stackalloc double[RowsPerTile];
        ref double to = ref MemoryMarshal.GetReference(weighted);
        ref double w = ref MemoryMarshal.GetReference(weights);
        for (int j = 0; j < numberCount; j++)
        {
            ref double x = ref MemoryMarshal.GetReference(Number(tile, j));
            for (nuint i = 0; i < RowsPerTile; i += 4)
            {
                (Vector256.LoadUnsafe(ref w, i) * Vector256.LoadUnsafe(ref x, i)).StoreUnsafe(ref to, i);
            }

            AddProducts(tile, ref to, gram.Slice(j * stride, j + 1));
        }

        int first = tile * RowsPerTile, count = RowsIn(tile);
        for (int k = 0; k < categories.Length; k++)
        {
            for (int j = 0; j < numberCount; j++)
            {
                categories[k].AddProducts(first, count, weights, Number(tile, j), gram, stride, j);
            }

            for (int other = 0; other <= k; other++)
            {
                categories[k].AddCounts(first, count, weights, categories[other], gram, stride);
            }
        }
    }

    private static ImmutableArray<IndicatorColumns> Indicators(AcceleratedFailureData data, ImmutableArray<int> columns)
    {
        var indicators = ImmutableArray.CreateBuilder<IndicatorColumns>();
        int next = data.CoefficientNames.Length;
        foreach (GroupColumn category in data.Categories)
        {
            // No level and the first level have no column of their own.
            int[] columnOf = [-1, -1, .. Enumerable.Range(next, category.Levels.Length - 1).Select(column => columns.IndexOf(column))];
            indicators.Add(new(category.Level, columnOf));
            next += category.Levels.Length - 1;
        }

        return indicators.ToImmutable();
    }

    // Four columns at a time: each load of the weights then serves four products.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddProducts(int tile, ref double weights, Span<double> sums)
    {
        if (sums.IsEmpty)
        {
            return;
        }

        ref double x = ref MemoryMarshal.GetReference(Number(tile, 0));
        int column = 0;
        for (; column + 4 <= sums.Length; column += 4)
        {
            Vector256<double> a = default, b = default, c = default, d = default;
            nuint first = (nuint)column * RowsPerTile;
            for (nuint i = 0; i < RowsPerTile; i += 4)
            {
                var w = Vector256.LoadUnsafe(ref weights, i);
                a += w * Vector256.LoadUnsafe(ref x, first + i);
                b += w * Vector256.LoadUnsafe(ref x, first + RowsPerTile + i);
                c += w * Vector256.LoadUnsafe(ref x, first + 2 * RowsPerTile + i);
                d += w * Vector256.LoadUnsafe(ref x, first + 3 * RowsPerTile + i);
            }

            sums[column] += Vector256.Sum(a);
            sums[column + 1] += Vector256.Sum(b);
            sums[column + 2] += Vector256.Sum(c);
            sums[column + 3] += Vector256.Sum(d);
        }

        for (; column < sums.Length; column++)
        {
            Vector256<double> a = default;
            nuint first = (nuint)column * RowsPerTile;
            for (nuint i = 0; i < RowsPerTile; i += 4)
            {
                a += Vector256.LoadUnsafe(ref weights, i) * Vector256.LoadUnsafe(ref x, first + i);
            }

            sums[column] += Vector256.Sum(a);
        }
    }
}
