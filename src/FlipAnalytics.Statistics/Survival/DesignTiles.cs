using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FlipAnalytics.Statistics;

/// <summary>The design matrix in tiles of <see cref="RowsPerTile"/> rows, column by column within a tile, so that
/// products over rows run over short contiguous arrays that stay in the processor's nearest cache. The last tile
/// is filled up with zeros. Sums are in a fixed order with four lanes, whatever the processor.</summary>
internal sealed class DesignTiles
{
    internal const int RowsPerTile = 256;
    private readonly double[] values;
    private readonly double[] turned;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal DesignTiles(double[][] rows, int[] columns)
    {
        RowCount = rows.Length;
        ColumnCount = columns.Length;
        TileCount = (RowCount + RowsPerTile - 1) / RowsPerTile;
        turned = new double[RowsPerTile * ColumnCount];
        values = new double[checked(TileCount * RowsPerTile * ColumnCount)];
        for (int row = 0; row < RowCount; row++)
        {
            int at = row / RowsPerTile * RowsPerTile * ColumnCount + row % RowsPerTile;
            double[] x = rows[row];
            foreach (int column in columns)
            {
                values[at] = x[column];
                at += RowsPerTile;
            }
        }
    }

    internal int RowCount { get; }

    internal int ColumnCount { get; }

    internal int TileCount { get; }

    /// <summary>Rows in use in a tile: all but in the last.</summary>
    internal int RowsIn(int tile) => Math.Min(RowsPerTile, RowCount - tile * RowsPerTile);

    /// <summary>A column's values in a tile.</summary>
    internal ReadOnlySpan<double> Column(int tile, int column) =>
        values.AsSpan((tile * ColumnCount + column) * RowsPerTile, RowsPerTile);

    /// <summary>Lays a tile out row by row for <see cref="RowOf"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void TurnToRows(int tile)
    {
        for (int j = 0; j < ColumnCount; j++)
        {
            ReadOnlySpan<double> column = Column(tile, j);
            for (int i = 0, at = j; i < column.Length; i++, at += ColumnCount)
            {
                turned[at] = column[i];
            }
        }
    }

    /// <summary>A row of the tile last turned.</summary>
    internal ReadOnlySpan<double> RowOf(int rowInTile) => turned.AsSpan(rowInTile * ColumnCount, ColumnCount);

    /// <summary>How far a column strays from its mean at most; the size of a constant column.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal double Reach(int column)
    {
        double sum = 0, least = double.PositiveInfinity, most = double.NegativeInfinity;
        for (int tile = 0; tile < TileCount; tile++)
        {
            foreach (double x in Column(tile, column)[..RowsIn(tile)])
            {
                sum += x;
                least = Math.Min(least, x);
                most = Math.Max(most, x);
            }
        }

        double mean = sum / RowCount;
        return least == most ? Math.Abs(most) : Math.Max(most - mean, mean - least);
    }

    /// <summary>X β for a tile's rows.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Predict(int tile, ReadOnlySpan<double> coefficients, Span<double> result)
    {
        result.Clear();
        ref double to = ref MemoryMarshal.GetReference(result);
        for (int j = 0; j < ColumnCount; j++)
        {
            ref double x = ref MemoryMarshal.GetReference(Column(tile, j));
            var coefficient = Vector256.Create(coefficients[j]);
            for (nuint i = 0; i < RowsPerTile; i += 4)
            {
                (Vector256.LoadUnsafe(ref to, i) + coefficient * Vector256.LoadUnsafe(ref x, i)).StoreUnsafe(ref to, i);
            }
        }
    }

    /// <summary>Adds X'w of a tile's rows to <paramref name="sums"/>.</summary>
    internal void AddWeightedSums(int tile, ReadOnlySpan<double> weights, Span<double> sums) =>
        AddProducts(tile, ref MemoryMarshal.GetReference(weights), sums[..ColumnCount]);

    /// <summary>Adds the lower triangle of X' diag(w) X of a tile's rows to a square array of row length
    /// <paramref name="stride"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void AddWeightedGram(int tile, ReadOnlySpan<double> weights, Span<double> gram, int stride)
    {
        Span<double> weighted = stackalloc double[RowsPerTile];
        ref double to = ref MemoryMarshal.GetReference(weighted);
        ref double w = ref MemoryMarshal.GetReference(weights);
        for (int j = 0; j < ColumnCount; j++)
        {
            ref double x = ref MemoryMarshal.GetReference(Column(tile, j));
            for (nuint i = 0; i < RowsPerTile; i += 4)
            {
                (Vector256.LoadUnsafe(ref w, i) * Vector256.LoadUnsafe(ref x, i)).StoreUnsafe(ref to, i);
            }

            AddProducts(tile, ref to, gram.Slice(j * stride, j + 1));
        }
    }

    // Four columns at a time: each load of the weights then serves four products.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddProducts(int tile, ref double weights, Span<double> sums)
    {
        if (sums.IsEmpty)
        {
            return;
        }

        ref double x = ref MemoryMarshal.GetReference(Column(tile, 0));
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
