namespace FlipAnalytics.Statistics;

/// <summary>
/// Cholesky factorisation A = LL' of small dense matrices held by rows in flat arrays, in place and without allocation;
/// Golub and Van Loan, Matrix Computations, section 4.2.
/// </summary>
internal static class RowMajorCholesky
{
    /// <summary>Replaces the lower triangle of A by L; false if A is not positive definite.</summary>
    public static bool TryFactor(Span<double> a, int n)
    {
        for (int i = 0; i < n; i++)
        {
            Span<double> row = a.Slice(i * n, i + 1);
            for (int j = 0; j < i; j++)
            {
                ReadOnlySpan<double> above = a.Slice(j * n, j + 1);
                row[j] = (row[j] - VectorKernel.Dot(row[..j], above[..j])) / above[j];
            }

            double pivot = row[i] - VectorKernel.Dot(row[..i], row[..i]);
            if (!(pivot > 0) || double.IsInfinity(pivot))
            {
                return false;
            }

            row[i] = Math.Sqrt(pivot);
        }

        return true;
    }

    /// <summary>log|A| = 2 Σ log Lᵢᵢ.</summary>
    public static double LogDeterminant(ReadOnlySpan<double> l, int n)
    {
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            sum += Math.Log(l[(i * n) + i]);
        }

        return 2 * sum;
    }

    /// <summary>b ← L⁻¹b.</summary>
    public static void SolveLower(ReadOnlySpan<double> l, int n, Span<double> b)
    {
        for (int i = 0; i < n; i++)
        {
            ReadOnlySpan<double> row = l.Slice(i * n, i + 1);
            b[i] = (b[i] - VectorKernel.Dot(row[..i], b[..i])) / row[i];
        }
    }

    /// <summary>b ← L⁻ᵀb.</summary>
    public static void SolveLowerTransposed(ReadOnlySpan<double> l, int n, Span<double> b)
    {
        for (int i = n - 1; i >= 0; i--)
        {
            ReadOnlySpan<double> row = l.Slice(i * n, i + 1);
            b[i] /= row[i];
            VectorKernel.AddScaled(b[..i], -b[i], row[..i]);
        }
    }

    /// <summary>B ← L⁻¹B for an n × m matrix held by rows.</summary>
    public static void SolveLowerRows(ReadOnlySpan<double> l, int n, Span<double> b, int m)
    {
        for (int i = 0; i < n; i++)
        {
            ReadOnlySpan<double> row = l.Slice(i * n, i + 1);
            Span<double> target = b.Slice(i * m, m);
            for (int j = 0; j < i; j++)
            {
                if (row[j] != 0)
                {
                    VectorKernel.AddScaled(target, -row[j], b.Slice(j * m, m));
                }
            }

            double scale = 1 / row[i];
            VectorKernel.Scale(target, scale);
        }
    }

    /// <summary>B ← L⁻ᵀB for an n × m matrix held by rows.</summary>
    public static void SolveLowerTransposedRows(ReadOnlySpan<double> l, int n, Span<double> b, int m)
    {
        for (int i = n - 1; i >= 0; i--)
        {
            ReadOnlySpan<double> row = l.Slice(i * n, i + 1);
            Span<double> source = b.Slice(i * m, m);
            double scale = 1 / row[i];
            VectorKernel.Scale(source, scale);

            for (int j = 0; j < i; j++)
            {
                VectorKernel.AddScaled(b.Slice(j * m, m), -row[j], source);
            }
        }
    }

    /// <summary>Writes L⁻¹ (lower, zeros above) into <paramref name="inverse"/>.</summary>
    public static void InvertLower(ReadOnlySpan<double> l, int n, Span<double> inverse)
    {
        inverse[..(n * n)].Clear();
        for (int i = 0; i < n; i++)
        {
            ReadOnlySpan<double> row = l.Slice(i * n, i + 1);
            Span<double> target = inverse.Slice(i * n, n);
            for (int j = 0; j < i; j++)
            {
                if (row[j] != 0)
                {
                    VectorKernel.AddScaled(target[..(j + 1)], -row[j], inverse.Slice(j * n, j + 1));
                }
            }

            double scale = 1 / row[i];
            VectorKernel.Scale(target[..i], scale);

            target[i] = scale;
        }
    }

    /// <summary>
    /// L⁻ᵀL⁻¹, both triangles, of the first <paramref name="n"/> rows of <paramref name="lowerInverse"/> = L⁻¹: the
    /// inverse of that part of LL'. Both matrices have rows of length <paramref name="stride"/>.
    /// </summary>
    public static void InverseFromLower(ReadOnlySpan<double> lowerInverse, int stride, int n, Span<double> inverse)
    {
        inverse[..(n * stride)].Clear();
        for (int k = 0; k < n; k++)
        {
            ReadOnlySpan<double> row = lowerInverse.Slice(k * stride, k + 1);
            for (int i = 0; i <= k; i++)
            {
                if (row[i] != 0)
                {
                    VectorKernel.AddScaled(inverse.Slice(i * stride, i + 1), row[i], row[..(i + 1)]);
                }
            }
        }

        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < i; j++)
            {
                inverse[(j * stride) + i] = inverse[(i * stride) + j];
            }
        }
    }

    /// <summary>Copies the lower triangle of an n × n matrix above the diagonal.</summary>
    public static void MirrorLower(Span<double> matrix, int n)
    {
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < i; j++)
            {
                matrix[(j * n) + i] = matrix[(i * n) + j];
            }
        }
    }
}
