using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// Days on sale of the compared levels by the two methods that textbooks show: the log-rank test, and Cox's hazard ratios
/// against the level sold most. Both are taken within types, and adjust for nothing else.
/// </summary>
internal sealed class ClassicalTests
{
    private const double RangeLevel = 0.95;

    // Every ratio is estimated beside every other: of a thousand levels nobody reads a million covariances.
    private const int MostRatios = 50;

    private readonly ImmutableArray<string> compared;
    private readonly SurvivalTime[] times;
    private readonly string[] levels;
    private readonly string[]? types;

    public ClassicalTests(GroupModels group, GroupedBy by, ImmutableArray<string> compared)
    {
        this.compared = compared;
        HashSet<string> isCompared = [.. compared];
        DaysScore[] rows = [.. group.Days.Where(row => isCompared.Contains(by.LevelOf(row.Piece)))];
        times = [.. rows.Select(row => row.Time)];
        levels = [.. rows.Select(row => by.LevelOf(row.Piece))];
        types = by == GroupedBy.Type ? null : [.. rows.Select(row => row.Piece.Type)];
    }

    private bool IsComparison => compared.Length > 1 && levels.Distinct().Count() > 1;

    /// <summary>The log-rank test; null where levels were never on sale together.</summary>
    public LogRank? LogRank()
    {
        if (!IsComparison)
            return null;
        try
        {
            return Statistics.LogRank.Test(times, levels, types);
        }
        catch (NoEstimateException)
        {
            // Levels that were never on sale together in one type cannot be compared.
            return null;
        }
    }

    /// <summary>
    /// Hazard ratios against the first level, of the fifty sold most among themselves; none where they have no finite estimate.
    /// </summary>
    public ImmutableArray<LevelHazard> Hazards()
    {
        if (!IsComparison)
            return [];
        HashSet<string> among = [.. compared.Take(MostRatios)];
        int[] rows = [.. Enumerable.Range(0, levels.Length).Where(i => among.Contains(levels[i]))];
        try
        {
            CoxFit fit = CoxRegression.Fit(
                [
                    .. compared.Take(MostRatios).Skip(1).Select(level => new Regressor(
                        level, rows.Select(i => levels[i] == level ? 1.0 : 0.0).ToArray())),
                ],
                [.. rows.Select(i => times[i])],
                types is null ? null : [.. rows.Select(i => types[i])]);
            return
            [
                .. fit.Coefficients.Select(level => new LevelHazard(
                    level.Name, compared[0], level.HazardRatio, level.HazardRatioLimits(RangeLevel).Low,
                    level.HazardRatioLimits(RangeLevel).High)),
            ];
        }
        catch (NoEstimateException)
        {
            return [];
        }
    }
}
