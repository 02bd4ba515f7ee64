namespace FlipAnalytics.Statistics;

/// <summary>
/// Cross-products of the level indicators in the order of a <see cref="BorderedLayout"/>. Of each block: Z'Z among its
/// levels, and Z'(border levels it meets, X, e). Of the border: all of (Z, X, e)'(Z, X, e), by levels, not by draws, so
/// that what a block meets stays short where a walk is among the terms.
/// </summary>
internal sealed class BorderedProducts
{
    private readonly int[] _squareStarts;
    private readonly int[] _rowStarts;
    private readonly int[] _touchStarts;
    private readonly int[] _touched;

    /// <summary>Collects them.</summary>
    /// <param name="layout">The order.</param>
    /// <param name="own">Σ w of each level.</param>
    /// <param name="neighbours">Σ w where two levels meet.</param>
    /// <param name="fixedProducts">Z'(X, e) by rows of length p + 1, one for each level.</param>
    /// <param name="fixedCount">p.</param>
    /// <param name="residualSumOfSquares">e'e.</param>
    public BorderedProducts(
        BorderedLayout layout, double[] own, LevelNeighbours neighbours, double[] fixedProducts, int fixedCount,
        double residualSumOfSquares)
    {
        Layout = layout;
        FixedCount = fixedCount;
        _squareStarts = new int[layout.BlockCount + 1];
        _rowStarts = new int[layout.BlockCount + 1];
        _touchStarts = new int[layout.BlockCount + 1];
        var touched = new List<int>();
        bool[] seen = new bool[layout.BorderCount];
        for (int c = 0; c < layout.BlockCount; c++)
        {
            Touch(c, neighbours, touched, seen);
            int size = Size(c);
            _touchStarts[c + 1] = touched.Count;
            _squareStarts[c + 1] = checked(_squareStarts[c] + (size * size));
            _rowStarts[c + 1] = checked(_rowStarts[c] + (size * (touched.Count - _touchStarts[c] + fixedCount + 1)));
        }

        _touched = [.. touched];
        Squares = new double[_squareStarts[^1]];
        Rows = new double[_rowStarts[^1]];
        for (int c = 0; c < layout.BlockCount; c++)
        {
            FillBlock(c, own, neighbours, fixedProducts);
        }

        Border = new double[BorderWidth * BorderWidth];
        FillBorder(own, neighbours, fixedProducts, residualSumOfSquares);
    }

    public BorderedLayout Layout { get; }

    /// <summary>p.</summary>
    public int FixedCount { get; }

    /// <summary>Border levels, fixed columns and the response.</summary>
    public int BorderWidth => Layout.BorderCount + FixedCount + 1;

    /// <summary>Z'Z of the blocks, one after another.</summary>
    public double[] Squares { get; }

    /// <summary>Z'(border, X, e) of the blocks' levels, by rows of <see cref="Width"/>, one block after another.</summary>
    public double[] Rows { get; }

    /// <summary>(Z, X, e)'(Z, X, e) of the border's levels, lower triangle by rows of <see cref="BorderWidth"/>.</summary>
    public double[] Border { get; }

    /// <summary>Number of levels in a block.</summary>
    public int Size(int block) => Layout.BlockStarts[block + 1] - Layout.BlockStarts[block];

    /// <summary>Length of the rows of a block: what it meets of the border, fixed columns and the response.</summary>
    public int Width(int block) => _touchStarts[block + 1] - _touchStarts[block] + FixedCount + 1;

    /// <summary>
    /// The places in the border of the levels that a block meets, in increasing order; all places if it meets most.
    /// </summary>
    public ReadOnlySpan<int> Touched(int block) => _touched.AsSpan(_touchStarts[block].._touchStarts[block + 1]);

    /// <summary>Where a block lies in <see cref="Squares"/> and arrays like it.</summary>
    public Range SquareOf(int block) => _squareStarts[block].._squareStarts[block + 1];

    /// <summary>Where a block lies in <see cref="Rows"/> and arrays like it.</summary>
    public Range RowsOf(int block) => _rowStarts[block].._rowStarts[block + 1];

    private void Touch(int block, LevelNeighbours neighbours, List<int> touched, bool[] seen)
    {
        int start = touched.Count;
        for (int a = Layout.BlockStarts[block]; a < Layout.BlockStarts[block + 1]; a++)
        {
            foreach (int other in neighbours.Of(Layout.BlockLevels[a]))
            {
                if (Layout.InBorder(other, out int border) && !seen[border])
                {
                    seen[border] = true;
                    touched.Add(border);
                }
            }
        }

        for (int x = start; x < touched.Count; x++)
        {
            seen[touched[x]] = false;
        }

        if (2 * (touched.Count - start) > Layout.BorderCount)
        {
            // A few zeros cost less than looking up where the others belong.
            touched.RemoveRange(start, touched.Count - start);
            touched.AddRange(Enumerable.Range(0, Layout.BorderCount));
            return;
        }

        touched.Sort(start, touched.Count - start, null);
    }

    private void FillBlock(int block, double[] own, LevelNeighbours neighbours, double[] fixedProducts)
    {
        int size = Size(block);
        int width = Width(block);
        int first = Layout.BlockStarts[block];
        Span<double> square = Squares.AsSpan(SquareOf(block));
        ReadOnlySpan<int> touched = Touched(block);
        for (int a = 0; a < size; a++)
        {
            int level = Layout.BlockLevels[first + a];
            Span<double> row = Rows.AsSpan(RowsOf(block)).Slice(a * width, width);
            square[(a * size) + a] = own[level];
            ReadOnlySpan<int> others = neighbours.Of(level);
            ReadOnlySpan<double> weights = neighbours.WeightsOf(level);
            for (int i = 0; i < others.Length; i++)
            {
                if (Layout.InBlocks(others[i], out int other))
                {
                    square[(a * size) + other - first] = weights[i];
                }
                else if (Layout.InBorder(others[i], out int border))
                {
                    row[touched.BinarySearch(border)] = weights[i];
                }
            }

            fixedProducts.AsSpan(level * (FixedCount + 1), FixedCount + 1).CopyTo(row[touched.Length..]);
        }
    }

    private void FillBorder(double[] own, LevelNeighbours neighbours, double[] fixedProducts, double residualSumOfSquares)
    {
        int r = Layout.BorderCount;
        int n = BorderWidth;
        for (int b = 0; b < r; b++)
        {
            int level = Layout.BorderLevels[b];
            Border[(b * n) + b] = own[level];
            ReadOnlySpan<int> others = neighbours.Of(level);
            ReadOnlySpan<double> weights = neighbours.WeightsOf(level);
            for (int i = 0; i < others.Length; i++)
            {
                if (Layout.InBorder(others[i], out int other) && other < b)
                {
                    Border[(b * n) + other] = weights[i];
                }
            }

            for (int c = 0; c <= FixedCount; c++)
            {
                Border[((r + c) * n) + b] = fixedProducts[(level * (FixedCount + 1)) + c];
            }
        }

        for (int c = 0; c < FixedCount; c++)
        {
            Border[((r + c) * n) + r + c] = 1;
        }

        Border[^1] = residualSumOfSquares;
    }
}
