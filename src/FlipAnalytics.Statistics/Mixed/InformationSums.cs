namespace FlipAnalytics.Statistics;

/// <summary>
/// tr Tₖₖ and ‖Tⱼₖ‖² of T = I − J̃, where J̃ is the draws' part of the inverse of Henderson's matrix
/// (<see cref="BorderedInverse"/>), without writing T out: with E = I − A⁻¹ in the blocks and M = DJD',
/// <code>blocks: E − V M V',  blocks with border: V DJ,  border: I − J,</code>
/// ‖V_j M V_k'‖² = tr(P_j M P_k M) and ‖V_j DJ‖² = tr(JD' P_j DJ) need only P_j = V_j'V_j, of the size of the border.
/// Where the blocks hold fewer levels than the border, <see cref="WrittenRows"/> are less work.
/// </summary>
internal sealed class InformationSums
{
    private readonly BorderedInverse _inverse;
    private readonly BorderedProducts _products;
    private readonly BorderedLayout _layout;
    private readonly int _terms;
    private readonly double[] _half;
    private readonly double[] _whole;
    private readonly double[][] _outer;
    private readonly double[][] _spread;
    private readonly double[] _columns;
    private readonly WrittenRows? _written;
    private double[] _applied = [];

    public InformationSums(BorderedInverse inverse, int terms)
    {
        _inverse = inverse;
        _products = inverse.Factor.Products;
        _layout = _products.Layout;
        _terms = terms;
        Traces = new double[terms];
        Norms = new double[terms * terms];
        _columns = new double[inverse.Factor.BorderSize];
        if (_layout.BlockLevels.Length <= inverse.Factor.BorderSize)
        {
            _written = new(inverse, Traces, Norms);
            (_half, _whole, _outer, _spread) = ([], [], [], []);
            return;
        }

        int squared = inverse.Joint.Length;
        _half = new double[squared];
        _whole = new double[squared];
        _outer = [.. _layout.HasBlocks.Select(has => has ? new double[squared] : [])];
        _spread = [.. _layout.HasBlocks.Select(has => has ? new double[squared] : [])];
    }

    /// <summary>tr Tₖₖ.</summary>
    public double[] Traces { get; }

    /// <summary>‖Tⱼₖ‖².</summary>
    public double[] Norms { get; }

    /// <summary>Takes the sums; <paramref name="joint"/> is J.</summary>
    public void Update(double[] joint)
    {
        Array.Clear(Traces);
        Array.Clear(Norms);
        AddBorder(joint);
        if (_written is not null)
        {
            _written.Add(joint);
            return;
        }

        _inverse.HalfByLevels(joint, _half);
        _inverse.ByLevels(_half, _whole);
        foreach (double[] outer in _outer)
        {
            Array.Clear(outer);
        }

        for (int c = 0; c < _layout.BlockCount; c++)
        {
            AddBlock(c);
        }

        for (int k = 0; k < _terms; k++)
        {
            if (_layout.HasBlocks[k])
            {
                AddWithBorder(k);
                for (int l = 0; l <= k; l++)
                {
                    if (_layout.HasBlocks[l])
                    {
                        AddBetweenBlocks(k, l);
                    }
                }
            }
        }
    }

    private void AddBorder(double[] joint)
    {
        int size = _inverse.Factor.BorderSize;
        for (int i = 0; i < _layout.BorderCount; i++)
        {
            int k = _layout.BorderTerms[i];
            ReadOnlySpan<double> row = joint.AsSpan(i * size, size);
            double own = 1 - row[i];
            Traces[k] += own;
            Norms[(k * _terms) + k] += own * own;
            for (int l = 0; l < _terms; l++)
            {
                (int start, int end) = (_layout.BorderStarts[l], _layout.BorderStarts[l + 1]);
                Norms[(k * _terms) + l] += l == k
                    ? SumOfSquares(row[start..i]) + SumOfSquares(row[(i + 1)..end])
                    : SumOfSquares(row[start..end]);
            }
        }
    }

