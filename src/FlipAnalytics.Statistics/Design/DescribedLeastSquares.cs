using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A least squares fit made through a description.</summary>
/// <param name="Fit">The fit.</param>
/// <param name="Design">What was fitted, with the rows left out.</param>
public sealed record DescribedLeastSquares(LinearFit Fit, DesignMatrix Design)
{
    /// <summary>Predicts new rows.</summary>
    /// <param name="newRows">The columns of the terms, nothing missing.</param>
    /// <param name="level">Of the intervals, between 0 and 1.</param>
    /// <exception cref="ArgumentException">A column or value is missing, or a category's level was never fitted.</exception>
    public ImmutableArray<LinearPrediction> Predict(DataColumns newRows, double level = 0.95) =>
        LinearPrediction.Of(Fit, Design.ColumnsOf(newRows), level);
}
