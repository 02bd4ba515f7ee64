namespace FlipAnalytics;

/// <summary>
/// How much of each estimate for a candidate rests on guesses and common practice instead of the log, 0 to 1; 0 for what
/// the owner states.
/// </summary>
internal sealed record GuessShares(double Price, double Hours, double Supplies, double Days)
{
    public static GuessShares Of(FittedModels models, Candidate candidate)
    {
        PieceFacts facts = PieceFacts.Of(candidate, models.Log);
        var size = models.Rows.Size.Of(facts);
        DateOnly saleDate = Crossing.Later(models.Log.Date, models.LeadTime);
        return new(
            candidate.SalePrice is not null ? 0 : models.Price!.GuessShare(facts, size, saleDate),
            candidate.Hours is not null ? 0 : models.Hours.GuessShare(facts, size, models.Log.Date),
            candidate.Supplies is not null ? 0 : models.Supplies?.GuessShare(facts, size, models.Log.Date) ?? 1,
            models.Days.GuessShare);
    }
}
