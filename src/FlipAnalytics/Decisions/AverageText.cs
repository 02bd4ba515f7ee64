namespace FlipAnalytics;

/// <summary>
/// What to say where the verdict and the chance of the wage pull apart: the verdict follows the average over many such
/// pieces, and a few very good or very bad ones may carry it.
/// </summary>
public static class AverageText
{
    private const decimal Half = 0.5m;

    /// <summary>The sentence; null where the two agree.</summary>
    /// <param name="decision">The answer.</param>
    public static string? Of(PurchaseDecision decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return decision switch
        {
            { Verdict: Verdict.Buy, ChanceOfTargetWage: < Half } =>
                "It is the average that pays: fewer than half of such pieces earn your wage, and the good ones make up for the rest.",
            { Verdict: Verdict.Leave, ChanceOfTargetWage: > Half } =>
                "More than half of such pieces would earn it, but the others lose more than those gain: on average it does not pay.",
            _ => null,
        };
    }

    /// <summary>The same as the end of a sentence that has told the chance; empty where the two agree.</summary>
    /// <param name="decision">The answer.</param>
    public static string Ending(PurchaseDecision decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return Of(decision) is null ? ""
            : decision.Verdict == Verdict.Buy ? ": it is the average that pays"
            : ", but on average it does not pay";
    }
}
