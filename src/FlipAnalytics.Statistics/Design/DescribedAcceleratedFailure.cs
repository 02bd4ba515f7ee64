using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A duration model fitted through a description.</summary>
/// <param name="Fit">The fit.</param>
/// <param name="Design">What was fitted, with the rows left out.</param>
public sealed record DescribedAcceleratedFailure(AcceleratedFailureFit Fit, DesignMatrix Design)
{
    /// <summary>Locations of log duration of new rows.</summary>
    /// <param name="newRows">The columns of the terms. A random intercept's level that was never fitted, or is not given,
    /// is <see cref="GroupLevel.Unseen"/>; nothing else may be missing.</param>
    /// <exception cref="ArgumentException">A column or value is missing, or a category's level was never fitted.</exception>
    public ImmutableArray<FailurePrediction> Predict(DataColumns newRows)
    {
        double[][] x = Design.FixedRowsOf(newRows);
        int[][] levels = [.. Design.RandomColumns.Select(column => column.IndicesOf(newRows))];
        return
        [
            .. x.Select((row, i) => Fit.Predict(
                row, [.. levels.Select(level => level[i] < 0 ? GroupLevel.Unseen : GroupLevel.Known(level[i]))])),
        ];
    }
}
