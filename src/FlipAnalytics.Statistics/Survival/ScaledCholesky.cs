using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FlipAnalytics.Statistics;

/// <summary>Cholesky factor of a symmetric matrix after scaling its diagonal to one, so that neither the outcome nor
/// the tolerance depends on the units of its rows. Written here because a failed factorisation is an ordinary event in
/// a Newton iteration and must neither throw nor allocate.</summary>
internal sealed class ScaledCholesky(int size)
{
    // Rows are padded to whole vectors so that dot products need no tail.
    private readonly int stride = (size + 3) / 4 * 4;
    private readonly double[] factor = new double[size * ((size + 3) / 4 * 4)];
    private readonly double[] scale = new double[size];

    /// <summary>Logarithm of the determinant of the matrix last factored.</summary>
    internal double LogDeterminant { get; private set; }

    /// <summary>The row at which the last factorisation failed: those before it reproduce it, or worse.</summary>
    internal int FailedRow { get; private set; }

    /// <summary>Factors A + damping · diag|A| given the lower triangle of A; false if that is not positive definite.</summary>
    /// <param name="matrix">A.</param>
    /// <param name="matrixStride">Length of its rows.</param>
    /// <param name="damping">Share of its diagonal to add.</param>
    /// <param name="yardstick">What pivots are held against; the diagonal of A where it is empty. What is left of a matrix
    /// after an elimination is held against the matrix.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal bool TryFactor(
        ReadOnlySpan<double> matrix, int matrixStride, double damping, ReadOnlySpan<double> yardstick = default)
    {
        LogDeterminant = 0;
        for (int i = 0; i < size; i++)
        {
            double diagonal = Math.Abs(yardstick.IsEmpty ? matrix[i * matrixStride + i] : yardstick[i]);
            if (!double.IsFinite(diagonal))
            {
                FailedRow = i;
                return false;
            }

            scale[i] = diagonal == 0 ? 1 : 1 / Math.Sqrt(diagonal);
        }

        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double entry = matrix[i * matrixStride + j] * scale[i] * scale[j] - Dot(i, j, j);
                factor[i * stride + j] = entry / factor[j * stride + j];
            }

            double diagonal = matrix[i * matrixStride + i];
            double pivot = (yardstick.IsEmpty ? Math.Sign(diagonal) : diagonal * scale[i] * scale[i]) + damping - Dot(i, i, i);
            if (!(pivot > 1e-14))
            {
                FailedRow = i;
                return false;
            }

            factor[i * stride + i] = Math.Sqrt(pivot);
            LogDeterminant += Math.Log(pivot) - 2 * Math.Log(scale[i]);
        }

        return true;
    }

    /// <summary>The squared diagonal entry of the unscaled factor: what row i adds to those before it.</summary>
    internal double Pivot(int i) => Math.Pow(factor[i * stride + i] / scale[i], 2);

    /// <summary>Solves A x = b in place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Solve(Span<double> b)
    {
        for (int i = 0; i < size; i++)
        {
            double sum = b[i] * scale[i];
            for (int k = 0; k < i; k++)
            {
                sum -= factor[i * stride + k] * b[k];
            }

            b[i] = sum / factor[i * stride + i];
        }

        for (int i = size - 1; i >= 0; i--)
        {
            double solved = b[i] / factor[i * stride + i];
            for (int k = 0; k < i; k++)
            {
                b[k] -= factor[i * stride + k] * solved;
            }

            b[i] = solved * scale[i];
        }
    }

    /// <summary>The whole inverse, row by row.</summary>
    internal double[][] Inverse()
    {
        var inverse = new double[size][];
        for (int i = 0; i < size; i++)
        {
            inverse[i] = new double[size];
            inverse[i][i] = 1;
            Solve(inverse[i]);
        }

        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < i; j++)
            {
                inverse[i][j] = inverse[j][i] = (inverse[i][j] + inverse[j][i]) / 2;
            }
        }

        return inverse;
    }

    private double Dot(int rowA, int rowB, int length)
    {
        ref double a = ref MemoryMarshal.GetArrayDataReference(factor);
        nuint at = (nuint)(rowA * stride), bt = (nuint)(rowB * stride);
        Vector256<double> sum = default;
        int k = 0;
        for (; k + 4 <= length; k += 4)
        {
            sum += Vector256.LoadUnsafe(ref a, at + (nuint)k) * Vector256.LoadUnsafe(ref a, bt + (nuint)k);
        }

        double total = Vector256.Sum(sum);
        for (; k < length; k++)
        {
            total += factor[rowA * stride + k] * factor[rowB * stride + k];
        }

        return total;
    }
}
