using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

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
/// <param name="Variance">Of observed less expected, in the order of the groups.</param>
/// <param name="ChiSquared">The statistic.</param>
/// <param name="DegreesOfFreedom">Groups ever at risk at an ending, less one.</param>
/// <param name="P">The chance of a statistic at least as large if all groups share one curve.</param>
public sealed record LogRank(
    ImmutableArray<LogRankGroup> Groups,
    ImmutableArray<ImmutableArray<double>> Variance,
    double ChiSquared,
    int DegreesOfFreedom,
    double P)
{
    /// <summary>Compares two or more groups.</summary>
    /// <param name="times">The spells.</param>
    /// <param name="groups">The group of each spell.</param>
    /// <param name="strata">The stratum of each spell, within which groups are compared; null for one.</param>
    /// <param name="rho">ρ, 0 or more: 0 for the log-rank test, 1 for Peto and Peto's, which heeds early differences.</param>
    /// <exception cref="ArgumentException">Fewer than two groups, lists of different lengths, a spell that does not stop
    /// after it starts, or no comparison because groups are never at risk together.</exception>
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
        var variance = Matrix<double>.Build.Dense(names.Length, names.Length);
        var rows = times.Select((time, i) =>
            (Time: time, Group: Array.IndexOf(names, groups[i]), Stratum: strata is null ? "" : strata[i]));
        foreach (var stratum in rows.GroupBy(row => row.Stratum))
        {
            RiskRow[][] byGroup =
                [.. names.Select((_, k) => RiskTable.Of(stratum.Where(row => row.Group == k).Select(row => row.Time)))];
            double[][] starts =
                [.. names.Select((_, k) => stratum.Where(row => row.Group == k).Select(row => row.Time.Start).Order().ToArray())];
            AddStratum(RiskTable.Of(stratum.Select(row => row.Time)), byGroup, starts, rho, observed, expected, variance);
        }
        return Result(
            [.. names.Select((name, k) => new LogRankGroup(name, groups.Count(g => g == name), observed[k], expected[k]))],
            variance);
    }

    private static void AddStratum(
        RiskRow[] pooled, RiskRow[][] byGroup, double[][] starts, double rho,
        double[] observed, double[] expected, Matrix<double> variance)
    {
        int[] next = new int[byGroup.Length], entered = new int[byGroup.Length], left = new int[byGroup.Length];
        double survival = 1;
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
            if (ended == 0 || all == 1)
                continue;
            double factor = weight * weight * ended * (all - ended) / (all - 1);
            for (int j = 0; j < share.Length; j++)
            {
                for (int k = 0; k < share.Length; k++)
                    variance[j, k] += factor * share[j] * ((j == k ? 1 : 0) - share[k]);
            }
        }
    }

    private static LogRank Result(ImmutableArray<LogRankGroup> groups, Matrix<double> variance)
    {
        int[] compared = [.. Enumerable.Range(0, groups.Length).Where(k => groups[k].Expected > 0)];
        // The differences sum to 0, so one group is left out of the quadratic form.
        int degrees = compared.Length - 1;
        if (degrees < 1 || variance.FrobeniusNorm() == 0)
            throw new ArgumentException(
                "No spell ended while two groups were at risk, so there is nothing to compare. Wait for more endings.", nameof(groups));
        var difference = Vector<double>.Build.Dense(
            degrees, k => groups[compared[k + 1]].Observed - groups[compared[k + 1]].Expected);
        var inner = Matrix<double>.Build.Dense(degrees, degrees, (j, k) => variance[compared[j + 1], compared[k + 1]]);
        double statistic = difference * inner.Svd().Solve(difference);
        return new(
            groups, [.. variance.EnumerateRows().Select(row => row.ToImmutableArray())],
            statistic, degrees, Tails.UpperChiSquared(statistic, degrees));
    }
}
