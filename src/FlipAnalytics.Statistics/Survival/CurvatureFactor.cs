using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Cholesky factor of the curvature K = [A B′; B C] by its blocks: A = L L′ block by block, W = L⁻¹ B′, and the border's rest
/// S = C − W′W (Schur's complement; Golub and Van Loan, Matrix Computations, section 3.2; for a linear mixed model Bates and
/// others, 2015, Journal of Statistical Software 67, section 3). log|K| = Σ log|A| + log|S|, and K x = r is solved by
/// y = L⁻¹ r, S x = r − W′y for the border and x = L⁻ᵀ(y − W x) for the blocks. Without blocks S is K.
/// </summary>
internal sealed class CurvatureFactor
{
    // What is left of a diagonal entry below this share of it is rounding, as for the border.
    private const double SmallestPivot = 1e-14;

    private readonly CurvatureLayout layout;
    private readonly int first;
    private readonly int count;
    private readonly ScaledCholesky rest;
    private readonly double[] blocks;
    private readonly double[] schur = [];
    private readonly double[] yardstick = [];
    private readonly double[] side;
    private double damped;

    /// <param name="layout">Where the entries lie.</param>
    /// <param name="first">The first row of the border to factor: 0, or the number of fixed columns to leave those out.</param>
    /// <param name="count">How many of its rows: to its end, or without log σ, the last.</param>
    internal CurvatureFactor(CurvatureLayout layout, int first, int count)
    {
        this.layout = layout;
        this.first = first;
        this.count = count;
        rest = new ScaledCholesky(count);
        side = new double[count];
        blocks = new double[layout.Length - Square(layout.BorderCount)];
        if (!layout.Blocks.IsEmpty)
        {
            schur = new double[Square(count)];
            yardstick = new double[count];
        }
    }

    /// <summary>Logarithm of the determinant of the matrix last factored.</summary>
    internal double LogDeterminant { get; private set; }

    /// <summary>The parameter at which the last factorisation failed: those before it reproduce it, or worse.</summary>
    internal int FailedParameter { get; private set; }

    /// <summary>Factors K + damping · diag|K|; false if that is not positive definite.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal bool TryFactor(double[] information, double damping)
    {
        damped = damping;
        LogDeterminant = 0;
        int stride = layout.BorderCount;
        ReadOnlySpan<double> border = information.AsSpan(first * (stride + 1));
        if (!layout.Blocks.IsEmpty)
        {
            CopyBorder(border, stride, damping);
            foreach (CurvatureBlock block in layout.Blocks)
            {
                if (!TryFactor(block, information, damping))
                    return false;
            }

            border = schur;
            stride = count;
            damping = 0;
        }

        if (!rest.TryFactor(border, stride, damping, yardstick))
        {
            FailedParameter = layout.BorderParameters[first + rest.FailedRow];
            return false;
        }

        LogDeterminant += rest.LogDeterminant;
        return true;
    }

    /// <summary>What each fixed column adds to those before it, all else held: its pivot in K, where those columns come
    /// first. Zero from where they reproduce one.</summary>
    internal double[] PivotsOfFixedColumns(double[] information, int coefficientCount)
    {
        var factor = new ScaledCholesky(coefficientCount);
        bool whole = factor.TryFactor(information, layout.BorderCount, damped);
        return [.. Enumerable.Range(0, coefficientCount).Select(j => whole || j < factor.FailedRow ? factor.Pivot(j) : 0)];
    }

    /// <summary>What the last row of the border, log σ, adds to all before it.</summary>
    internal double LastPivot => rest.Pivot(count - 1);

    /// <summary>Solves K x = r in place, by parameter; the border must be whole but for log σ.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Solve(Span<double> r)
    {
        if (layout.Blocks.IsEmpty)
        {
            rest.Solve(r);
            return;
        }

        for (int i = 0; i < count; i++)
            side[i] = r[layout.BorderParameters[i]];
        foreach (CurvatureBlock block in layout.Blocks)
            SolveForward(block, r);
        rest.Solve(side);
        foreach (CurvatureBlock block in layout.Blocks)
            SolveBackward(block, r);
        for (int i = 0; i < count; i++)
            r[layout.BorderParameters[i]] = side[i];
    }

    /// <summary>The inverse, taken apart in the same way.</summary>
    internal CurvatureInverse Inverse() => new(layout, rest.Inverse(), blocks);

    private static int Square(int n) => n * n;

