namespace FlipAnalytics.Statistics;

/// <summary>
/// The slope of the profiled deviance where a ratio is zero. With z a draw's column of Z,
/// <code>∂d/∂γₖ = Σ z'Pz − (z'Py)²/σ²</code>
/// over the term's draws (z'W⁻¹z in the trace for the ordinary likelihood). z'(Z, X, e) is absorbed like a row of
/// Henderson's matrix: what blocks, border and fixed columns explain of it is subtracted.
/// </summary>
internal sealed class BoundarySlope(ProfiledDeviance deviance)
{
    private readonly BorderedFactor _factor = deviance.Factor;
    private readonly BorderedProducts _products = deviance.Factor.Products;
    private readonly BorderedLayout _layout = deviance.Factor.Products.Layout;
    private readonly double[] _row = new double[deviance.Factor.Products.BorderWidth];
    private double _trace;
    private double _square;

    /// <summary>The slope at the deviance's last evaluation relative to the size of its two parts: below 0 the term wants in.</summary>
    public double Of(int term)
    {
        (_trace, _square) = (0, 0);
        for (int c = 0; _layout.HasBlocks[term] && c < _layout.BlockCount; c++)
        {
            for (int a = 0; a < _products.Size(c); a++)
            {
                if (_layout.BlockTerms[_layout.BlockStarts[c] + a] == term)
                {
                    AddOfBlock(c, a);
                }
            }
        }

        int n = _products.BorderWidth;
        for (int b = 0; b < _layout.BorderCount; b++)
        {
            if (_layout.BorderTerms[b] == term)
            {
                _factor.Remainder.AsSpan(b * n, n).CopyTo(_row);
                Add(_factor.Remainder[(b * n) + b]);
            }
        }

        double gain = _square / deviance.ResidualVariance;
        return _trace + gain > 0 ? (_trace - gain) / (_trace + gain) : 0;
    }

    private void AddOfBlock(int block, int a)
    {
        int size = _products.Size(block);
        int width = _products.Width(block);
        int first = _layout.BlockStarts[block];
        double[] met = _products.Squares.AsSpan(_products.SquareOf(block)).Slice(a * size, size).ToArray();
        double own = met[a];
        for (int b = 0; b < size; b++)
        {
            met[b] *= _factor.BlockScales[first + b];
        }

        RowMajorCholesky.SolveLower(_factor.Lower.AsSpan(_products.SquareOf(block)), size, met);
        double[] row = _products.Rows.AsSpan(_products.RowsOf(block)).Slice(a * width, width).ToArray();
        for (int b = 0; b < size; b++)
        {
            VectorKernel.AddScaled(row, -met[b], _factor.Reduced.AsSpan(_products.RowsOf(block)).Slice(b * width, width));
        }

        ReadOnlySpan<int> touched = _products.Touched(block);
        Array.Clear(_row);
        for (int x = 0; x < touched.Length; x++)
        {
            _row[touched[x]] = row[x];
        }

        row.AsSpan(touched.Length).CopyTo(_row.AsSpan(_layout.BorderCount));
        _layout.ToDraws(_row);
        Add(own - VectorKernel.Dot(met, met));
    }

    /// <summary>Adds a draw of which the blocks leave <paramref name="own"/> of z'z and, in the row, of z'(Z, X, e).</summary>
    private void Add(double own)
    {
        int k = _factor.BorderSize;
        Span<double> row = _row.AsSpan(0, k);
        for (int i = 0; i < k; i++)
        {
            row[i] *= _factor.BorderScales[i];
        }

        RowMajorCholesky.SolveLower(_factor.Border, k, row);
        Span<double> counted = deviance.Restricted ? row : row[.._layout.BorderCount];
        _trace += own - VectorKernel.Dot(counted, counted);
        double response = _row[k] - VectorKernel.Dot(row, _factor.Response);
        _square += response * response;
    }
}
