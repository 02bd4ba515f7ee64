using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>One group of a log-rank test.</summary>
/// <param name="Name">The group.</param>
/// <param name="Count">Its spells.</param>
/// <param name="Observed">Its endings, each times its weight.</param>
/// <param name="Expected">What its share of the spells at risk would have had; below Observed where spells end early.</param>
public sealed record LogRankGroup(string Name, int Count, double Observed, double Expected);

/// <summary>A test that groups share one survival curve: Mantel (1966), Cancer Chemother. Rep. 50, 163–170; with weights
/// Ŝ(t−)^ρ of Harrington and Fleming (1982), Biometrika 69, 553–566. Checked against R's <c>survdiff</c>.</summary>
/// <param name="Groups">In ordinal order of their names.</param>
/// <param name="ChiSquared">The statistic.</param>
/// <param name="DegreesOfFreedom">Groups ever at risk at an ending, less one.</param>
/// <param name="P">The chance of a statistic at least as large if all groups share one curve.</param>
public sealed record LogRank(
    ImmutableArray<LogRankGroup> Groups,
    double ChiSquared,
    int DegreesOfFreedom,
    double P)
{
    private Lazy<ImmutableArray<ImmutableArray<double>>> variance = new([]);

    /// <summary>Of observed less expected, in the order of the groups; made when it is first asked for.</summary>
    public ImmutableArray<ImmutableArray<double>> Variance => variance.Value;

    /// <summary>Compares two or more groups.</summary>
    /// <param name="times">The spells.</param>
    /// <param name="groups">The group of each spell.</param>
    /// <param name="strata">The stratum of each spell, within which groups are compared; null for one.</param>
    /// <param name="rho">ρ, 0 or more: 0 for the log-rank test, 1 for Peto and Peto's, which heeds early differences.</param>
    /// <exception cref="ArgumentException">Fewer than two groups, lists of different lengths, or a spell that does not stop
    /// after it starts.</exception>
    /// <exception cref="NoEstimateException">Groups are never at risk together, or only when all at risk end at once.</exception>
    public static LogRank Test(
        IReadOnlyList<SurvivalTime> times,
        IReadOnlyList<string> groups,
        IReadOnlyList<string>? strata = null,
        double rho = 0)
    {
        SurvivalTime.Refuse(times);
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentOutOfRangeException.ThrowIfNegative(rho);
        if (groups.Count != times.Count || (strata is not null && strata.Count != times.Count))
            throw new ArgumentException(
                $"There are {times.Count} spells, {groups.Count} groups and {strata?.Count ?? times.Count} strata; each spell needs one of each.");
        string[] names = [.. groups.Distinct().Order(StringComparer.Ordinal)];
        if (names.Length < 2)
            throw new ArgumentException($"All spells are in group '{names[0]}'; a comparison needs two.", nameof(groups));

        double[] observed = new double[names.Length], expected = new double[names.Length];
        var variance = new LogRankVariance(names.Length);
        bool met = false;
        var indices = names.Index().ToDictionary(name => name.Item, name => name.Index);
        var rows = times.Select((time, i) => (Time: time, Group: indices[groups[i]], Stratum: strata is null ? "" : strata[i]));
        foreach (var stratum in rows.GroupBy(row => row.Stratum))
        {
            var members = stratum.ToLookup(row => row.Group, row => row.Time);
            RiskRow[][] byGroup = [.. names.Select((_, k) => RiskTable.Of(members[k]))];
            double[][] starts = [.. names.Select((_, k) => members[k].Select(time => time.Start).Order().ToArray())];
            met |= AddStratum(RiskTable.Of(stratum.Select(row => row.Time)), byGroup, starts, rho, observed, expected, variance);
        }

        var counts = groups.CountBy(group => group).ToDictionary();
        return Result(
            [.. names.Select((name, k) => new LogRankGroup(name, counts[name], observed[k], expected[k]))], variance, met);
    }

    /// <summary>Whether a spell ended while two groups were at risk.</summary>
    private static bool AddStratum(
        RiskRow[] pooled, RiskRow[][] byGroup, double[][] starts, double rho,
        double[] observed, double[] expected, LogRankVariance variance)
    {
        int[] next = new int[byGroup.Length], entered = new int[byGroup.Length], left = new int[byGroup.Length];
        double survival = 1;
        bool met = false;
        foreach (RiskRow row in pooled)
        {
            double weight = Math.Pow(survival, rho), all = row.AtRisk, ended = row.Ended;
            double[] share = new double[byGroup.Length];
            for (int k = 0; k < byGroup.Length; k++)
            {
                while (entered[k] < starts[k].Length && starts[k][entered[k]] < row.Time)
                    entered[k]++;
                share[k] = (entered[k] - left[k]) / all;
                expected[k] += weight * ended * share[k];
                if (next[k] < byGroup[k].Length && byGroup[k][next[k]].Time == row.Time)
                {
                    RiskRow own = byGroup[k][next[k]++];
                    observed[k] += weight * own.Ended;
                    left[k] += own.Ended + own.Censored;
                }
            }
            survival *= 1 - ended / all;
            met = met || (ended > 0 && share.Count(part => part > 0) > 1);
            if (ended == 0 || all == 1)
                continue;
            variance.Add(weight * weight * ended * (all - ended) / (all - 1), share);
        }

        return met;
    }

    private static LogRank Result(ImmutableArray<LogRankGroup> groups, LogRankVariance variance, bool met)
    {
        int[] compared = [.. Enumerable.Range(0, groups.Length).Where(k => groups[k].Expected > 0)];
        int degrees = compared.Length - 1;
        if (degrees < 1 || (variance.IsZero && !met))
            throw new NoEstimateException(
                "No spell ended while two groups were at risk, so there is nothing to compare. Wait for more endings.");
        if (variance.IsZero)
            throw new NoEstimateException(
                "Whenever a spell ended while two groups were at risk, all spells at risk ended with it, so nothing tells which group ends sooner. Give the times in a finer unit, or wait for more spells.");
        double statistic = variance.Form(compared, [.. groups.Select(group => group.Observed - group.Expected)]);
        return new(groups, statistic, degrees, Tails.UpperChiSquared(statistic, degrees)) { variance = new(variance.Whole) };
    }
}
