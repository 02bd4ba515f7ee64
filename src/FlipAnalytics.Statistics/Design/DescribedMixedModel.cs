using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A mixed model fitted through a description.</summary>
/// <param name="Fit">The fit.</param>
/// <param name="Design">What was fitted, with the rows left out.</param>
public sealed record DescribedMixedModel(MixedModelFit Fit, DesignMatrix Design)
{
    /// <summary>Predicts new rows.</summary>
    /// <param name="newRows">The columns of the terms. A random intercept's level that was never fitted, or is not given,
    /// is <see cref="LevelRef.Unseen"/>; nothing else may be missing.</param>
    /// <exception cref="ArgumentException">A column or value is missing, or a category's level was never fitted.</exception>
    public ImmutableArray<MixedPrediction> Predict(DataColumns newRows)
    {
        double[][] x = Design.FixedRowsOf(newRows);
        LevelRef[][] levels = [.. Design.RandomColumns.Select(column => LevelsOf(column, newRows))];
        return [.. x.Select((row, i) => Fit.Predict(row, [.. levels.Select(level => level[i])]))];
    }

    private static LevelRef[] LevelsOf(RandomColumn column, DataColumns newRows) =>
        column.Term.Structure == RandomStructure.RandomWalk
            ? [.. newRows.NumbersOf(column.Term.Name).Select(LevelRef.AtPosition)]
            : [.. column.IndicesOf(newRows).Select(index => index < 0 ? LevelRef.Unseen : LevelRef.Known(index))];
}
