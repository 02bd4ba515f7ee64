namespace FlipAnalytics.Statistics;

/// <summary>
/// The Cholesky factor of Henderson's matrix [I + ΛZ'ZΛ, ΛZ'X; X'ZΛ, X'X] in the order blocks, border, fixed columns. With
/// A = LL' of a block and B its rows of Λ(Z'Z, Z'X, Z'e) against the border, columns and response,
/// <code>R = L⁻¹B,  S = (border's own) − Σ R'R,  S = FF'</code>
/// where the sum runs over the blocks: absorption of equations (Henderson 1975, Biometrics 31, 423–447), block Cholesky in
/// Golub and Van Loan, Matrix Computations, section 4.2. Only S is a large dense matrix.
/// </summary>
internal sealed class BorderedFactor(BorderedProducts products)
{
    private readonly BorderedLayout _layout = products.Layout;

    public BorderedProducts Products => products;

    /// <summary>Border draws and fixed columns.</summary>
    public int BorderSize { get; } = products.BorderWidth - 1;

    /// <summary>√γ of each of the blocks' levels.</summary>
    public double[] BlockScales { get; } = new double[products.Layout.BlockLevels.Length];

    /// <summary>√γ of each of the border's draws, then 1 for each fixed column.</summary>
    public double[] BorderScales { get; } = new double[products.BorderWidth - 1];

    /// <summary>L of each block.</summary>
    public double[] Lower { get; } = new double[products.Squares.Length];

    /// <summary>R of each block.</summary>
    public double[] Reduced { get; } = new double[products.Rows.Length];

    /// <summary>
    /// S before the border's draws are scaled and 1 added: by draws, fixed columns and the response, all of it.
    /// </summary>
    public double[] Remainder { get; } = new double[products.Border.Length];

    /// <summary>F for the border's draws and the fixed columns, lower triangle.</summary>
    public double[] Border { get; } = new double[(products.BorderWidth - 1) * (products.BorderWidth - 1)];

    /// <summary>F⁻¹ times the response's part of S.</summary>
    public double[] Response { get; } = new double[products.BorderWidth - 1];

    /// <summary>y'Py.</summary>
    public double QuadraticForm { get; private set; }

    /// <summary>log|I + ΛZ'ZΛ|.</summary>
    public double LogDeterminant { get; private set; }

    /// <summary>log|X'W⁻¹X| for the orthonormal columns.</summary>
    public double FixedLogDeterminant { get; private set; }

    /// <summary>Factors the matrix at the given √γ of the terms; false if it is not positive definite.</summary>
    public bool TryFactor(ReadOnlySpan<double> scales)
    {
        for (int a = 0; a < BlockScales.Length; a++)
        {
            BlockScales[a] = scales[_layout.BlockTerms[a]];
        }

        Array.Fill(BorderScales, 1);
        for (int b = 0; b < _layout.BorderCount; b++)
        {
            BorderScales[b] = scales[_layout.BorderTerms[b]];
        }

        products.Border.CopyTo(Remainder, 0);
        double logDeterminant = 0;
        for (int c = 0; c < _layout.BlockCount; c++)
        {
            if (!TryFactorBlock(c))
            {
                return false;
            }

            logDeterminant += RowMajorCholesky.LogDeterminant(Lower.AsSpan(products.SquareOf(c)), products.Size(c));
        }

        RemainderByDraws();
        if (!TryFactorBorder())
        {
            return false;
        }

        (double border, double columns) = (0, 0);
        for (int i = 0; i < BorderSize; i++)
        {
            double log = 2 * Math.Log(Border[(i * BorderSize) + i]);
            (border, columns) = i < _layout.BorderCount ? (border + log, columns) : (border, columns + log);
        }

        (LogDeterminant, FixedLogDeterminant) = (logDeterminant + border, columns);
        return true;
    }

