using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>Durations with their covariates, a row a spell or episode.</summary>
/// <param name="CoefficientNames">One name a column of <paramref name="X"/>, unique.</param>
/// <param name="X">Design rows, the intercept's 1 included where there is one.</param>
/// <param name="Spells">The durations, one a row.</param>
/// <param name="Groups">Groupings whose level effects are shrunk; may be empty.</param>
/// <param name="Weights">How often each row counts, 0 or more; null counts every row once.</param>
public sealed record AcceleratedFailureData(
    ImmutableArray<string> CoefficientNames,
    double[][] X,
    ImmutableArray<Spell> Spells,
    ImmutableArray<GroupColumn> Groups,
    double[]? Weights)
{
    /// <summary>Categories as fixed columns: after those of <see cref="X"/> comes one for each level but the first, named
    /// "category:level", 1 where a row has that level. A row of no level counts as of the first. They are held as one index a
    /// row, so that many levels take little memory and time.</summary>
    public ImmutableArray<GroupColumn> Categories { get; init; } = [];

    /// <summary>Names of all columns, those of the categories last.</summary>
    internal ImmutableArray<string> ColumnNames =>
    [
        .. CoefficientNames,
        .. Categories.SelectMany(category => category.Levels.Skip(1).Select(level => $"{category.Name}:{level}")),
    ];

    /// <summary>Refuses shapes that do not fit and values that are not numbers, naming row and column.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Validate()
    {
        int rowCount = X.Length;
        if (rowCount == 0)
        {
            throw new ArgumentException("There are no rows: a duration model needs at least one spell.");
        }

        foreach (GroupColumn category in Categories)
        {
            category.Validate(rowCount);
            if (category.Levels.IsEmpty)
            {
                throw new ArgumentException($"Category '{category.Name}' has no levels; give at least one.");
            }
        }

        if (CoefficientNames.IsDefault || ColumnNames is var names && names.Distinct(StringComparer.Ordinal).Count() != names.Length)
        {
            throw new ArgumentException("Every column of the design needs a name of its own.");
        }

        if (Spells.IsDefault || Spells.Length != rowCount)
        {
            throw new ArgumentException(
                $"There must be one spell a row: {rowCount} design rows, {(Spells.IsDefault ? 0 : Spells.Length)} spells.");
        }

        if (Weights is not null && Weights.Length != rowCount)
        {
            throw new ArgumentException($"There must be one weight a row: {rowCount} rows, {Weights.Length} weights.");
        }

        for (int row = 0; row < rowCount; row++)
        {
            ValidateRow(row);
        }

        if (!Groups.IsDefault)
        {
            foreach (GroupColumn group in Groups)
            {
                group.Validate(rowCount);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void ValidateRow(int row)
    {
        double[] x = X[row];
        if (x.Length != CoefficientNames.Length)
        {
            throw new ArgumentException(
                $"Row {row} of the design has {x.Length} values, but there are {CoefficientNames.Length} columns.");
        }

        for (int j = 0; j < x.Length; j++)
        {
            if (!double.IsFinite(x[j]))
            {
                throw new ArgumentException(
                    $"Row {row}, column '{CoefficientNames[j]}': {x[j]} is not a finite number; leave the row out or fill the cell.");
            }
        }

        if (!(Spells[row].Upper > 0))
        {
            throw new ArgumentException(
                $"Row {row} has an empty spell; make it with Spell.Ended, Running, EndedBefore or EndedBetween.");
        }

        if (Weights is not null && !(Weights[row] >= 0 && double.IsFinite(Weights[row])))
        {
            throw new ArgumentException($"Row {row}: weight {Weights[row]} is not a finite number of 0 or more.");
        }
    }
}
