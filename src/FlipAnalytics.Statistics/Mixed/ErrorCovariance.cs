namespace FlipAnalytics.Statistics;

/// <summary>
/// C⁻¹, the covariance over σ² of the errors in level effects and orthonormal fixed columns' coefficients. With
/// V = ΛA⁻¹ΛZ'(border, X) for the blocks' levels and M what the border's levels and the columns have of it,
/// <code>C⁻¹ = [ΛA⁻¹Λ + VMV', −VM; −MV', M],</code>
/// of which only M and −VM are kept, as wide as the border; entries between blocks are made when asked for.
/// </summary>
internal sealed class ErrorCovariance
{
    private readonly BorderedProducts _products;
    private readonly BorderedLayout _layout;
    private readonly BorderedInverse _inverse;
    private readonly int _levelCount;
    private readonly int _size;
    private readonly double[] _scales;
    private readonly double[] _border;
    private readonly double[] _nothing;
    private readonly Lazy<double[]> _mixed;
    private readonly Lazy<double[]> _ownVariances;

    public ErrorCovariance(BorderedInverse inverse, int levelCount)
    {
        _inverse = inverse;
        _products = inverse.Factor.Products;
        _layout = _products.Layout;
        _levelCount = levelCount;
        _size = inverse.Factor.BorderSize;
        _scales = inverse.Factor.BlockScales;
        _border = ByLevels(inverse.Joint);
        _nothing = new double[_size];
        _mixed = new(BlocksWithBorder);
        _ownVariances = new(OwnVariances);
    }

    /// <summary>C⁻¹ of the fixed columns: (X'W⁻¹X)⁻¹.</summary>
    public double[] OfFixedColumns()
    {
        int p = _products.FixedCount;
        double[] part = new double[p * p];
        for (int c = 0; c < p; c++)
        {
            BorderRow(_layout.BorderCount + c)[_layout.BorderCount..].CopyTo(part.AsSpan(c * p));
        }

        return part;
    }

    /// <summary>Var(û − u)/σ² of every level: as if the coefficients were known, and as they are.</summary>
    public (double[] Conditional, double[] Joint) OfLevels()
    {
        double[] known = ByLevels(_inverse.WithKnownCoefficients());
        double[] conditional = new double[_levelCount];
        double[] joint = new double[_levelCount];
        for (int b = 0; b < _layout.BorderCount; b++)
        {
            conditional[_layout.BorderLevels[b]] = known[b * (_size + 1)];
            joint[_layout.BorderLevels[b]] = _border[b * (_size + 1)];
        }

        for (int c = 0; c < _layout.BlockCount; c++)
        {
            ReadOnlySpan<int> touched = _products.Touched(c);
            for (int a = _layout.BlockStarts[c]; a < _layout.BlockStarts[c + 1]; a++)
            {
                int level = _layout.BlockLevels[a];
                ReadOnlySpan<double> row = BlockRow(c, a);
                double sum = 0;
                for (int x = 0; x < touched.Length; x++)
                {
                    sum += row[x] * _inverse.Times(row, touched, known.AsSpan(touched[x] * _size, _size));
                }

                conditional[level] = OfBlock(c, a, a) + (_scales[a] * _scales[a] * sum);
                joint[level] = _ownVariances.Value[a];
            }
        }

        return (conditional, joint);
    }

    /// <summary>v'C⁻¹w.</summary>
    public double Form(SparseRow v, SparseRow w)
    {
        double sum = 0;
        int border = _layout.BorderCount;
        for (int x = 0; x < v.Count; x++)
        {
            ReadOnlySpan<double> row = RowOf(v.Level(x));
            double entry = VectorKernel.Dot(w.Fixed, row[border..]);
            for (int y = 0; y < w.Count; y++)
            {
                entry += w.Factor(y) * Between(v.Level(x), row, w.Level(y));
            }

            sum += v.Factor(x) * entry;
        }

        for (int y = 0; y < w.Count; y++)
        {
            sum += w.Factor(y) * VectorKernel.Dot(v.Fixed, RowOf(w.Level(y))[border..]);
        }

        for (int c = 0; c < v.Fixed.Length; c++)
        {
            sum += v.Fixed[c] * VectorKernel.Dot(w.Fixed, BorderRow(border + c)[border..]);
        }

        return sum;
    }

