using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics;

/// <summary>
/// The variance of observed less expected endings, V = Σ f (diag(s) − s s′) over the times of endings, s the groups' shares
/// of those at risk. With more groups than times it is not written out: V = D − W W′ with D diagonal and a column √f s of W a
/// time, so x′V⁻¹x = x′D⁻¹x + c′(I − W′D⁻¹W)⁻¹c with c = W′D⁻¹x (Golub and Van Loan, Matrix Computations, section 2.1.4).
/// </summary>
internal sealed class LogRankVariance(int groupCount)
{
    // With no more groups their whole matrix is small, and is built up at once.
    private const int FewGroups = 64;

    private readonly Matrix<double>? whole = groupCount <= FewGroups ? Matrix<double>.Build.Dense(groupCount, groupCount) : null;
    private readonly List<(double Factor, double[] Share)> times = [];
    private readonly double[] diagonal = new double[groupCount];

    /// <summary>Whether no time told anything.</summary>
    internal bool IsZero => whole is null ? times.Count == 0 : whole.FrobeniusNorm() == 0;

    /// <summary>Adds a time of endings.</summary>
    internal void Add(double factor, double[] share)
    {
        if (whole is not null)
        {
            AddTo(whole, factor, share);
            return;
        }

        // One group alone at risk has no variance.
        if (factor == 0 || share.Contains(1))
            return;
        times.Add((factor, share));
        for (int k = 0; k < share.Length; k++)
            diagonal[k] += factor * share[k];
    }

    /// <summary>V, row by row.</summary>
    internal ImmutableArray<ImmutableArray<double>> Whole() => [.. Matrix().EnumerateRows().Select(row => row.ToImmutableArray())];

    /// <summary>x′V⁻x over these groups. Their differences sum to 0, so one of them is left out.</summary>
    internal double Form(int[] compared, double[] difference) =>
        whole is null && times.Count < compared.Length && TryThin(compared, difference) is { } form
            ? form : Dense(compared[1..], difference);

    private static void AddTo(Matrix<double> variance, double factor, double[] share)
    {
        for (int j = 0; j < share.Length; j++)
        {
            for (int k = 0; k < share.Length; k++)
                variance[j, k] += factor * share[j] * ((j == k ? 1 : 0) - share[k]);
        }
    }

    private Matrix<double> Matrix()
    {
        if (whole is not null)
            return whole;
        var variance = Matrix<double>.Build.Dense(groupCount, groupCount);
        foreach ((double factor, double[] share) in times)
            AddTo(variance, factor, share);
        return variance;
    }

    private double Dense(int[] kept, double[] difference)
    {
        Matrix<double> variance = Matrix();
        var x = Vector<double>.Build.Dense(kept.Length, k => difference[kept[k]]);
        var inner = Matrix<double>.Build.Dense(kept.Length, kept.Length, (j, k) => variance[kept[j], kept[k]]);
        return x * inner.Svd().Solve(x);
    }

    // Null where groups, or all but one of them, were never at risk together, so that more than one direction is without
    // variance. The group left out is the one that tells most: small ones would leave the rest nearly singular.
    private double? TryThin(int[] compared, double[] difference)
    {
        int left = compared.MaxBy(k => diagonal[k]);
        int[] kept = [.. compared.Where(k => k != left)];
        if (kept.Any(k => diagonal[k] == 0))
            return null;
        double[][] columns =
            [.. times.Select(time => kept.Select(k => Math.Sqrt(time.Factor / diagonal[k]) * time.Share[k]).ToArray())];
        double[] scaled = [.. kept.Select(k => difference[k] / Math.Sqrt(diagonal[k]))];
        int size = columns.Length;
        double[] rest = new double[size * size], ones = new double[size], solution = new double[size];
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
                rest[i * size + j] = (i == j ? 1 : 0) - VectorKernel.Dot(columns[i], columns[j]);
            ones[i] = 1;
            solution[i] = VectorKernel.Dot(columns[i], scaled);
        }

        var factor = new ScaledCholesky(size);
        if (!factor.TryFactor(rest, size, 0, ones))
            return null;
        double[] onto = [.. solution];
        factor.Solve(solution);
        return VectorKernel.Dot(scaled, scaled) + VectorKernel.Dot(onto, solution);
    }
}
