namespace FlipAnalytics;

/// <summary>
/// How much of each estimate for a candidate rests on guesses and common practice instead of the log, 0 to 1; 0 for what
/// the owner states.
/// </summary>
internal sealed record GuessShares(double Price, double Hours, double Supplies, double Days)
{
    public static GuessShares Of(FittedModels models, Candidate candidate, DesignValues now) => new(
        candidate.SalePrice is not null ? 0 : models.Price!.GuessShare(now with { Date = models.SaleDate }),
        candidate.Hours is not null ? 0 : models.Hours.GuessShare(now),
        candidate.Supplies is not null ? 0 : models.Supplies?.GuessShare(now) ?? 1,
        models.Days.GuessShare);
}
