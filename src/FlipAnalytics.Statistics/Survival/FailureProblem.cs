using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The checked data and options of one fit, with the columns that are kept, from which modes for any subset
/// of the groups are made.</summary>
internal sealed class FailureProblem
{
    private readonly AcceleratedFailureOptions options;
    private readonly NormalPrior?[] coefficientPriors;
    private readonly LinearPrior? interceptPrior;
    private readonly bool inBlocks;

    /// <param name="data">The rows.</param>
    /// <param name="options">The choices.</param>
    /// <param name="inBlocks">Whether the curvature may be taken apart; else it is one dense matrix.</param>
    /// <param name="centred">Which columns are fitted from their means; null to find out.</param>
    internal FailureProblem(
        AcceleratedFailureData data, AcceleratedFailureOptions options, bool inBlocks = true, CentredColumns? centred = null)
    {
        this.options = options;
        this.inBlocks = inBlocks;
        Groups = data.Groups.IsDefault ? [] : data.Groups;
        Rows = new FailureRows(data.Spells, data.Weights);
        ImmutableArray<string> columns = data.ColumnNames;
        ImmutableArray<int> every = [.. Enumerable.Range(0, columns.Length)];
        NormalPrior?[] priors = [.. every.Select(j => AcceleratedFailureOptions.At(options.CoefficientPriors, j))];
        centred ??= CentredColumns.Of(data);
        var all = new DesignTiles(data, every, centred);
        LeastSquaresStart squares = Start(all, priors, centred);
        if (!centred.IsNone && !squares.IndependentColumns.Contains(centred.Intercept))
        {
            // Without the column of ones nothing takes up the means: the columns stay as they were given.
            centred = CentredColumns.None;
            all = new DesignTiles(data, every, centred);
            squares = Start(all, priors, centred);
        }

        KeptColumns = squares.IndependentColumns;
        Design = KeptColumns.Length == all.ColumnCount ? all : new DesignTiles(data, KeptColumns, centred);
        Centred = centred.Keep(KeptColumns);
        CoefficientNames = [.. KeptColumns.Select(j => columns[j])];
        coefficientPriors = [.. KeptColumns.Select(j => priors[j])];
        interceptPrior = PriorOfIntercept(coefficientPriors, Centred);
        RefuseWithoutEnds();
        double[]? thinned = ThinnedStart.TryFind(data, options, KeptColumns.Length, centred);
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

    /// <summary>Which of the kept columns are fitted from their means.</summary>
    internal CentredColumns Centred { get; }

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
        var likelihood = new FailureLikelihood(Design, Rows, options.Distribution, [.. groups.Select(k => Groups[k])], inBlocks);
        var start = new double[likelihood.ParameterCount];
        var mean = new double[likelihood.ParameterCount];
        var precision = new double[likelihood.ParameterCount];
        coefficients.CopyTo(start, 0);
        for (int k = 0; k < groups.Count; k++)
        {
            effects(groups[k]).CopyTo(start.AsMemory(likelihood.GroupStarts[k]));
        }

        start[likelihood.LogScaleIndex] = logScale;
        for (int j = 0; j < coefficientPriors.Length; j++)
        {
            mean[j] = coefficientPriors[j]?.Mean ?? 0;
            precision[j] = IsLinear(j) ? 0 : coefficientPriors[j]?.Precision ?? 0;
        }

        mean[^1] = ScalePrior?.Mean ?? 0;
        precision[^1] = ScalePrior?.Precision ?? 0;
        return new PenalisedMode(likelihood, CoefficientNames, start, mean, precision, interceptPrior, Floor);
    }

    // The intercept as given is a sum of centred coefficients, and so its prior is one of that sum.
    private static LinearPrior? PriorOfIntercept(NormalPrior?[] priors, CentredColumns centred) =>
        centred.IsNone || priors[centred.Intercept] is not { } prior
            ? null : new(centred.Given(centred.Intercept), prior.Mean, prior.Precision);

    private LeastSquaresStart Start(DesignTiles design, NormalPrior?[] priors, CentredColumns centred) =>
        new(design, Rows, [.. priors.Select((prior, j) => j == centred.Intercept ? null : prior)], PriorOfIntercept(priors, centred));

    private bool IsLinear(int column) => interceptPrior is not null && column == Centred.Intercept;

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
