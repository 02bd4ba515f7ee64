using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FlipAnalytics.Statistics;

/// <summary>Least squares from running totals: rows are added block by block and forgotten, so that any number of them fits
/// in the memory of one block. Sums are taken about the means of the first rows, which keeps the digits that a plain XᵀX
/// loses. Equal weights only; a fit has everything but what needs its rows.</summary>
public sealed class CrossProducts
{
    private const int BlockRows = 512;
    private const int Lanes = BlockRows / 4;

    // Below this share of the rows times the squared mean, what is left of the response's spread is rounding.
    private const double ConstantShare = 1e-30;

    // What is left of the response's squares below this share of them is rounding.
    private const double RoundingShare = 1e-14;

    // Below this share of a column's spread, what is left of it is rounding: totals hold squares, so half the digits.
    private const double LeastRankTolerance = 1e-6;

    private readonly string[] names;
    private readonly bool intercept;
    private readonly int width;
    private readonly double[] shift;
    private readonly double[] size;
    private readonly DoubleDouble[] sums;
    private readonly DoubleDouble[] products;
    private readonly Vector256<double>[] block;

    /// <param name="names">The names of the columns, the intercept not among them.</param>
    /// <param name="intercept">Whether the fit has an intercept.</param>
    /// <exception cref="ArgumentException">No names, or one used twice.</exception>
    public CrossProducts(IReadOnlyList<string> names, bool intercept = true)
    {
        ArgumentNullException.ThrowIfNull(names);
        if (names.Count == 0)
            throw new ArgumentException("There are no columns; give at least one name.", nameof(names));
        this.names = intercept ? [Regressor.InterceptName, .. names] : [.. names];
        LeastSquaresChecks.RefuseRepeatedNames(this.names);
        this.intercept = intercept;
        width = names.Count + 1;
        int padded = (width + 3) / 4 * 4;
        shift = new double[width];
        size = new double[width];
        sums = new DoubleDouble[width];
        products = new DoubleDouble[padded * padded];
        block = new Vector256<double>[padded * Lanes];
    }

    /// <summary>Rows added so far.</summary>
    public int RowCount { get; private set; }

    /// <summary>Adds rows.</summary>
    /// <param name="columns">The columns in the order of the names, a value a row.</param>
    /// <param name="response">y, a value a row.</param>
    /// <exception cref="ArgumentException">Another number of columns than names, lengths that differ, or a value that is not
    /// finite; nothing is added then.</exception>
    public void Add(IReadOnlyList<ReadOnlyMemory<double>> columns, ReadOnlyMemory<double> response)
    {
        ArgumentNullException.ThrowIfNull(columns);
        if (columns.Count != width - 1)
            throw new ArgumentException($"There are {columns.Count} columns for {width - 1} names.", nameof(columns));
        ReadOnlyMemory<double>[] all = [.. columns, response];
        for (int j = 0; j < width; j++)
            LeastSquaresChecks.RefuseLength(NameOf(j), all[j].Length, response.Length);
        var before = (Sums: sums.ToArray(), Products: products.ToArray(), Size: size.ToArray(), RowCount);
        for (int from = 0; from < response.Length; from += BlockRows)
        {
            if (TryAddBlock(all, from, Math.Min(BlockRows, response.Length - from)))
                continue;
            before.Sums.CopyTo(sums, 0);
            before.Products.CopyTo(products, 0);
            before.Size.CopyTo(size, 0);
            RowCount = before.RowCount;
            for (int j = 0; j < width; j++)
                LeastSquaresChecks.RefuseNotFinite(NameOf(j), all[j].Span);
            throw new ArgumentException("The values are too large to be summed; give them in a larger unit.", nameof(columns));
        }
    }

    /// <summary>The fit of the rows added so far. Its <see cref="LinearFit.ByRow"/> is not available.</summary>
    /// <param name="options">The rank tolerance is at least 1e-6 here, of a column's spread about its mean, since totals hold
    /// half the digits; refinement does not apply.</param>
    /// <exception cref="ArgumentException">No more rows than coefficients, a constant response beside an intercept or one of
    /// 0, or numbers so large (1e150) or small (1e-135) that their squares cannot be summed.</exception>
    public LinearFit Fit(LeastSquaresOptions? options = null)
    {
        if (RowCount == 0)
            throw new ArgumentException("No rows have been added; a fit needs more rows than columns.");
        for (int j = 0; j < width; j++)
            LeastSquaresChecks.RefuseUnsquarable(NameOf(j), size[j]);
        double tolerance = Math.Max((options ?? LeastSquaresOptions.Default).RankTolerance, LeastRankTolerance);
        CrossProductSolver solver = new(Centred, width - 1, tolerance);
        double[] means = [.. sums.Select((sum, j) => shift[j] + (double)sum / RowCount)];
        double level = intercept ? means[^1] : 0;
        if (Centred(width - 1, width - 1) <= ConstantShare * RowCount * level * level)
            throw LeastSquaresChecks.NothingToExplain(level, RowCount);
        int extra = intercept ? 1 : 0;
        LeastSquaresChecks.RefuseTooFewRows(RowCount, solver.Kept.Count + extra, names.Length);

        List<double[]> upper = [.. solver.Upper];
        List<double> coefficients = [.. solver.Coefficients];
        if (intercept)
        {
            // QR of [1 X] from that of the centred X: a first row of √n and √n x̄.
            double root = Math.Sqrt(RowCount);
            upper = [[root], .. solver.Upper.Select((column, k) => (double[])[root * means[solver.Kept[k]], .. column])];
            coefficients.Insert(0, means[^1] - solver.Kept.Select((j, k) => means[j] * solver.Coefficients[k]).Sum());
        }
        double[] spreads = [.. solver.Kept.Select(j => Centred(j, j))];
        int[] kept = [.. solver.Kept.Select(j => j + extra)];
        LinearFit fit = new(
            new LinearSolution(
                names, intercept ? [0, .. kept] : kept, [.. coefficients], TriangularSolve.InverseOfSquare(upper), upper)
            {
                RowCount = RowCount,
                HasIntercept = intercept,
                ModelSumOfSquares = solver.Explained,
                ResidualSumOfSquares = Math.Max(0, Centred(width - 1, width - 1) - solver.Explained),
                RoundingSumOfSquares = RoundingShare * Centred(width - 1, width - 1),
                SumOfLogWeights = 0,
                CentredSumsOfSquares = intercept ? [0, .. spreads] : spreads,
            },
            null);
        LeastSquaresChecks.RefuseUnheldVariances(fit);
        return fit;
    }

