namespace FlipAnalytics.Statistics;

/// <summary>
/// The fixed columns made orthonormal: centred on the weighted means when a constant column is among them, then
/// multiplied by L⁻ᵀ of their cross-products LL'. A column that earlier ones determine is dropped.
/// </summary>
internal sealed class FixedColumns
{
    /// <summary>Share of a column's (centred) sum of squares below which it counts as determined by earlier columns.</summary>
    private const double DependenceTolerance = 1e-11;

    private readonly RawCrossProducts _sums;
    private readonly double[] _means;
    private readonly double[] _lower;

    public FixedColumns(RawCrossProducts sums)
    {
        _sums = sums;
        int columns = sums.Columns;
        Constant = Enumerable.Range(0, columns)
            .FirstOrDefault(j => sums.Moments[(j * (columns + 2)) + j] == 0 && sums.Shift[j] != 0, -1);
        double total = sums.Moments[^1];
        _means = new double[columns + 1];
        for (int j = 0; j <= columns; j++)
        {
            _means[j] = Constant < 0 || j == Constant ? 0 : sums.Shift[j] + (SumOf(j) / total);
        }

        double[] products = new double[columns * columns];
        for (int i = 0; i < columns; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                products[(i * columns) + j] = Product(i, j);
            }
        }

        (Kept, _lower) = FactorKeepingIndependent(products, columns);
    }

    /// <summary>Index of the constant column, or −1.</summary>
    public int Constant { get; }

    /// <summary>Columns that earlier ones do not determine, in order.</summary>
    public int[] Kept { get; }

    /// <summary>Weighted mean of the response, or 0 without a constant column.</summary>
    public double ResponseMean => _means[^1];

    /// <summary>What the centring of the response adds to the constant column's coefficient.</summary>
    public double ConstantEstimateOffset => Constant < 0 ? 0 : ResponseMean / _sums.Shift[Constant];

    /// <summary>log|X'X| of the kept columns.</summary>
    public double LogDeterminant => RowMajorCholesky.LogDeterminant(_lower, Kept.Length);

    /// <summary>Centred Σ w vᵢvⱼ for two of the columns, or the response as index <c>Columns</c>.</summary>
    public double Product(int i, int j)
    {
        double shifted = _sums.Moments[(Math.Max(i, j) * (_sums.Columns + 2)) + Math.Min(i, j)];
        double total = _sums.Moments[^1];
        if (Constant < 0)
        {
            return shifted + (_sums.Shift[i] * SumOf(j)) + (_sums.Shift[j] * SumOf(i))
                + (_sums.Shift[i] * _sums.Shift[j] * total);
        }

        if (i == Constant || j == Constant)
        {
            return i == j ? _sums.Shift[i] * _sums.Shift[i] * total : 0;
        }

        return shifted - (SumOf(i) * SumOf(j) / total);
    }

    /// <summary>Centred Σ w z vⱼ for a level's indicator z.</summary>
    public double LevelProduct(int level, int j)
    {
        int width = _sums.Columns + 2;
        double count = _sums.LevelMoments[(level * width) + width - 1];
        double shifted = _sums.LevelMoments[(level * width) + j];
        return Constant < 0 || j == Constant
            ? shifted + (_sums.Shift[j] * count)
            : shifted - (SumOf(j) / _sums.Moments[^1] * count);
    }

    /// <summary>Turns values of the kept columns, centred, into orthonormal coordinates in place.</summary>
    public void ToOrthonormal(Span<double> kept) => RowMajorCholesky.SolveLower(_lower, Kept.Length, kept);

    /// <summary>Orthonormal coordinates of a row of fixed columns.</summary>
    public void ToOrthonormal(ReadOnlySpan<double> x, Span<double> kept)
    {
        for (int a = 0; a < Kept.Length; a++)
        {
            kept[a] = x[Kept[a]] - (ConstantShare(x) * _means[Kept[a]]);
        }

        ToOrthonormal(kept);
    }

    /// <summary>What the centring of the response adds to the mean of a row.</summary>
    public double ResponseOffset(ReadOnlySpan<double> x) => ConstantShare(x) * ResponseMean;

    /// <summary>Coefficients of the original columns from those of the orthonormal ones, in place; no response mean.</summary>
    public void ToOriginal(Span<double> coefficients)
    {
        RowMajorCholesky.SolveLowerTransposed(_lower, Kept.Length, coefficients);
        int constant = Array.IndexOf(Kept, Constant);
        if (constant < 0)
        {
            return;
        }

        for (int a = 0; a < Kept.Length; a++)
        {
            coefficients[constant] -= coefficients[a] * _means[Kept[a]] / _sums.Shift[Constant];
        }
    }

    private double SumOf(int j) => _sums.Moments[((_sums.Columns + 1) * (_sums.Columns + 2)) + j];

    private double ConstantShare(ReadOnlySpan<double> x) => Constant < 0 ? 0 : x[Constant] / _sums.Shift[Constant];

    private static (int[] Kept, double[] Lower) FactorKeepingIndependent(double[] products, int n)
    {
        var kept = new List<int>(n);
        var rows = new List<double[]>(n);
        for (int i = 0; i < n; i++)
        {
            double[] row = new double[n];
            double pivot = products[(i * n) + i];
            for (int a = 0; a < kept.Count; a++)
            {
                double value = products[(i * n) + kept[a]] - VectorKernel.Dot(row.AsSpan(0, a), rows[a].AsSpan(0, a));
                row[a] = value / rows[a][a];
                pivot -= row[a] * row[a];
            }

            if (pivot > DependenceTolerance * products[(i * n) + i])
            {
                row[kept.Count] = Math.Sqrt(pivot);
                kept.Add(i);
                rows.Add(row);
            }
        }

        double[] lower = new double[kept.Count * kept.Count];
        for (int a = 0; a < kept.Count; a++)
        {
            rows[a].AsSpan(0, kept.Count).CopyTo(lower.AsSpan(a * kept.Count));
        }

        return ([.. kept], lower);
    }
}
