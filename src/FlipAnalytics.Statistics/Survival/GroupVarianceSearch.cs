namespace FlipAnalytics.Statistics;

/// <summary>Finds the group variances at which the restricted Laplace criterion, plus any priors on the log variances,
/// is greatest: BFGS over s = log τ² with an Armijo line search (Nocedal and Wright, Numerical Optimization, chapter 6).
/// A group without prior whose criterion is greater without it has variance exactly zero.</summary>
internal sealed class GroupVarianceSearch
{
    private const int MostSteps = 100;

    // Squared length of the next step in standard errors of the log variances: twice what it could still gain.
    private const double SmallDecrement = 1e-12;

    // A thousandth of a standard error, taken when rounding lets the search come no nearer.
    private const double TolerableDecrement = 1e-6;

    // A group spread of 3 % of the residual scale: below it a group is not worth following downwards, from it one
    // that was dropped is tried again.
    private static readonly double LogNegligibleShare = Math.Log(1e-3);
    private readonly FailureProblem problem;
    private readonly HashSet<int> triedAgain = [];
    private List<int> active;
    private double[] logVariances;
    private LaplaceGradient gradientOf;

    internal GroupVarianceSearch(FailureProblem problem)
    {
        this.problem = problem;
        active = [.. Enumerable.Range(0, problem.Groups.Length)];
        Mode = problem.Mode(active, problem.StartCoefficients, _ => default, problem.StartLogScale);
        gradientOf = new LaplaceGradient(Mode);
        // A fifth of the residual variance to begin with: about where groups that matter at all end up.
        logVariances = [.. active.Select(k => problem.GroupPrior(k)?.Mean ?? 2 * problem.StartLogScale + Math.Log(0.2))];
        Value = Evaluate(Mode, active, logVariances);
        if (active.Count > 0)
        {
            while (!SearchInside() || DropWhatIsBetterWithout() || TryAgainWhatWasDropped())
            {
            }
        }
    }

    /// <summary>The mode at the variances found, over the groups whose variance is not zero.</summary>
    internal PenalisedMode Mode { get; private set; }

    /// <summary>Groups whose variance is not zero, in order.</summary>
    internal IReadOnlyList<int> Active => active;

    /// <summary>Of the active groups.</summary>
    internal ReadOnlySpan<double> LogVariances => logVariances;

    /// <summary>Restricted Laplace criterion with the log densities of the variances' priors.</summary>
    internal double Value { get; private set; }

    /// <summary>The criterion without the variances' priors.</summary>
    internal double Restricted => LaplaceCriterion.Restricted(Mode, logVariances, problem.PriorConstant);

    /// <summary>Times the criterion was computed.</summary>
    internal int Evaluations { get; private set; }

    /// <summary>Newton steps over all evaluations.</summary>
    internal int NewtonIterations { get; private set; }

    /// <summary>Squared length, in standard errors of the log variances, of the step that was no longer taken.</summary>
    internal double Decrement { get; private set; }

    private double LogNegligible =>
        2 * Mode.Parameters[Mode.Likelihood.LogScaleIndex] + LogNegligibleShare;

    private double Evaluate(PenalisedMode mode, List<int> groups, double[] at)
    {
        double prior = 0;
        for (int k = 0; k < at.Length; k++)
        {
            mode.SetGroupVariance(k, Math.Exp(at[k]));
            prior += problem.GroupPrior(groups[k])?.LogDensity(at[k]) ?? 0;
        }

        int before = mode.Iterations;
        mode.Maximise();
        Evaluations++;
        NewtonIterations += mode.Iterations - before;
        return LaplaceCriterion.Restricted(mode, at, problem.PriorConstant) + prior;
    }

    private double[] Gradient()
    {
        double[] gradient = gradientOf.At(logVariances);
        for (int k = 0; k < gradient.Length; k++)
        {
            if (problem.GroupPrior(active[k]) is { } prior)
            {
                gradient[k] -= prior.Precision * (logVariances[k] - prior.Mean);
            }
        }

        return gradient;
    }