    /// <summary>Σ (u − ū)(v − v̄) with an intercept, Σ u v without.</summary>
    private double Centred(int j, int k)
    {
        DoubleDouble product = products[Math.Max(j, k) * (block.Length / Lanes) + Math.Min(j, k)];
        return (double)(intercept ? product - sums[j] * sums[k] * (1.0 / RowCount) : product);
    }

    private string NameOf(int column) =>
        column == width - 1 ? "The response" : $"Column '{names[names.Length - width + 1 + column]}'";

    /// <summary>False, with nothing certain about the totals, if a value is not finite.</summary>
    private bool TryAddBlock(ReadOnlyMemory<double>[] columns, int from, int rows)
    {
        Span<double> values = MemoryMarshal.Cast<Vector256<double>, double>(block.AsSpan());
        for (int j = 0; j < width; j++)
        {
            ReadOnlySpan<double> source = columns[j].Span.Slice(from, rows);
            if (RowCount == 0 && intercept)
                shift[j] = Mean(source);
            Span<double> target = values.Slice(j * BlockRows, BlockRows);
            target[rows..].Clear();
            Subtract(source, shift[j], target);
            double sum = Sum(block.AsSpan(j * Lanes, Lanes));
            if (!double.IsFinite(sum))
                return false;
            sums[j] += sum;
            size[j] = Math.Max(size[j], Size(block.AsSpan(j * Lanes, Lanes)));
        }
        int padded = block.Length / Lanes;
        for (int j = 0; j < padded; j += 4)
        {
            for (int k = 0; k < j + 4; k += 2)
                AddTile(j, k, padded);
        }
        RowCount += rows;
        return true;
    }

    /// <summary>Products of four columns with two. The eight running sums stay in registers, and each value read serves
    /// several of them. Fused arithmetic in four fixed lanes gives the same digits on every processor.</summary>
    private void AddTile(int j, int k, int padded)
    {
        ref Vector256<double> a0 = ref block[j * Lanes], a1 = ref block[(j + 1) * Lanes];
        ref Vector256<double> a2 = ref block[(j + 2) * Lanes], a3 = ref block[(j + 3) * Lanes];
        ref Vector256<double> b0 = ref block[k * Lanes], b1 = ref block[(k + 1) * Lanes];
        Vector256<double> s00 = default, s10 = default, s20 = default, s30 = default;
        Vector256<double> s01 = default, s11 = default, s21 = default, s31 = default;
        for (nint i = 0; i < Lanes; i++)
        {
            Vector256<double> left = Unsafe.Add(ref b0, i), right = Unsafe.Add(ref b1, i), value = Unsafe.Add(ref a0, i);
            s00 = Vector256.FusedMultiplyAdd(value, left, s00);
            s01 = Vector256.FusedMultiplyAdd(value, right, s01);
            value = Unsafe.Add(ref a1, i);
            s10 = Vector256.FusedMultiplyAdd(value, left, s10);
            s11 = Vector256.FusedMultiplyAdd(value, right, s11);
            value = Unsafe.Add(ref a2, i);
            s20 = Vector256.FusedMultiplyAdd(value, left, s20);
            s21 = Vector256.FusedMultiplyAdd(value, right, s21);
            value = Unsafe.Add(ref a3, i);
            s30 = Vector256.FusedMultiplyAdd(value, left, s30);
            s31 = Vector256.FusedMultiplyAdd(value, right, s31);
        }
        Span<Vector256<double>> totals = [s00, s01, s10, s11, s20, s21, s30, s31];
        for (int cell = 0; cell < totals.Length; cell++)
            products[(j + cell / 2) * padded + k + cell % 2] += Vector256.Sum(totals[cell]);
    }

    private static void Subtract(ReadOnlySpan<double> source, double shift, Span<double> target)
    {
        ReadOnlySpan<Vector256<double>> fours = MemoryMarshal.Cast<double, Vector256<double>>(source);
        Span<Vector256<double>> targetFours = MemoryMarshal.Cast<double, Vector256<double>>(target)[..fours.Length];
        Vector256<double> shifts = Vector256.Create(shift);
        for (int i = 0; i < fours.Length; i++)
            targetFours[i] = fours[i] - shifts;
        for (int i = 4 * fours.Length; i < source.Length; i++)
            target[i] = source[i] - shift;
    }

    private static double Sum(ReadOnlySpan<Vector256<double>> column)
    {
        Vector256<double> sum = default;
        foreach (Vector256<double> four in column)
            sum += four;
        return Vector256.Sum(sum);
    }

    /// <summary>The largest absolute value.</summary>
    private static double Size(ReadOnlySpan<Vector256<double>> column)
    {
        Vector256<double> size = default;
        foreach (Vector256<double> four in column)
            size = Vector256.Max(size, Vector256.Abs(four));
        return Math.Max(Math.Max(size[0], size[1]), Math.Max(size[2], size[3]));
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double value in values)
            sum += value;
        return sum / values.Length;
    }
}
