using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>How much a number would vary if the rows had been drawn anew, learnt by drawing them anew from themselves: Efron
/// (1979), Ann. Stat. 7, 1–26. Replicate r uses random stream r, so the answer is the same on any number of threads.
/// </summary>
public static class Bootstrap
{
    /// <summary>Resamples a number computed from a list of values.</summary>
    /// <param name="values">The values.</param>
    /// <param name="statistic">The number; called from several threads at once, so it may not change anything.</param>
    /// <param name="options">Replicates, seed, clusters; the defaults when null.</param>
    /// <exception cref="ArgumentException">No values, clusters of another length, or a replicate that is not finite.</exception>
    public static BootstrapSample Resample(
        ReadOnlyMemory<double> values, Func<ReadOnlySpan<double>, double> statistic, BootstrapOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(statistic);
        return Resample(values.Length, rows =>
        {
            double[] drawn = new double[rows.Length];
            ReadOnlySpan<double> all = values.Span;
            for (int i = 0; i < drawn.Length; i++)
                drawn[i] = all[rows[i]];
            return statistic(drawn);
        }, options);
    }

    /// <summary>Resamples a number computed from numbered rows.</summary>
    /// <param name="rowCount">Rows.</param>
    /// <param name="statistic">The number, given the rows drawn, some of them repeated; called from several threads at once,
    /// so it may not change anything. The order of the rows must not matter to it.</param>
    /// <param name="options">Replicates, seed, clusters; the defaults when null.</param>
    /// <exception cref="ArgumentException">No rows, clusters of another length, or a replicate that is not finite.</exception>
    public static BootstrapSample Resample(
        int rowCount, Func<ReadOnlySpan<int>, double> statistic, BootstrapOptions? options = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rowCount, 1);
        ArgumentNullException.ThrowIfNull(statistic);
        options ??= new BootstrapOptions();
        int[][] clusters = ClustersOf(rowCount, options.Clusters);
        double[] replicates = new double[options.Replicates];
        ParallelOptions threads = new() { MaxDegreeOfParallelism = options.DegreeOfParallelism };
        Parallel.For(0, replicates.Length, threads, r => replicates[r] = statistic(Draw(clusters, new(options.Seed, (ulong)r))));
        int bad = Array.FindIndex(replicates, value => !double.IsFinite(value));
        if (bad >= 0)
            throw new ArgumentException(
                $"The statistic is {replicates[bad]} in replicate {bad}: it must be finite for rows drawn with repetition, also when some rows are missing.",
                nameof(statistic));
        return new BootstrapSample(
            statistic([.. Enumerable.Range(0, rowCount)]), [.. replicates], () => WithoutEach(clusters, rowCount, statistic, threads));
    }

    private static int[][] ClustersOf(int rowCount, ImmutableArray<int> clusters)
    {
        if (clusters.IsDefaultOrEmpty)
            return [.. Enumerable.Range(0, rowCount).Select(row => new[] { row })];
        if (clusters.Length != rowCount)
            throw new ArgumentException($"There are {rowCount} rows and {clusters.Length} clusters; each row needs one, or none.");
        return [.. clusters.Index().GroupBy(row => row.Item, row => row.Index).Select(cluster => cluster.ToArray())];
    }

    private static int[] Draw(int[][] clusters, RandomNumbers random)
    {
        List<int> rows = new(clusters.Length);
        for (int k = 0; k < clusters.Length; k++)
            rows.AddRange(clusters[random.NextIndex(clusters.Length)]);
        return [.. rows];
    }

    /// <summary>The number without each cluster in turn.</summary>
    private static double[] WithoutEach(
        int[][] clusters, int rowCount, Func<ReadOnlySpan<int>, double> statistic, ParallelOptions threads)
    {
        double[] without = new double[clusters.Length];
        Parallel.For(0, clusters.Length, threads, k =>
        {
            bool[] left = new bool[rowCount];
            foreach (int row in clusters[k])
                left[row] = true;
            without[k] = statistic([.. Enumerable.Range(0, rowCount).Where(row => !left[row])]);
        });
        return without;
    }
}
