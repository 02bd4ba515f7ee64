namespace FlipAnalytics.Statistics;

/// <summary>QR by Householder reflections with limited pivoting: columns are taken in the order given, and one that adds
/// nothing to those before it (what is left of it is shorter than tolerance × its length) is set aside. This is the rule
/// of R's <c>lm</c>. Golub and Van Loan, Matrix Computations (4th ed.), algorithm 5.2.1.</summary>
internal sealed class HouseholderQr
{
    private readonly List<double[]> reflectors = [];
    private readonly List<double[]> upper = [];
    private readonly int rows;

    public HouseholderQr(IReadOnlyList<double[]> columns, double tolerance)
    {
        rows = columns[0].Length;
        for (int j = 0; j < columns.Count; j++)
        {
            double[] column = [.. columns[j]];
            double length = Norm(column);
            foreach (var (k, reflector) in reflectors.Index())
                Reflect(reflector, column, k);
            int rank = Kept.Count;
            double tail = Norm(column.AsSpan(rank));
            if (tail == 0 || tail < tolerance * length)
            {
                Dropped.Add(j);
                continue;
            }

            // v = x ± ‖x‖e₁ scaled to vᵀv = 2, the sign chosen so that nothing cancels.
            double head = column[rank];
            double diagonal = head > 0 ? -tail : tail;
            double[] v = new double[rows - rank];
            column.AsSpan(rank).CopyTo(v);
            v[0] = head - diagonal;
            double scale = 1 / Math.Sqrt(tail * (tail + Math.Abs(head)));
            for (int i = 0; i < v.Length; i++)
                v[i] *= scale;
            reflectors.Add(v);
            upper.Add([.. column.AsSpan(0, rank), diagonal]);
            Kept.Add(j);
        }
    }

    /// <summary>Positions of the columns that carry information, ascending.</summary>
    public List<int> Kept { get; } = [];

    /// <summary>Positions of the columns that depend on columns before them, ascending.</summary>
    public List<int> Dropped { get; } = [];

    /// <summary>R by columns: <c>Upper[j][i]</c> is Rᵢⱼ for i ≤ j.</summary>
    public IReadOnlyList<double[]> Upper => upper;

    /// <summary>b of R b = the head of Qᵀ y.</summary>
    public double[] Solve(ReadOnlySpan<double> response)
    {
        double[] rotated = response.ToArray();
        foreach (var (k, reflector) in reflectors.Index())
            Reflect(reflector, rotated, k);
        Array.Resize(ref rotated, Kept.Count);
        TriangularSolve.Back(upper, rotated);
        return rotated;
    }

    /// <summary>The first columns of Q, one a kept column.</summary>
    public double[][] ThinQ()
    {
        double[][] q = new double[Kept.Count][];
        for (int j = 0; j < q.Length; j++)
        {
            q[j] = new double[rows];
            q[j][j] = 1;
            for (int k = j; k >= 0; k--)
                Reflect(reflectors[k], q[j], k);
        }
        return q;
    }

    private static void Reflect(double[] reflector, double[] column, int from)
    {
        double dot = 0;
        for (int i = 0; i < reflector.Length; i++)
            dot += reflector[i] * column[from + i];
        for (int i = 0; i < reflector.Length; i++)
            column[from + i] -= dot * reflector[i];
    }

    private static double Norm(ReadOnlySpan<double> values)
    {
        double largest = 0;
        foreach (double value in values)
            largest = Math.Max(largest, Math.Abs(value));
        if (largest == 0)
            return 0;
        double sum = 0;
        foreach (double value in values)
            sum += value / largest * (value / largest);
        return largest * Math.Sqrt(sum);
    }
}
