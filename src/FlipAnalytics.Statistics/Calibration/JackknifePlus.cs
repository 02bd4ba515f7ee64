namespace FlipAnalytics.Statistics;

/// <summary>Prediction ranges from residuals of fits that did not see the row, which also allow for the fit's own
/// instability: Barber, Candès, Ramdas and Tibshirani (2021), Ann. Stat. 49, 486–507. At least 2 level − 1 is guaranteed
/// for exchangeable rows; about the level is usual.</summary>
public static class JackknifePlus
{
    /// <summary>From the ⌊(n + 1)(1 − level)⌋-th smallest of μ₋ᵢ(x) − Rᵢ to the ⌈(n + 1) level⌉-th smallest of
    /// μ₋ᵢ(x) + Rᵢ.</summary>
    /// <param name="predictionsWithoutRow">μ₋ᵢ(x): what the fit without row i predicts for the new row.</param>
    /// <param name="absoluteResiduals">Rᵢ = |yᵢ − μ₋ᵢ(xᵢ)|.</param>
    /// <param name="level">Between 0 and 1.</param>
    /// <exception cref="ArgumentException">Lists of different lengths.</exception>
    public static Limits Range(
        ReadOnlySpan<double> predictionsWithoutRow, ReadOnlySpan<double> absoluteResiduals, double level)
    {
        int n = predictionsWithoutRow.Length;
        if (absoluteResiduals.Length != n)
            throw new ArgumentException(
                $"There are {n} predictions and {absoluteResiduals.Length} residuals; each row needs one of each.",
                nameof(absoluteResiduals));
        double[] low = new double[n], high = new double[n];
        for (int i = 0; i < n; i++)
        {
            low[i] = predictionsWithoutRow[i] - absoluteResiduals[i];
            high[i] = predictionsWithoutRow[i] + absoluteResiduals[i];
        }
        return new(
            ConformalRank.Smallest(low, ConformalRank.Lower(n, level)),
            ConformalRank.Smallest(high, ConformalRank.Upper(n, level)));
    }

    /// <summary>CV+: the same with one fit a fold, each made without the rows of that fold.</summary>
    /// <param name="predictionsWithoutFold">What each fold's fit predicts for the new row.</param>
    /// <param name="folds">The fold of each row, counted from 0.</param>
    /// <param name="absoluteResiduals">Of each row, by its fold's fit.</param>
    /// <param name="level">Between 0 and 1.</param>
    /// <exception cref="ArgumentException">Lists of different lengths, or a fold without a prediction.</exception>
    public static Limits CrossValidatedRange(
        ReadOnlySpan<double> predictionsWithoutFold,
        ReadOnlySpan<int> folds,
        ReadOnlySpan<double> absoluteResiduals,
        double level)
    {
        double[] byRow = new double[folds.Length];
        for (int i = 0; i < byRow.Length; i++)
        {
            if (folds[i] < 0 || folds[i] >= predictionsWithoutFold.Length)
                throw new ArgumentException(
                    $"Row {i} is in fold {folds[i]}; there are predictions for folds 0 to {predictionsWithoutFold.Length - 1}.",
                    nameof(folds));
            byRow[i] = predictionsWithoutFold[folds[i]];
        }
        return Range(byRow, absoluteResiduals, level);
    }
}