    /// <summary>Climbs over the active groups; false when one of them was dropped on the way.</summary>
    private bool SearchInside()
    {
        double[] gradient = Gradient();
        var curvature = new InverseCurvature(InitialScale());
        for (int taken = 0; taken < MostSteps; taken++)
        {
            double[] step = curvature.Step(gradient);
            Decrement = step.Zip(gradient, (a, b) => a * b).Sum();
            if (Decrement < SmallDecrement || !TryClimb(step, gradient))
            {
                return true;
            }

            double[] next = Gradient();
            curvature.Update(step, gradient, next);
            gradient = next;
            if (TryDropVanishing(gradient))
            {
                return false;
            }
        }

        return Decrement < TolerableDecrement ? true : throw new NoEstimateException(
            $"The group variances were not found in {MostSteps} steps. Give priors on their logarithms, or leave a group out.");
    }

    // About half the number of levels is the most information there can be on a log variance.
    private double[] InitialScale() =>
        [.. active.Select(k => 1 / (problem.Groups[k].Levels.Length / 4.0 + (problem.GroupPrior(k)?.Precision ?? 0)))];

    private bool TryClimb(double[] step, double[] gradient)
    {
        double slope = step.Zip(gradient, (a, b) => a * b).Sum();
        double rounding = 1e-12 * (1 + Math.Abs(Value));
        double[] old = logVariances;
        for (int halving = 0; halving < 20; halving++)
        {
            double[] trial = [.. old.Zip(step, (s, d) => Math.Clamp(s + d, -60, 60))];
            double value = Evaluate(Mode, active, trial);
            if (value >= Value + 1e-4 * slope - rounding)
            {
                logVariances = trial;
                Value = value;
                return true;
            }

            slope /= 2;
            for (int k = 0; k < step.Length; k++)
            {
                step[k] /= 2;
            }
        }

        Value = Evaluate(Mode, active, old);
        return false;
    }

    /// <summary>Drops a group that is on its way to zero, as soon as it is better away.</summary>
    private bool TryDropVanishing(double[] gradient)
    {
        double negligible = LogNegligible;
        for (int k = 0; k < active.Count; k++)
        {
            if (gradient[k] < 0 && logVariances[k] < negligible && TryDrop(k))
            {
                return true;
            }
        }

        return false;
    }

    private bool DropWhatIsBetterWithout()
    {
        for (int k = 0; k < active.Count; k++)
        {
            if (TryDrop(k))
            {
                return true;
            }
        }

        return false;
    }

    private bool TryDrop(int position)
    {
        if (problem.GroupPrior(active[position]) is not null)
        {
            return false;
        }

        List<int> rest = [.. active];
        rest.RemoveAt(position);
        return TryGroups(rest, [.. logVariances.Where((_, k) => k != position)], Value);
    }

    // A group may have been dropped while the others' variances were still far from where they ended.
    private bool TryAgainWhatWasDropped()
    {
        for (int group = 0; group < problem.Groups.Length; group++)
        {
            if (active.Contains(group) || !triedAgain.Add(group))
            {
                continue;
            }

            int position = active.Count(k => k < group);
            List<int> more = [.. active];
            more.Insert(position, group);
            if (TryGroups(more, [.. logVariances[..position], LogNegligible, .. logVariances[position..]], Value + 1e-7))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Changes to these groups if the criterion then is at least <paramref name="least"/>.</summary>
    private bool TryGroups(List<int> groups, double[] at, double least)
    {
        FailureLikelihood now = Mode.Likelihood;
        PenalisedMode mode = problem.Mode(groups, Mode.Parameters[..now.CoefficientCount],
            k => active.IndexOf(k) is int place and >= 0
                ? Mode.Parameters.AsMemory(now.GroupStarts[place], problem.Groups[k].Levels.Length)
                : default,
            Mode.Parameters[now.LogScaleIndex]);
        double value = Evaluate(mode, groups, at);
        if (value < least)
        {
            return false;
        }

        active = groups;
        logVariances = at;
        Mode = mode;
        gradientOf = new LaplaceGradient(mode);
        Value = value;
        return true;
    }
}