    private bool TryFactorBlock(int block)
    {
        int size = products.Size(block);
        int width = products.Width(block);
        Span<double> lower = Lower.AsSpan(products.SquareOf(block));
        Span<double> rows = Reduced.AsSpan(products.RowsOf(block));
        ReadOnlySpan<double> square = products.Squares.AsSpan(products.SquareOf(block));
        ReadOnlySpan<double> source = products.Rows.AsSpan(products.RowsOf(block));
        ReadOnlySpan<double> scales = BlockScales.AsSpan(_layout.BlockStarts[block], size);
        for (int a = 0; a < size; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                lower[(a * size) + b] = scales[a] * scales[b] * square[(a * size) + b];
            }

            lower[(a * size) + a] += 1;
            for (int x = a * width; x < (a + 1) * width; x++)
            {
                rows[x] = scales[a] * source[x];
            }
        }

        if (!RowMajorCholesky.TryFactor(lower, size))
        {
            return false;
        }

        RowMajorCholesky.SolveLowerRows(lower, size, rows, width);
        int border = _layout.BorderCount;
        for (int a = 0; a < size; a++)
        {
            AddOuter(Remainder, products.BorderWidth, border, products.Touched(block), rows.Slice(a * width, width), -1);
        }

        return true;
    }

    /// <summary>
    /// Adds factor · vv' to the lower triangle of a matrix over border, columns and so on; <paramref name="row"/> holds v's
    /// entries for the border levels touched, and then all that follows the border.
    /// </summary>
    public static void AddOuter(
        Span<double> target, int stride, int border, ReadOnlySpan<int> touched, ReadOnlySpan<double> row, double factor)
    {
        if (touched.Length == border)
        {
            for (int x = 0; x < row.Length; x++)
            {
                if (row[x] != 0)
                {
                    VectorKernel.AddScaled(target.Slice(x * stride, x + 1), factor * row[x], row[..(x + 1)]);
                }
            }

            return;
        }

        ReadOnlySpan<double> rest = row[touched.Length..];
        for (int x = 0; x < touched.Length; x++)
        {
            double value = factor * row[x];
            Span<double> sums = target.Slice(touched[x] * stride, touched[x] + 1);
            for (int y = 0; y <= x; y++)
            {
                sums[touched[y]] += value * row[y];
            }
        }

        for (int x = 0; x < rest.Length; x++)
        {
            double value = factor * rest[x];
            Span<double> sums = target.Slice((border + x) * stride, border + x + 1);
            for (int y = 0; y < touched.Length; y++)
            {
                sums[touched[y]] += value * row[y];
            }

            VectorKernel.AddScaled(sums[border..], value, rest[..(x + 1)]);
        }
    }

    private void RemainderByDraws()
    {
        int n = products.BorderWidth;
        RowMajorCholesky.MirrorLower(Remainder, n);
        if (_layout.Walks.Length == 0)
        {
            return;
        }

        _layout.ToDraws(Remainder, n);
        for (int i = 0; i < n; i++)
        {
            _layout.ToDraws(Remainder.AsSpan(i * n, n));
        }
    }

    private bool TryFactorBorder()
    {
        int n = products.BorderWidth;
        int k = BorderSize;
        for (int i = 0; i < k; i++)
        {
            Span<double> row = Border.AsSpan(i * k, i + 1);
            ReadOnlySpan<double> source = Remainder.AsSpan(i * n, i + 1);
            for (int j = 0; j <= i; j++)
            {
                row[j] = BorderScales[i] * BorderScales[j] * source[j];
            }

            row[i] += i < _layout.BorderCount ? 1 : 0;
            Response[i] = BorderScales[i] * Remainder[(k * n) + i];
        }

        if (!RowMajorCholesky.TryFactor(Border, k))
        {
            return false;
        }

        RowMajorCholesky.SolveLower(Border, k, Response);
        QuadraticForm = Remainder[^1] - VectorKernel.Dot(Response, Response);
        return true;
    }
}
