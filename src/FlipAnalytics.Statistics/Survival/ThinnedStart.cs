namespace FlipAnalytics.Statistics;

/// <summary>
/// Starting values for a great many rows: the estimates from every sixteenth row, which lie within a few standard errors of
/// those from all, so that few steps over all rows are left to take.
/// </summary>
internal static class ThinnedStart
{
    private const int FewestRows = 200_000;
    private const int Every = 16;

    /// <summary>(β, log σ) from the thinned rows; null where there are few rows, groups, or no estimate from fewer.</summary>
    internal static double[]? TryFind(
        AcceleratedFailureData data, AcceleratedFailureOptions options, int keptColumns, CentredColumns centred)
    {
        if (data.X.Length < FewestRows || !data.Groups.IsDefaultOrEmpty)
            return null;
        try
        {
            var problem = new FailureProblem(Thinned(data), options, centred: centred);
            if (problem.KeptColumns.Length != keptColumns || problem.Centred.IsNone != centred.IsNone)
                return null;
            PenalisedMode mode = problem.Mode([], problem.StartCoefficients, _ => default, problem.StartLogScale);
            mode.Maximise();
            return mode.Parameters;
        }
        catch (NoEstimateException)
        {
            return null;
        }
    }

    private static AcceleratedFailureData Thinned(AcceleratedFailureData data) =>
        new(
            data.CoefficientNames,
            Rows(data.X),
            [.. Rows(data.Spells.AsSpan())],
            [],
            data.Weights is null ? null : Rows(data.Weights))
        {
            Categories = data.Categories.IsDefault
                ? []
                : [.. data.Categories.Select(c => c with { Level = Rows(c.Level) })],
        };

    private static T[] Rows<T>(ReadOnlySpan<T> all)
    {
        var thinned = new T[(all.Length + Every - 1) / Every];
        for (int i = 0; i < thinned.Length; i++)
            thinned[i] = all[i * Every];
        return thinned;
    }

    private static T[] Rows<T>(T[] all) => Rows(all.AsSpan());
}
