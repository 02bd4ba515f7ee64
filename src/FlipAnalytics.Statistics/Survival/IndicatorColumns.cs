using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>The columns of a category, 1 where a row has the level and 0 elsewhere, held as one index a row: products with
/// them are sums by level.</summary>
/// <param name="level">Per row the level, −1 for none.</param>
/// <param name="columnOf">By level, −1 for none coming first, its column in the design; −1 where it has none.</param>
internal sealed class IndicatorColumns(int[] level, int[] columnOf)
{
    /// <summary>The column in which a row has its 1; −1 where it has none.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal int ColumnOf(int row) => columnOf[level[row] + 1];

    /// <summary>Adds the rows' coefficients.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void AddCoefficients(int firstRow, int count, ReadOnlySpan<double> coefficients, Span<double> result)
    {
        for (int i = 0; i < count; i++)
        {
            int column = ColumnOf(firstRow + i);
            result[i] += column < 0 ? 0 : coefficients[column];
        }
    }

    /// <summary>Adds the rows' weights by column.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void AddWeights(int firstRow, int count, ReadOnlySpan<double> weights, Span<double> sums)
    {
        for (int i = 0; i < count; i++)
        {
            int column = ColumnOf(firstRow + i);
            if (column >= 0)
            {
                sums[column] += weights[i];
            }
        }
    }

    /// <summary>Adds weight times value by column to entry <paramref name="at"/> of the columns' rows in a square array.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void AddProducts(
        int firstRow, int count, ReadOnlySpan<double> weights, ReadOnlySpan<double> values, Span<double> gram, int stride, int at)
    {
        for (int i = 0; i < count; i++)
        {
            int column = ColumnOf(firstRow + i);
            if (column >= 0)
            {
                gram[column * stride + at] += weights[i] * values[i];
            }
        }
    }

    /// <summary>Adds the weights of rows that lie in a column here and one there to that row and column of a square array;
    /// with itself, to the diagonal.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void AddCounts(
        int firstRow, int count, ReadOnlySpan<double> weights, IndicatorColumns other, Span<double> gram, int stride)
    {
        for (int i = 0; i < count; i++)
        {
            int column = ColumnOf(firstRow + i), otherColumn = other.ColumnOf(firstRow + i);
            if (column >= 0 && otherColumn >= 0)
            {
                gram[column * stride + otherColumn] += weights[i];
            }
        }
    }
}
