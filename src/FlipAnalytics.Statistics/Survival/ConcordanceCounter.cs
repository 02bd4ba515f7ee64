namespace FlipAnalytics.Statistics;

/// <summary>Summed weights of the rows a row makes pairs with.</summary>
internal struct PairCounts
{
    public double Concordant;
    public double Discordant;
    public double Tied;
}

/// <summary>Summed weights by rank of score, in two arrays: one of each rank, one that answers sums below a rank in log n
/// steps; Fenwick (1994), Softw. Pract. Exp. 24, 327–336.</summary>
internal sealed class RankWeights(int ranks)
{
    private readonly double[] own = new double[ranks];
    private readonly double[] tree = new double[ranks + 1];
    private double total;

    public void Add(int rank, double weight)
    {
        own[rank] += weight;
        total += weight;
        for (int i = rank + 1; i < tree.Length; i += i & -i)
            tree[i] += weight;
    }

    public (double Below, double Equal, double Above) Around(int rank)
    {
        double below = 0;
        for (int i = rank; i > 0; i -= i & -i)
            below += tree[i];
        return (below, own[rank], total - below - own[rank]);
    }
}

/// <summary>Walks through one stratum from the latest stop to the first and notes, for every row, the weights of the pairs
/// it is part of: as the one that ended first, and as the one that was known to last longer.</summary>
internal sealed class ConcordanceCounter
{
    private readonly CoxRows rows;
    private readonly int from;
    private readonly int to;
    private readonly PairCounts[] influence;
    private readonly int[] rank;
    private readonly RankWeights atRisk;
    private readonly RankWeights ended;

    public ConcordanceCounter(CoxRows rows, double[] scores, int from, int to, PairCounts[] influence)
    {
        (this.rows, this.from, this.to, this.influence) = (rows, from, to, influence);
        double[] sorted = scores[from..to];
        int[] order = [.. Enumerable.Range(0, to - from)];
        Array.Sort(sorted, order);
        rank = new int[order.Length];
        for (int i = 1; i < order.Length; i++)
            rank[order[i]] = rank[order[i - 1]] + (sorted[i] == sorted[i - 1] ? 0 : 1);
        int ranks = rank[order[^1]] + 1;
        atRisk = new(ranks);
        ended = new(ranks);
    }

    public void Count()
    {
        int gone = from;
        for (int first = from, last; first < to; first = last)
        {
            double time = rows.Times[first].Stop;
            int censored = first;
            for (last = first; last < to && rows.Times[last].Stop == time; last++)
                censored += rows.Times[last].Ended ? 1 : 0;
            // A row last seen at t outlasts those that ended at t.
            for (int i = censored; i < last; i++)
                Enter(i);
            if (censored == first)
                continue;
            for (; gone < to && rows.Times[rows.ByStart[gone]].Start >= time; gone++)
                Leave(rows.ByStart[gone]);
            for (int i = first; i < censored; i++)
                EndFirst(i);
            for (int i = first; i < censored; i++)
                ended.Add(rank[i - from], rows.Weight[i]);
            for (int i = first; i < censored; i++)
                Enter(i);
        }
        for (; gone < to; gone++)
            Outlast(rows.ByStart[gone], 1);
    }

    private void EndFirst(int i)
    {
        (double below, double equal, double above) = atRisk.Around(rank[i - from]);
        influence[i].Concordant += below;
        influence[i].Discordant += above;
        influence[i].Tied += equal;
    }

    // A row outlasts the endings between its start and its stop: those seen when it leaves, less those seen when it came.
    private void Enter(int i)
    {
        Outlast(i, -1);
        atRisk.Add(rank[i - from], rows.Weight[i]);
    }

    private void Leave(int i)
    {
        Outlast(i, 1);
        atRisk.Add(rank[i - from], -rows.Weight[i]);
    }

    private void Outlast(int i, int sign)
    {
        (double below, double equal, double above) = ended.Around(rank[i - from]);
        influence[i].Concordant += sign * above;
        influence[i].Discordant += sign * below;
        influence[i].Tied += sign * equal;
    }
}
