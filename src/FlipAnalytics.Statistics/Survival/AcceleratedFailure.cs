using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace FlipAnalytics.Statistics;

/// <summary>Accelerated failure time models, log T = x'β + Σ u + σ e, for censored, interval-censored and late-entered
/// durations, with normally shrunk group effects u (Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data,
/// chapter 3). Without priors and groups the estimates are those of maximum likelihood; with priors they are posterior modes;
/// the variances of group effects maximise the Laplace-approximated marginal likelihood.</summary>
public static class AcceleratedFailure
{
    // Information of a direction as a share of what one spell, ended at the column's far end, would bring. Below it the
    // likelihood is flat there for all that double precision can tell.
    private const double NoInformation = 1e-8;

    /// <summary>Fits the model.</summary>
    /// <exception cref="ArgumentException">Data or priors whose shapes do not fit, or values that are not numbers.</exception>
    /// <exception cref="NoEstimateException">The likelihood has no maximum at finite values.</exception>
    public static AcceleratedFailureFit Fit(AcceleratedFailureData data, AcceleratedFailureOptions options) =>
        FitWith(data, options, inBlocks: true);

    /// <summary>The same, with the curvature as one dense matrix if it may not be taken apart into blocks.</summary>
    internal static AcceleratedFailureFit FitWith(AcceleratedFailureData data, AcceleratedFailureOptions options, bool inBlocks)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(options);
        data.Validate();
        ImmutableArray<string> columns = data.ColumnNames;
        options.Validate(columns.Length, data.Groups.IsDefault ? 0 : data.Groups.Length);
        var problem = new FailureProblem(data, options, inBlocks);
        var search = new GroupVarianceSearch(problem);
        RefuseRunaways(search.Mode, problem.Design, problem.CoefficientNames);
        return Report(problem, search, columns, options.Distribution);
    }

    private static void RefuseRunaways(PenalisedMode mode, DesignTiles design, ImmutableArray<string> names)
    {
        double scale = Math.Exp(mode.Parameters[mode.Likelihood.LogScaleIndex]);
        double[] reach = design.Reach(), pivots = mode.Factor.PivotsOfFixedColumns(mode.Information, names.Length);
        for (int j = 0; j < names.Length; j++)
        {
            if (pivots[j] * scale * scale < NoInformation * reach[j] * reach[j])
            {
                throw new NoEstimateException(
                    $"The coefficient of '{names[j]}' has no finite estimate: the spells that tell it from the columns before it are bounded on one side only, all still running or all ended at some unknown time before a known one, so the likelihood keeps growing as it moves off. Give it a prior, merge it with others or leave it out.");
            }
        }

        if (mode.Likelihood.ScaleIsFree && mode.Factor.LastPivot < NoInformation)
        {
            throw new NoEstimateException("The data say nothing about the scale. Give a prior on the log scale.");
        }
    }

    private static AcceleratedFailureFit Report(
        FailureProblem problem, GroupVarianceSearch search, ImmutableArray<string> columns, FailureDistribution distribution)
    {
        ImmutableArray<string> names = problem.CoefficientNames;
        PenalisedMode mode = search.Mode;
        FailureLikelihood likelihood = mode.Likelihood;
        CurvatureInverse covariance = mode.Factor.Inverse();
        double[] entries = covariance.InLayout(), variances = [.. likelihood.Layout.Diagonal.Select(entry => entries[entry])];
        double[] centred = [.. mode.Parameters.AsSpan(0, names.Length)], given = [.. centred];
        if (!problem.Centred.IsNone)
        {
            List<(int, double)> intercept = problem.Centred.Given(problem.Centred.Intercept);
            given[problem.Centred.Intercept] = intercept.Sum(part => part.Item2 * centred[part.Item1]);
            ReadOnlySpan<(int, double)> row = CollectionsMarshal.AsSpan(intercept);
            variances[problem.Centred.Intercept] = covariance.Form(row, row);
        }

        ImmutableArray<int> starts =
            [.. problem.Groups.Select((_, k) => IndexOf(search.Active, k) is int at and >= 0 ? likelihood.GroupStarts[at] : -1)];
        return new AcceleratedFailureFit
        {
            Distribution = distribution,
            Coefficients = [.. names.Select((name, j) =>
                new FailureTimeCoefficient(name, given[j], Math.Sqrt(variances[j])))],
            DroppedColumns = [.. columns.Where((_, j) => !problem.KeptColumns.Contains(j))],
            Groups = [.. problem.Groups.Select((group, k) => ReportGroup(group, starts[k], search, k, variances))],
            Inverse = covariance,
            Centred = problem.Centred,
            CentredEstimates = centred,
            CovarianceOrder =
            [
                .. names,
                .. search.Active.SelectMany(k => problem.Groups[k].Levels.Select(level => $"{problem.Groups[k].Name}:{level}")),
                .. likelihood.ScaleIsFree ? ["log(scale)"] : Array.Empty<string>(),
            ],
            LogScale = mode.Parameters[likelihood.LogScaleIndex],
            VarianceOfLogScale = likelihood.ScaleIsFree ? variances[^1] : 0,
            LogLikelihood = mode.LogLikelihood,
            MarginalLogLikelihood = LaplaceCriterion.OverEffects(mode, search.LogVariances),
            RestrictedMarginalLogLikelihood = search.Restricted,
            ObservationCount = problem.Rows.Kind.Length,
            EventCount = problem.Rows.EndedCount,
            Convergence = new FailureTimeConvergence(search.NewtonIterations, Math.Sqrt(Math.Max(0, mode.Decrement)),
                problem.Groups.IsEmpty ? 0 : search.Evaluations, Math.Sqrt(search.Decrement)),
            ColumnCount = columns.Length,
            KeptColumns = problem.KeptColumns,
            GroupStarts = starts,
        };
    }

    private static FailureTimeGroup ReportGroup(
        GroupColumn group, int start, GroupVarianceSearch search, int index, double[] variances)
    {
        if (start < 0)
        {
            return new FailureTimeGroup(group.Name, 0, true, [.. group.Levels.Select(level => new FailureTimeLevel(level, 0, 0))]);
        }

        double variance = Math.Exp(search.LogVariances[IndexOf(search.Active, index)]);
        return new FailureTimeGroup(group.Name, variance, false,
        [
            .. group.Levels.Select((level, l) => new FailureTimeLevel(
                level, search.Mode.Parameters[start + l], Math.Sqrt(variances[start + l]))),
        ]);
    }

    private static int IndexOf(IReadOnlyList<int> active, int group)
    {
        for (int k = 0; k < active.Count; k++)
        {
            if (active[k] == group)
            {
                return k;
            }
        }

        return -1;
    }
}
