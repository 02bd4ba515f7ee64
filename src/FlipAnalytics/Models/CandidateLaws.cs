namespace FlipAnalytics;

/// <summary>What the models expect of one candidate.</summary>
/// <param name="Hours">Law of its log hours.</param>
/// <param name="Price">Law of its log sale price; null where nothing tells one.</param>
/// <param name="Supplies">Law of its log cost of supplies; null where nothing tells one.</param>
/// <param name="Days">Law of its days on market.</param>
/// <param name="LogFootprint">Log of the floor it stands on; null where nothing tells it.</param>
/// <param name="Guessed">How much of each rests on guesses.</param>
internal sealed record CandidateLaws(
    LogPrediction Hours, LogPrediction? Price, LogPrediction? Supplies, DaysPrediction Days, double? LogFootprint,
    GuessShares Guessed)
{
    /// <summary>The laws for a candidate; null where neither a model nor the owner tells a sale price.</summary>
    public static CandidateLaws? TryOf(FittedModels models, Candidate candidate)
    {
        if (models.Price is null && candidate.SalePrice is null)
            return null;
        PieceFacts facts = PieceFacts.Of(candidate, models.Log);
        var size = models.Rows.Size.Of(facts);
        DesignValues now = models.ValuesOf(facts, models.Log.Date, 0);
        return new(
            models.Hours.Predict(now, size.Variance),
            PriceOf(models, facts),
            models.Supplies?.Predict(now, size.Variance),
            models.Days.Predict(facts, size, models.Log.Date),
            models.Rows.Size.LogFootprint(facts),
            GuessShares.Of(models, candidate, now));
    }

    /// <summary>The laws once the owner states other hours: only the sale price depends on them.</summary>
    public CandidateLaws WithHoursOf(FittedModels models, Candidate candidate) =>
        this with { Price = PriceOf(models, PieceFacts.Of(candidate, models.Log)) };

    private static LogPrediction? PriceOf(FittedModels models, PieceFacts facts) => models.Price?.Predict(
        models.ValuesOf(facts, models.SaleDate, models.RelativeHours(facts, null).Value),
        models.Rows.Size.Of(facts).Variance);
}
