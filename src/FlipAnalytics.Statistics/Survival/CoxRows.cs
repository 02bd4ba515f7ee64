namespace FlipAnalytics.Statistics;

/// <summary>The rows of a Cox regression, stratum by stratum, latest stop first and endings before the last sightings of
/// the same time. Columns are centred, which changes no coefficient and saves digits.</summary>
internal sealed class CoxRows
{
    private CoxRows(int count, int width)
    {
        Count = count;
        Width = width;
        X = new double[count * width];
        Means = new double[width];
        Weight = new double[count];
        Times = new SurvivalTime[count];
    }

    public int Count { get; }

    public int Width { get; }

    /// <summary>Row by row, centred.</summary>
    public double[] X { get; private init; }

    public double[] Means { get; private init; }

    public double[] Weight { get; private init; }

    public SurvivalTime[] Times { get; private init; }

    /// <summary>Where each row was in the input.</summary>
    public required int[] Original { get; init; }

    /// <summary>Rows of each stratum with the latest start first.</summary>
    public required int[] ByStart { get; init; }

    /// <summary>Names of the strata in ordinal order; one without a name when there are none.</summary>
    public required string[] Strata { get; init; }

    /// <summary>Where each stratum begins, and the count at the end.</summary>
    public required int[] StratumStart { get; init; }

    public static CoxRows From(
        double[][] columns, IReadOnlyList<SurvivalTime> times, IReadOnlyList<string>? strata, double[] weights)
    {
        string[] names = strata is null ? [""] : [.. strata.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        int[] starts = new int[names.Length + 1], order = new int[times.Count];
        int[] stratumOf = StratumOf(strata, names, times.Count);
        foreach (int stratum in stratumOf)
            starts[stratum + 1]++;
        for (int k = 0; k < names.Length; k++)
            starts[k + 1] += starts[k];
        int[] next = starts[..^1];
        for (int i = 0; i < stratumOf.Length; i++)
            order[next[stratumOf[i]]++] = i;

        CoxRows rows = new(times.Count, columns.Length)
        {
            Original = order,
            ByStart = new int[times.Count],
            Strata = names,
            StratumStart = starts,
        };
        for (int k = 0; k < names.Length; k++)
            rows.SortStops(times, starts[k], starts[k + 1]);
        for (int i = 0; i < order.Length; i++)
        {
            rows.Times[i] = times[order[i]];
            rows.Weight[i] = weights.Length == 0 ? 1 : weights[order[i]];
        }
        for (int k = 0; k < names.Length; k++)
            rows.SortStarts(starts[k], starts[k + 1]);
        for (int j = 0; j < columns.Length; j++)
            rows.Take(columns[j], j);
        return rows;
    }

    /// <summary>The same rows with some of the columns.</summary>
    public CoxRows Keep(int[] columns)
    {
        CoxRows kept = new(Count, columns.Length)
        {
            Original = Original,
            ByStart = ByStart,
            Strata = Strata,
            StratumStart = StratumStart,
            Weight = Weight,
            Times = Times,
            Means = [.. columns.Select(j => Means[j])],
        };
        for (int i = 0; i < Count; i++)
        {
            for (int j = 0; j < columns.Length; j++)
                kept.X[i * columns.Length + j] = X[i * Width + columns[j]];
        }
        return kept;
    }

    public ReadOnlySpan<double> Row(int i) => X.AsSpan(i * Width, Width);

    /// <summary>xᵀβ of every row, of centred columns.</summary>
    public double[] LinearPredictors(double[] coefficients)
    {
        double[] predictors = new double[Count];
        for (int i = 0; i < Count; i++)
        {
            double sum = 0;
            for (int j = 0; j < Width; j++)
                sum += X[i * Width + j] * coefficients[j];
            predictors[i] = sum;
        }
        return predictors;
    }

    private static int[] StratumOf(IReadOnlyList<string>? strata, string[] names, int count)
    {
        int[] stratumOf = new int[count];
        if (strata is null)
            return stratumOf;
        Dictionary<string, int> index = names.Index().ToDictionary(pair => pair.Item, pair => pair.Index, StringComparer.Ordinal);
        for (int i = 0; i < count; i++)
            stratumOf[i] = index[strata[i]];
        return stratumOf;
    }

    /// <summary>Puts one stratum's rows in the order of their stops.</summary>
    private void SortStops(IReadOnlyList<SurvivalTime> times, int from, int to)
    {
        int[] order = Original[from..to];
        double[] keys = [.. order.Select(row => -times[row].Stop)];
        Array.Sort(keys, order);
        for (int first = 0, last; first < order.Length; first = last)
        {
            for (last = first + 1; last < order.Length && keys[last] == keys[first];)
                last++;
            // Rows that stop together: endings first, else as they came, so that sums do not depend on the sort.
            if (last - first > 1)
                Array.Sort(order, first, last - first, Comparer<int>.Create((a, b) =>
                    times[a].Ended == times[b].Ended ? a.CompareTo(b) : times[b].Ended.CompareTo(times[a].Ended)));
        }
        order.CopyTo(Original, from);
    }

    private void SortStarts(int from, int to)
    {
        double[] keys = [.. Times[from..to].Select(time => -time.Start)];
        int[] order = [.. Enumerable.Range(from, to - from)];
        Array.Sort(keys, order);
        order.CopyTo(ByStart, from);
    }

    private void Take(double[] column, int j)
    {
        Means[j] = column.Average();
        for (int i = 0; i < Count; i++)
            X[i * Width + j] = column[Original[i]] - Means[j];
    }
}
