namespace FlipAnalytics.Statistics;

/// <summary>
/// The inverse of Henderson's matrix from its <see cref="BorderedFactor"/>, never written out: with V = A⁻¹B for the
/// blocks and J = S⁻¹ for the border's draws and fixed columns, D from them to levels and columns,
/// <code>blocks: A⁻¹ + V DJD' V',  blocks with border: −V DJ,  border: J.</code>
/// </summary>
internal sealed class BorderedInverse(BorderedFactor factor)
{
    private readonly BorderedProducts _products = factor.Products;
    private readonly double[] _lowerInverse = new double[factor.Border.Length];
    private double[] _blockLowerInverse = [];

    public BorderedFactor Factor => factor;

    /// <summary>A⁻¹ of each block, both triangles.</summary>
    public double[] Blocks { get; } = new double[factor.Lower.Length];

    /// <summary>V of each block, by levels of the border; last comes A⁻¹ΛZ'e.</summary>
    public double[] Rows { get; } = new double[factor.Reduced.Length];

    /// <summary>J, both triangles.</summary>
    public double[] Joint { get; } = new double[factor.Border.Length];

    /// <summary>The border's draws and the coefficients less the least-squares ones: J times the response's part of S.</summary>
    public double[] BorderSolution { get; } = new double[factor.Response.Length];

    /// <summary>The same by levels of the border.</summary>
    public double[] BorderEffects { get; } = new double[factor.Response.Length];

    /// <summary>t = ΛZ'Py of the blocks' levels.</summary>
    public double[] BlockSolution { get; } = new double[factor.BlockScales.Length];

    /// <summary>Takes the inverse at the factor's last evaluation.</summary>
    public void Update()
    {
        int k = factor.BorderSize;
        RowMajorCholesky.InvertLower(factor.Border, k, _lowerInverse);
        RowMajorCholesky.InverseFromLower(_lowerInverse, k, k, Joint);
        factor.Response.CopyTo(BorderSolution, 0);
        RowMajorCholesky.SolveLowerTransposed(factor.Border, k, BorderSolution);
        for (int i = 0; i < k; i++)
        {
            BorderEffects[i] = factor.BorderScales[i] * BorderSolution[i];
        }

        _products.Layout.ToLevels(BorderEffects);
        factor.Reduced.CopyTo(Rows, 0);
        for (int c = 0; c < _products.Layout.BlockCount; c++)
        {
            UpdateBlock(c);
        }
    }

    /// <summary>J as if the coefficients were known: (I + ΛZ'ZΛ)⁻¹ for the border's draws, 0 for the fixed columns.</summary>
    public double[] WithKnownCoefficients()
    {
        double[] inverse = new double[Joint.Length];
        RowMajorCholesky.InverseFromLower(_lowerInverse, factor.BorderSize, _products.Layout.BorderCount, inverse);
        return inverse;
    }

    /// <summary>DJ: rows by levels of the border and fixed columns, columns by draws and fixed columns.</summary>
    public void HalfByLevels(ReadOnlySpan<double> joint, Span<double> half)
    {
        int k = factor.BorderSize;
        for (int i = 0; i < k; i++)
        {
            double scale = factor.BorderScales[i];
            for (int x = i * k; x < (i + 1) * k; x++)
            {
                half[x] = scale * joint[x];
            }
        }

        _products.Layout.ToLevels(half, k);
    }

    /// <summary>DJD' from DJ: all by levels of the border and fixed columns.</summary>
    public void ByLevels(ReadOnlySpan<double> half, Span<double> whole)
    {
        int k = factor.BorderSize;
        for (int i = 0; i < k; i++)
        {
            Span<double> row = whole.Slice(i * k, k);
            for (int j = 0; j < k; j++)
            {
                row[j] = half[(i * k) + j] * factor.BorderScales[j];
            }

            _products.Layout.ToLevels(row);
        }
    }

    private void UpdateBlock(int block)
    {
        int size = _products.Size(block);
        int width = _products.Width(block);
        int squared = size * size;
        if (_blockLowerInverse.Length < squared)
        {
            _blockLowerInverse = new double[squared];
        }

        Span<double> lowerInverse = _blockLowerInverse.AsSpan(0, squared);
        ReadOnlySpan<double> lower = factor.Lower.AsSpan(_products.SquareOf(block));
        RowMajorCholesky.InvertLower(lower, size, lowerInverse);
        RowMajorCholesky.InverseFromLower(lowerInverse, size, size, Blocks.AsSpan(_products.SquareOf(block)));
        Span<double> rows = Rows.AsSpan(_products.RowsOf(block));
        RowMajorCholesky.SolveLowerTransposedRows(lower, size, rows, width);
        for (int a = 0; a < size; a++)
        {
            Span<double> row = rows.Slice(a * width, width);
            BlockSolution[_products.Layout.BlockStarts[block] + a] =
                row[^1] - Times(row[..^1], _products.Touched(block), BorderEffects);
        }
    }

    /// <summary>v'm for a row over the border levels touched and the fixed columns.</summary>
    public double Times(ReadOnlySpan<double> row, ReadOnlySpan<int> touched, ReadOnlySpan<double> vector)
    {
        if (touched.Length == _products.Layout.BorderCount)
        {
            return VectorKernel.Dot(row, vector);
        }

        double sum = VectorKernel.Dot(row[touched.Length..], vector[_products.Layout.BorderCount..]);
        for (int x = 0; x < touched.Length; x++)
        {
            sum += row[x] * vector[touched[x]];
        }

        return sum;
    }
}