    /// <summary>C⁻¹v: levels, and fixed columns.</summary>
    public (double[] Levels, double[] Fixed) Spread(SparseRow v)
    {
        double[] levels = new double[_levelCount];
        double[] border = new double[_size];
        for (int c = 0; c < v.Fixed.Length; c++)
        {
            VectorKernel.AddScaled(border, v.Fixed[c], BorderRow(_layout.BorderCount + c));
        }

        for (int x = 0; x < v.Count; x++)
        {
            if (_layout.InBlocks(v.Level(x), out int a))
            {
                VectorKernel.AddScaled(border, v.Factor(x), MixedRow(a));
                int c = BlockOf(a);
                for (int b = _layout.BlockStarts[c]; b < _layout.BlockStarts[c + 1]; b++)
                {
                    levels[_layout.BlockLevels[b]] += v.Factor(x) * OfBlock(c, a, b);
                }
            }
            else if (_layout.InBorder(v.Level(x), out int i))
            {
                VectorKernel.AddScaled(border, v.Factor(x), BorderRow(i));
            }
        }

        for (int b = 0; b < _layout.BorderCount; b++)
        {
            levels[_layout.BorderLevels[b]] = border[b];
        }

        for (int c = 0; c < _layout.BlockCount; c++)
        {
            for (int a = _layout.BlockStarts[c]; a < _layout.BlockStarts[c + 1]; a++)
            {
                levels[_layout.BlockLevels[a]] -=
                    _scales[a] * _inverse.Times(BlockRow(c, a), _products.Touched(c), border);
            }
        }

        return (levels, border[_layout.BorderCount..]);
    }

    private ReadOnlySpan<double> BorderRow(int i) => _border.AsSpan(i * _size, _size);

    private ReadOnlySpan<double> MixedRow(int a) => _mixed.Value.AsSpan(a * _size, _size);

    /// <summary>A⁻¹ΛZ'(border, X) of a block's level, for what the block meets of the border.</summary>
    private ReadOnlySpan<double> BlockRow(int block, int a)
    {
        int width = _products.Width(block);
        return _inverse.Rows.AsSpan(_products.RowsOf(block)).Slice((a - _layout.BlockStarts[block]) * width, width - 1);
    }

    private int BlockOf(int a)
    {
        int found = Array.BinarySearch(_layout.BlockStarts, a);
        return found >= 0 ? found : ~found - 1;
    }

    /// <summary>ΛA⁻¹Λ of two levels of a block.</summary>
    private double OfBlock(int block, int a, int b)
    {
        int first = _layout.BlockStarts[block];
        return _scales[a] * _scales[b]
            * _inverse.Blocks.AsSpan(_products.SquareOf(block))[((a - first) * _products.Size(block)) + b - first];
    }

    private double BetweenBlocks(int block, int a, int otherBlock, int b) =>
        (block == otherBlock ? OfBlock(block, a, b) : 0)
        - (_scales[a] * _inverse.Times(BlockRow(block, a), _products.Touched(block), MixedRow(b)));

    /// <summary>What border and fixed columns have of a level's row of C⁻¹; zeros for a walk's first period.</summary>
    private ReadOnlySpan<double> RowOf(int level) =>
        _layout.InBlocks(level, out int a) ? MixedRow(a) : _layout.InBorder(level, out int i) ? BorderRow(i) : _nothing;

    /// <summary>An entry of C⁻¹; <paramref name="row"/> is that of the one level.</summary>
    private double Between(int level, ReadOnlySpan<double> row, int other)
    {
        if (_layout.InBorder(other, out int i))
        {
            return row[i];
        }

        if (!_layout.InBlocks(other, out int b))
        {
            return 0;
        }

        if (_layout.InBorder(level, out i))
        {
            return MixedRow(b)[i];
        }

        return !_layout.InBlocks(level, out int a) ? 0
            : a == b ? _ownVariances.Value[a]
            : BetweenBlocks(BlockOf(a), a, BlockOf(b), b);
    }

    private double[] OwnVariances()
    {
        double[] own = new double[_scales.Length];
        for (int c = 0; c < _layout.BlockCount; c++)
        {
            for (int a = _layout.BlockStarts[c]; a < _layout.BlockStarts[c + 1]; a++)
            {
                own[a] = BetweenBlocks(c, a, c, a);
            }
        }

        return own;
    }

    private double[] ByLevels(double[] joint)
    {
        double[] half = new double[joint.Length];
        double[] whole = new double[joint.Length];
        _inverse.HalfByLevels(joint, half);
        _inverse.ByLevels(half, whole);
        return whole;
    }

    private double[] BlocksWithBorder()
    {
        double[] mixed = new double[_scales.Length * _size];
        for (int c = 0; c < _layout.BlockCount; c++)
        {
            ReadOnlySpan<int> touched = _products.Touched(c);
            for (int a = _layout.BlockStarts[c]; a < _layout.BlockStarts[c + 1]; a++)
            {
                Span<double> target = mixed.AsSpan(a * _size, _size);
                ReadOnlySpan<double> row = BlockRow(c, a);
                for (int x = 0; x < row.Length; x++)
                {
                    int i = x < touched.Length ? touched[x] : _layout.BorderCount + x - touched.Length;
                    VectorKernel.AddScaled(target, -_scales[a] * row[x], BorderRow(i));
                }
            }
        }

        return mixed;
    }
}