    private void CopyBorder(ReadOnlySpan<double> border, int stride, double damping)
    {
        for (int i = 0; i < count; i++)
        {
            border.Slice(i * stride, i + 1).CopyTo(schur.AsSpan(i * count));
            yardstick[i] = Math.Abs(schur[i * count + i]);
            schur[i * count + i] += damping * yardstick[i];
        }
    }

    private (int From, int To) Used(CurvatureBlock block) =>
        (first, first + count < layout.BorderCount ? block.TouchedCount - 1 : block.TouchedCount);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool TryFactor(CurvatureBlock block, double[] information, double damping)
    {
        int size = block.Size, border = Square(layout.BorderCount);
        Span<double> lower = blocks.AsSpan(block.Own - border, size * size);
        ReadOnlySpan<double> own = information.AsSpan(block.Own, size * size);
        for (int i = 0; i < size; i++)
        {
            Span<double> row = lower.Slice(i * size, size);
            double left = own[i * size + i] + damping * Math.Abs(own[i * size + i]);
            for (int j = 0; j < i; j++)
            {
                double entry = own[i * size + j];
                for (int k = 0; k < j; k++)
                    entry -= row[k] * lower[j * size + k];
                row[j] = entry / lower[j * size + j];
                left -= row[j] * row[j];
            }

            if (!(left > SmallestPivot * Math.Abs(own[i * size + i])) || !double.IsFinite(left))
            {
                FailedParameter = layout.Members(block)[i];
                return false;
            }

            row[i] = Math.Sqrt(left);
            LogDeterminant += Math.Log(left);
            Span<double> beside = blocks.AsSpan(block.Beside - border + i * block.TouchedCount, block.TouchedCount);
            information.AsSpan(block.Beside + i * block.TouchedCount, block.TouchedCount).CopyTo(beside);
            for (int k = 0; k < i; k++)
            {
                VectorKernel.AddScaled(
                    beside, -row[k], blocks.AsSpan(block.Beside - border + k * block.TouchedCount, block.TouchedCount));
            }

            foreach (ref double entry in beside)
                entry /= row[i];
            TakeFromBorder(block, beside);
        }

        return true;
    }

    // S −= w w′ for a row w of W. The fixed columns are the first places, one after another.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void TakeFromBorder(CurvatureBlock block, ReadOnlySpan<double> w)
    {
        ReadOnlySpan<int> touched = layout.Touched(block);
        (int from, int to) = Used(block);
        int together = from;
        while (together < to && touched[together] == together)
            together++;
        for (int r = from; r < to; r++)
        {
            Span<double> sums = schur.AsSpan((touched[r] - first) * count, count);
            int near = Math.Min(r + 1, together) - from;
            VectorKernel.AddScaled(sums[..near], -w[r], w.Slice(from, near));
            for (int s = together; s <= r; s++)
                sums[touched[s] - first] -= w[r] * w[s];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void SolveForward(CurvatureBlock block, Span<double> r)
    {
        int size = block.Size, border = Square(layout.BorderCount);
        ReadOnlySpan<int> members = layout.Members(block), touched = layout.Touched(block);
        ReadOnlySpan<double> lower = blocks.AsSpan(block.Own - border, size * size);
        (_, int to) = Used(block);
        for (int i = 0; i < size; i++)
        {
            double y = r[members[i]];
            for (int k = 0; k < i; k++)
                y -= lower[i * size + k] * r[members[k]];
            y /= lower[i * size + i];
            r[members[i]] = y;
            ReadOnlySpan<double> w = blocks.AsSpan(block.Beside - border + i * block.TouchedCount, to);
            for (int s = 0; s < w.Length; s++)
                side[touched[s]] -= w[s] * y;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void SolveBackward(CurvatureBlock block, Span<double> r)
    {
        int size = block.Size, border = Square(layout.BorderCount);
        ReadOnlySpan<int> members = layout.Members(block), touched = layout.Touched(block);
        ReadOnlySpan<double> lower = blocks.AsSpan(block.Own - border, size * size);
        (_, int to) = Used(block);
        for (int i = size - 1; i >= 0; i--)
        {
            double x = r[members[i]];
            ReadOnlySpan<double> w = blocks.AsSpan(block.Beside - border + i * block.TouchedCount, to);
            for (int s = 0; s < w.Length; s++)
                x -= w[s] * side[touched[s]];
            for (int k = i + 1; k < size; k++)
                x -= lower[k * size + i] * r[members[k]];
            r[members[i]] = x / lower[i * size + i];
        }
    }
}
