namespace FlipAnalytics.Statistics;

/// <summary>One distinct stopping time: nⱼ at risk, dⱼ ended, the rest last seen.</summary>
internal readonly record struct RiskRow(double Time, int AtRisk, int Ended, int Censored);

/// <summary>Counts at every distinct stopping time. A spell last seen at t is at risk at t (endings come first); one that
/// came under observation at t is not.</summary>
internal static class RiskTable
{
    public static RiskRow[] Of(IEnumerable<SurvivalTime> times)
    {
        SurvivalTime[] byStop = [.. times.OrderBy(time => time.Stop)];
        double[] starts = [.. byStop.Select(time => time.Start).Order()];
        List<RiskRow> table = [];
        int stopped = 0, started = 0;
        while (stopped < byStop.Length)
        {
            double t = byStop[stopped].Stop;
            while (started < starts.Length && starts[started] < t)
                started++;
            int atRisk = started - stopped, tied = 0, ended = 0;
            for (; stopped + tied < byStop.Length && byStop[stopped + tied].Stop == t; tied++)
                ended += byStop[stopped + tied].Ended ? 1 : 0;
            table.Add(new(t, atRisk, ended, tied - ended));
            stopped += tied;
        }
        return [.. table];
    }
}
