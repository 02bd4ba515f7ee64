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
        PieceFacts facts = CandidateInputs.Facts(models, candidate);
        var size = models.Rows.Size.Of(facts);
        DesignValues now = models.ValuesOf(facts, models.Log.Date, 0);
        return new(
            models.Hours.Predict(now, size.Variance, Unstated.NoLess),
            // At usual hours: what stated hours change of it, the forecast tells.
            models.Price?.Predict(now with { Date = models.SaleDate }, size.Variance, Unstated.NoMore),
            models.Supplies?.Predict(now, size.Variance, Unstated.NoLess),
            models.Days.Predict(facts, size, models.Log.Date),
            models.Rows.Size.LogFootprint(facts),
            GuessShares.Of(models, candidate, now));
    }
}
