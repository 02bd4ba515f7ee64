namespace FlipAnalytics.Statistics;

/// <summary>
/// The blocks' share of tr Tₖₖ and ‖Tⱼₖ‖² (<see cref="InformationSums"/>) where the blocks hold few levels: with U = VD the
/// rows of T are written out, E − UJU' between blocks and UJ with the border.
/// </summary>
internal sealed class WrittenRows(BorderedInverse inverse, double[] traces, double[] norms)
{
    private readonly BorderedProducts _products = inverse.Factor.Products;
    private readonly BorderedLayout _layout = inverse.Factor.Products.Layout;
    private readonly int _size = inverse.Factor.BorderSize;
    private readonly double[] _rows = new double[inverse.BlockSolution.Length * inverse.Factor.BorderSize];
    private readonly double[] _product = new double[inverse.Factor.BorderSize];
    private readonly double[] _entries = new double[inverse.BlockSolution.Length];

    /// <summary>Adds it; <paramref name="joint"/> is J.</summary>
    public void Add(double[] joint)
    {
        for (int c = 0; c < _layout.BlockCount; c++)
        {
            int first = _layout.BlockStarts[c];
            for (int a = first; a < _layout.BlockStarts[c + 1]; a++)
            {
                Write(c, a);
                ReadOnlySpan<double> row = _rows.AsSpan(a * _size, _size);
                for (int i = 0; i < _size; i++)
                {
                    _product[i] = VectorKernel.Dot(joint.AsSpan(i * _size, _size), row);
                }

                AddRow(c, a);
            }
        }
    }

    private void Write(int block, int a)
    {
        int width = _products.Width(block);
        ReadOnlySpan<int> touched = _products.Touched(block);
        ReadOnlySpan<double> source =
            inverse.Rows.AsSpan(_products.RowsOf(block)).Slice((a - _layout.BlockStarts[block]) * width, width - 1);
        Span<double> row = _rows.AsSpan(a * _size, _size);
        row.Clear();
        for (int x = 0; x < touched.Length; x++)
        {
            row[touched[x]] = source[x];
        }

        source[touched.Length..].CopyTo(row[_layout.BorderCount..]);
        _layout.ToDraws(row);
        for (int b = 0; b < _layout.BorderCount; b++)
        {
            row[b] *= inverse.Factor.BorderScales[b];
        }
    }

    private void AddRow(int block, int a)
    {
        int terms = traces.Length;
        int k = _layout.BlockTerms[a];
        for (int l = 0; l < terms; l++)
        {
            ReadOnlySpan<double> part = _product.AsSpan(_layout.BorderStarts[l].._layout.BorderStarts[l + 1]);
            double square = VectorKernel.Dot(part, part);
            norms[(k * terms) + l] += square;
            norms[(l * terms) + k] += square;
        }

        for (int b = 0; b <= a; b++)
        {
            _entries[b] = -VectorKernel.Dot(_product, _rows.AsSpan(b * _size, _size));
        }

        int first = _layout.BlockStarts[block];
        ReadOnlySpan<double> own = inverse.Blocks.AsSpan(_products.SquareOf(block)).Slice((a - first) * _products.Size(block));
        for (int b = first; b <= a; b++)
        {
            _entries[b] += (a == b ? 1 : 0) - own[b - first];
        }

        traces[k] += _entries[a];
        for (int b = 0; b <= a; b++)
        {
            int l = _layout.BlockTerms[b];
            double square = _entries[b] * _entries[b];
            norms[(k * terms) + l] += square;
            norms[(l * terms) + k] += a == b ? 0 : square;
        }
    }
}