    private static double SumOfSquares(ReadOnlySpan<double> values) => VectorKernel.Dot(values, values);

    /// <summary>The part of ‖E − VMV'‖² within a block that has E in it, and the block's share of P.</summary>
    private void AddBlock(int block)
    {
        int first = _layout.BlockStarts[block];
        int size = _products.Size(block);
        int width = _products.Width(block);
        ReadOnlySpan<int> touched = _products.Touched(block);
        ReadOnlySpan<double> inverse = _inverse.Blocks.AsSpan(_products.SquareOf(block));
        ReadOnlySpan<double> rows = _inverse.Rows.AsSpan(_products.RowsOf(block));
        for (int a = 0; a < size; a++)
        {
            int k = _layout.BlockTerms[first + a];
            ReadOnlySpan<double> row = rows.Slice(a * width, width - 1);
            BorderedFactor.AddOuter(_outer[k], _inverse.Factor.BorderSize, _layout.BorderCount, touched, row, 1);
            ReadOnlySpan<double> applied = Apply(row, touched);
            for (int b = 0; b < size; b++)
            {
                int l = _layout.BlockTerms[first + b];
                double expected = (a == b ? 1 : 0) - inverse[(a * size) + b];
                double absorbed = VectorKernel.Dot(applied, rows.Slice(b * width, width - 1));
                Norms[(k * _terms) + l] += expected * (expected - (2 * absorbed));
                Traces[k] += a == b ? expected - absorbed : 0;
            }
        }
    }

    /// <summary>Mv for the entries that v itself has.</summary>
    private ReadOnlySpan<double> Apply(ReadOnlySpan<double> row, ReadOnlySpan<int> touched)
    {
        if (_applied.Length < row.Length)
        {
            _applied = new double[row.Length];
        }

        int size = _inverse.Factor.BorderSize;
        for (int x = 0; x < row.Length; x++)
        {
            int i = x < touched.Length ? touched[x] : _layout.BorderCount + x - touched.Length;
            _applied[x] = _inverse.Times(row, touched, _whole.AsSpan(i * size, size));
        }

        return _applied.AsSpan(0, row.Length);
    }

    /// <summary>‖V_k DJ‖² by the terms of the border's draws, and D'P_k DJ.</summary>
    private void AddWithBorder(int k)
    {
        int size = _inverse.Factor.BorderSize;
        double[] outer = _outer[k];
        double[] spread = _spread[k];
        RowMajorCholesky.MirrorLower(outer, size);
        Array.Clear(spread);
        Array.Clear(_columns);
        for (int i = 0; i < size; i++)
        {
            Span<double> target = spread.AsSpan(i * size, size);
            for (int j = 0; j < size; j++)
            {
                if (outer[(i * size) + j] != 0)
                {
                    VectorKernel.AddScaled(target, outer[(i * size) + j], _half.AsSpan(j * size, size));
                }
            }

            for (int b = 0; b < _layout.BorderCount; b++)
            {
                _columns[b] += target[b] * _half[(i * size) + b];
            }
        }

        for (int b = 0; b < _layout.BorderCount; b++)
        {
            int l = _layout.BorderTerms[b];
            Norms[(k * _terms) + l] += _columns[b];
            Norms[(l * _terms) + k] += _columns[b];
        }

        _layout.ToDraws(spread, size);
        for (int i = 0; i < size; i++)
        {
            double scale = _inverse.Factor.BorderScales[i];
            for (int x = i * size; x < (i + 1) * size; x++)
            {
                spread[x] *= scale;
            }
        }
    }

    private void AddBetweenBlocks(int k, int l)
    {
        int size = _inverse.Factor.BorderSize;
        double sum = 0;
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < size; j++)
            {
                sum += _spread[k][(i * size) + j] * _spread[l][(j * size) + i];
            }
        }

        Norms[(k * _terms) + l] += sum;
        if (k != l)
        {
            Norms[(l * _terms) + k] += sum;
        }
    }
}
