namespace FlipAnalytics.Statistics;

/// <summary>
/// Σ w z z' over rows: for every two levels that meet in a row, the sum of the weights of the rows they meet in. A row
/// holds one level of a term at most, so a level of many meets only few; what never meets takes no room.
/// </summary>
internal sealed class LevelMeetings(int levelCount)
{
    /// <summary>Up to this many levels a full table is smaller and faster than a list of what is not zero.</summary>
    private const int LargestTable = 256;

    private readonly double[]? _table = levelCount <= LargestTable ? new double[levelCount * levelCount] : null;
    private readonly Dictionary<long, double> _sums = [];

    /// <summary>Σ w of each level's rows.</summary>
    public double[] Own { get; } = new double[levelCount];

    /// <summary>Adds one row's weight for two different levels.</summary>
    public void Add(int level, int lowerLevel, double weight)
    {
        long key = ((long)level * levelCount) + lowerLevel;
        if (_table is not null)
        {
            _table[key] += weight;
            return;
        }

        System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(_sums, key, out _) += weight;
    }

    /// <summary>Who meets whom, both ways round.</summary>
    public LevelNeighbours Neighbours()
    {
        (long[] keys, double[] weights) = Sorted();
        int[] starts = new int[levelCount + 1];
        foreach (long key in keys)
        {
            starts[(key / levelCount) + 1]++;
            starts[(key % levelCount) + 1]++;
        }

        for (int level = 0; level < levelCount; level++)
        {
            starts[level + 1] += starts[level];
        }

        int[] next = starts[..levelCount];
        int[] others = new int[2 * keys.Length];
        double[] sums = new double[others.Length];
        for (int i = 0; i < keys.Length; i++)
        {
            (int level, int lower) = ((int)(keys[i] / levelCount), (int)(keys[i] % levelCount));
            (others[next[level]], sums[next[level]++]) = (lower, weights[i]);
            (others[next[lower]], sums[next[lower]++]) = (level, weights[i]);
        }

        return new(starts, others, sums);
    }

    private (long[] Keys, double[] Weights) Sorted()
    {
        long[] keys;
        if (_table is null)
        {
            keys = [.. _sums.Keys];
            double[] weights = [.. _sums.Values];
            Array.Sort(keys, weights);
            return (keys, weights);
        }

        int count = 0;
        keys = new long[_table.Length];
        for (int key = 0; key < _table.Length; key++)
        {
            keys[count] = key;
            count += _table[key] != 0 ? 1 : 0;
        }

        keys = keys[..count];
        return (keys, Array.ConvertAll(keys, key => _table[key]));
    }
}

/// <summary>The levels that each level meets, in increasing order, and Σ w of the rows they meet in.</summary>
/// <param name="Starts">Where each level's neighbours begin in the other two, and their number at the end.</param>
/// <param name="Others">The neighbours.</param>
/// <param name="Weights">Σ w.</param>
internal sealed record LevelNeighbours(int[] Starts, int[] Others, double[] Weights)
{
    public ReadOnlySpan<int> Of(int level) => Others.AsSpan(Starts[level]..Starts[level + 1]);

    public ReadOnlySpan<double> WeightsOf(int level) => Weights.AsSpan(Starts[level]..Starts[level + 1]);
}
