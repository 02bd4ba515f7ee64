using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The checked data and options of one fit, with the columns that are kept, from which modes for any subset
/// of the groups are made.</summary>
internal sealed class FailureProblem
{
    private readonly AcceleratedFailureOptions options;
    private readonly NormalPrior?[] coefficientPriors;

    internal FailureProblem(AcceleratedFailureData data, AcceleratedFailureOptions options)
    {
        this.options = options;
        Groups = data.Groups.IsDefault ? [] : data.Groups;
        Rows = new FailureRows(data.Spells, data.Weights);
        ImmutableArray<string> columns = data.ColumnNames;
        var all = new DesignTiles(data, [.. Enumerable.Range(0, columns.Length)]);
        var priors = Enumerable.Range(0, all.ColumnCount)
            .Select(j => AcceleratedFailureOptions.At(options.CoefficientPriors, j)).ToArray();
        var squares = new LeastSquaresStart(all, Rows, priors);
        KeptColumns = squares.IndependentColumns;
        Design = KeptColumns.Length == all.ColumnCount ? all : new DesignTiles(data, KeptColumns);
        CoefficientNames = [.. KeptColumns.Select(j => columns[j])];
        coefficientPriors = [.. KeptColumns.Select(j => priors[j])];
        RefuseWithoutEnds();
        double[]? thinned = ThinnedStart.TryFind(data, options, KeptColumns.Length);
        StartCoefficients = thinned is null ? squares.Coefficients : thinned[..KeptColumns.Length];
        StartLogScale = options.Distribution == FailureDistribution.Exponential
            ? 0
            : thinned?[^1] ?? options.LogScalePrior?.Mean ?? squares.LogScale;
    }

    internal FailureRows Rows { get; }

    internal DesignTiles Design { get; }

    internal ImmutableArray<GroupColumn> Groups { get; }

    /// <summary>Indices of the columns that do not repeat earlier ones.</summary>
    internal ImmutableArray<int> KeptColumns { get; }

    /// <summary>Of the kept columns.</summary>
    internal ImmutableArray<string> CoefficientNames { get; }

    internal double[] StartCoefficients { get; }

    internal double StartLogScale { get; }

    internal NormalPrior? GroupPrior(int group) => AcceleratedFailureOptions.At(options.LogGroupVariancePriors, group);

    /// <summary>Constants of the priors of β and log σ, which the penalised likelihood leaves out.</summary>
    internal double PriorConstant =>
        coefficientPriors.Sum(prior => prior?.LogDensity(prior.Mean) ?? 0)
        + (ScalePrior is { } scale ? scale.LogDensity(scale.Mean) : 0);

    private NormalPrior? ScalePrior =>
        options.Distribution == FailureDistribution.Exponential ? null : options.LogScalePrior;

    private ScaleFloor? Floor =>
        options.ScaleFloor is { } floor && options.Distribution != FailureDistribution.Exponential
            ? new ScaleFloor(Math.Log(floor)) : null;

    /// <summary>A mode over these groups' effects, not yet sought, starting from these values by group.</summary>
    internal PenalisedMode Mode(IReadOnlyList<int> groups, double[] coefficients, Func<int, ReadOnlyMemory<double>> effects, double logScale)
    {
        var likelihood = new FailureLikelihood(Design, Rows, options.Distribution, [.. groups.Select(k => Groups[k])]);
        var start = new double[likelihood.Size];
        var mean = new double[likelihood.Size];
        var precision = new double[likelihood.Size];
        coefficients.CopyTo(start, 0);
        for (int k = 0; k < groups.Count; k++)
        {
            effects(groups[k]).CopyTo(start.AsMemory(likelihood.GroupStarts[k]));
        }

        start[likelihood.LogScaleIndex] = logScale;
        for (int j = 0; j < coefficientPriors.Length; j++)
        {
            mean[j] = coefficientPriors[j]?.Mean ?? 0;
            precision[j] = coefficientPriors[j]?.Precision ?? 0;
        }

        mean[^1] = ScalePrior?.Mean ?? 0;
        precision[^1] = ScalePrior?.Precision ?? 0;
        return new PenalisedMode(likelihood, CoefficientNames, start, mean, precision, Floor);
    }

    private void RefuseWithoutEnds()
    {
        if (Rows.EndedCount > 0)
        {
            return;
        }

        if (coefficientPriors.All(prior => prior is null)
            || (options.Distribution != FailureDistribution.Exponential && ScalePrior is null))
        {
            throw new NoEstimateException(
                $"None of the {Rows.Kind.Length} spells has ended, so the longer the durations are taken to be, the more likely the data: no finite estimate exists. Give priors on the intercept and on the log scale, or wait for a first end.");
        }
    }
}
