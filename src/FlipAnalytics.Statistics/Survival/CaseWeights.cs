namespace FlipAnalytics.Statistics;

/// <summary>How many alike spells each spell stands for. One of weight 0 stands for none and takes no part.</summary>
internal static class CaseWeights
{
    /// <summary>Refuses weights that do not fit the spells, are negative or not finite, or are all 0.</summary>
    public static void Refuse(IReadOnlyList<SurvivalTime> times, ReadOnlySpan<double> weights)
    {
        if (weights.Length != times.Count)
            throw new ArgumentException(
                $"There are {times.Count} spells and {weights.Length} weights; each spell needs one.", nameof(weights));
        GivenNumbers.RefuseNegative("Weight", weights, nameof(weights));
        if (weights.IndexOfAnyExcept(0.0) < 0)
            throw new ArgumentException("All weights are 0; at least one must be above.", nameof(weights));
    }

    /// <summary>The spells that count, and their weights.</summary>
    public static (SurvivalTime[] Times, double[] Weights) Counting(IReadOnlyList<SurvivalTime> times, ReadOnlySpan<double> weights)
    {
        Refuse(times, weights);
        double[] all = weights.ToArray();
        int[] counting = [.. Enumerable.Range(0, all.Length).Where(i => all[i] > 0)];
        return ([.. counting.Select(i => times[i])], [.. counting.Select(i => all[i])]);
    }

    /// <summary>Weights at each time of a table of the same spells. Those at risk are added up from the last stop backwards, so
    /// that few left at risk are not the difference of large sums.</summary>
    public static RiskWeight[] At(RiskRow[] table, SurvivalTime[] times, double[] weights)
    {
        int[] byStop = [.. Enumerable.Range(0, times.Length).OrderByDescending(i => times[i].Stop)];
        int[] byStart = [.. Enumerable.Range(0, times.Length).OrderByDescending(i => times[i].Start)];
        RiskWeight[] at = new RiskWeight[table.Length];
        double stopping = 0, notYetStarted = 0;
        int stopped = 0, started = 0;
        for (int j = table.Length - 1; j >= 0; j--)
        {
            double ended = 0, censored = 0;
            for (; stopped < byStop.Length && times[byStop[stopped]].Stop == table[j].Time; stopped++)
            {
                double weight = weights[byStop[stopped]];
                stopping += weight;
                ended += times[byStop[stopped]].Ended ? weight : 0;
                censored += times[byStop[stopped]].Ended ? 0 : weight;
            }
            for (; started < byStart.Length && times[byStart[started]].Start >= table[j].Time; started++)
                notYetStarted += weights[byStart[started]];
            // Where all at risk end, they weigh the same to the last digit, and the curve falls to 0.
            at[j] = table[j].Ended == table[j].AtRisk ? new(ended, ended, 0) : new(stopping - notYetStarted, ended, censored);
        }
        return at;
    }
}
