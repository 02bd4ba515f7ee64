namespace FlipAnalytics.Statistics;

/// <summary>Walks through the event times from the last to the first, stratum by stratum: rows come in at their stop and go
/// out at their start, so that a whole walk costs one addition and at most one subtraction a row.</summary>
internal static class RiskSweep
{
    // Subtraction leaves rounding errors of the size of what was taken away; past this loss the sums are made anew.
    private const double Loss = 1e-2;

    /// <summary>Visits every event time.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="risks">Weight × exp(xᵀβ) of each row.</param>
    /// <param name="order">Moments needed, 0 to 2.</param>
    /// <param name="visit">Sees the risk set, which is reused.</param>
    public static void Run(CoxRows rows, double[] risks, int order, Action<RiskSet> visit)
    {
        RiskSet risk = new(rows.Width, order);
        for (int stratum = 0; stratum < rows.Strata.Length; stratum++)
        {
            Array.Clear(risk.All);
            risk.Stratum = stratum;
            Walk(rows, risks, risk, rows.StratumStart[stratum], rows.StratumStart[stratum + 1], visit);
        }
    }

    private static void Walk(CoxRows rows, double[] risks, RiskSet risk, int from, int to, Action<RiskSet> visit)
    {
        int added = from, gone = from;
        double largest = 0;
        while (added < to)
        {
            double time = rows.Times[added].Stop;
            int first = added;
            bool ends = rows.Times[added].Ended;
            if (ends)
                BeginEvent(risk, time, first);
            for (; added < to && rows.Times[added].Stop == time; added++)
            {
                risk.Add(risk.All, rows.Row(added), risks[added]);
                if (rows.Times[added].Ended)
                {
                    risk.Add(risk.Ending, rows.Row(added), risks[added]);
                    risk.EndingCount++;
                    risk.EndingWeight += rows.Weight[added];
                }
            }
            largest = Math.Max(largest, risk.All[0]);
            if (!ends)
                continue;
            for (; gone < to && rows.Times[rows.ByStart[gone]].Start >= time; gone++)
                risk.Add(risk.All, rows.Row(rows.ByStart[gone]), -risks[rows.ByStart[gone]]);
            if (gone > from && risk.All[0] < Loss * largest)
                largest = Anew(rows, risks, risk, from, added);
            visit(risk);
        }
    }

    private static void BeginEvent(RiskSet risk, double time, int first)
    {
        Array.Clear(risk.Ending);
        risk.Time = time;
        risk.First = first;
        risk.EndingCount = 0;
        risk.EndingWeight = 0;
    }

    private static double Anew(CoxRows rows, double[] risks, RiskSet risk, int from, int added)
    {
        Array.Clear(risk.All);
        for (int i = from; i < added; i++)
        {
            if (rows.Times[i].Start < risk.Time)
                risk.Add(risk.All, rows.Row(i), risks[i]);
        }
        return risk.All[0];
    }
}
