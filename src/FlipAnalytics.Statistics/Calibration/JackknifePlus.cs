namespace FlipAnalytics.Statistics;

/// <summary>Prediction ranges from residuals of fits that did not see the row, which also allow for the fit's own
/// instability: Barber, Candès, Ramdas and Tibshirani (2021), Ann. Stat. 49, 486–507. At least 2 level − 1 is guaranteed
/// for exchangeable rows; about the level is usual.</summary>
public static class JackknifePlus
{
    /// <summary>From the ⌊(n + 1)(1 − level)⌋-th smallest of μ₋ᵢ(x) − Rᵢ to the ⌈(n + 1) level⌉-th smallest of
    /// μ₋ᵢ(x) + Rᵢ.</summary>
    /// <param name="predictionsWithoutRow">μ₋ᵢ(x): what the fit without row i predicts for the new row; finite.</param>
    /// <param name="absoluteResiduals">Rᵢ = |yᵢ − μ₋ᵢ(xᵢ)|; finite, 0 or more.</param>
    /// <param name="level">Between 0 and 1; below a half nothing is guaranteed and the range may be empty.</param>
    /// <exception cref="ArgumentException">Lists of different lengths, a number that is not finite, a negative residual, or an
    /// empty range.</exception>
    public static Limits Range(
        ReadOnlySpan<double> predictionsWithoutRow, ReadOnlySpan<double> absoluteResiduals, double level)
    {
        int n = predictionsWithoutRow.Length;
        if (absoluteResiduals.Length != n)
            throw new ArgumentException(
                $"There are {n} predictions and {absoluteResiduals.Length} residuals; each row needs one of each.",
                nameof(absoluteResiduals));
        GivenNumbers.RefuseNotFinite("Prediction", predictionsWithoutRow, nameof(predictionsWithoutRow));
        GivenNumbers.RefuseNegative("Absolute residual", absoluteResiduals, nameof(absoluteResiduals));
        double[] low = new double[n], high = new double[n];
        for (int i = 0; i < n; i++)
        {
            low[i] = predictionsWithoutRow[i] - absoluteResiduals[i];
            high[i] = predictionsWithoutRow[i] + absoluteResiduals[i];
        }
        Limits range = new(
            ConformalRank.Smallest(low, ConformalRank.Lower(n, level)),
            ConformalRank.Smallest(high, ConformalRank.Upper(n, level)));
        return range.Low <= range.High ? range : throw new ArgumentException(
            $"At a level of {level} the lower limit, {range.Low}, lies above the upper, {range.High}: the range is empty, as may be below a level of a half. Ask for a half or more.",
            nameof(level));
    }

    /// <summary>CV+: the same with one fit a fold, each made without the rows of that fold.</summary>
    /// <param name="predictionsWithoutFold">What each fold's fit predicts for the new row.</param>
    /// <param name="folds">The fold of each row, counted from 0.</param>
    /// <param name="absoluteResiduals">Of each row, by its fold's fit.</param>
    /// <param name="level">Between 0 and 1.</param>
    /// <exception cref="ArgumentException">As <see cref="Range"/>, or a fold without a prediction.</exception>
    public static Limits CrossValidatedRange(
        ReadOnlySpan<double> predictionsWithoutFold,
        ReadOnlySpan<int> folds,
        ReadOnlySpan<double> absoluteResiduals,
        double level)
    {
        GivenNumbers.RefuseNotFinite("The prediction without fold", predictionsWithoutFold, nameof(predictionsWithoutFold));
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
