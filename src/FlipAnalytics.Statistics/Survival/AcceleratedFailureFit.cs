using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace FlipAnalytics.Statistics;

/// <summary>A fitted accelerated failure time model. With groups, variances and covariances take the estimated group
/// variances as known.</summary>
public sealed record AcceleratedFailureFit
{
    private readonly Lazy<ImmutableArray<ImmutableArray<double>>> covariance;

    internal AcceleratedFailureFit() => covariance = new(() =>
    [
        .. CovarianceOrder.Select((_, row) => CovarianceOrder.Select((_, column) => Inverse.Form(
            CollectionsMarshal.AsSpan(Centred.Given(row)), CollectionsMarshal.AsSpan(Centred.Given(column)))).ToImmutableArray()),
    ]);

    /// <summary>Law of the duration.</summary>
    public required FailureDistribution Distribution { get; init; }

    /// <summary>The kept columns' coefficients, in column order.</summary>
    public required ImmutableArray<FailureTimeCoefficient> Coefficients { get; init; }

    /// <summary>Columns left out because earlier ones reproduce them.</summary>
    public required ImmutableArray<string> DroppedColumns { get; init; }

    /// <summary>The groupings, in the order given; empty without any.</summary>
    public required ImmutableArray<FailureTimeGroup> Groups { get; init; }

    /// <summary>Inverse of the observed information (of the penalised likelihood where there are priors or groups). The whole
    /// matrix is made when it is first asked for.</summary>
    public ImmutableArray<ImmutableArray<double>> Covariance => covariance.Value;

    /// <summary>What the rows of <see cref="Covariance"/> are: the kept columns, then "group:level" for every level of every
    /// group whose variance is not zero, then "log(scale)" unless the scale is held.</summary>
    public required ImmutableArray<string> CovarianceOrder { get; init; }

    /// <summary>Logarithm of <see cref="Scale"/>.</summary>
    public required double LogScale { get; init; }

    /// <summary>σ in log T = location + σ e; 1 for the exponential distribution.</summary>
    public double Scale => Math.Exp(LogScale);

    /// <summary>Variance of the estimated log scale; 0 where it is held.</summary>
    public required double VarianceOfLogScale { get; init; }

    /// <summary>Log-likelihood of the durations themselves, with all constants, at the estimates and effects; no priors.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Log-likelihood at the estimated coefficients and scale with the group effects integrated out by Laplace's
    /// approximation; equal to <see cref="LogLikelihood"/> without groups.</summary>
    public required double MarginalLogLikelihood { get; init; }

    /// <summary>Laplace's approximation to the log of the likelihood integrated over coefficients, effects and log scale,
    /// flat where no prior is given: what the group variances maximise. Compare it between fits with the same columns only.</summary>
    public required double RestrictedMarginalLogLikelihood { get; init; }

    /// <summary>Rows.</summary>
    public required int ObservationCount { get; init; }

    /// <summary>Rows that say that a spell ended, at a known time or within limits.</summary>
    public required int EventCount { get; init; }

    /// <summary>How the search ended.</summary>
    public required FailureTimeConvergence Convergence { get; init; }

    /// <summary>Whether the search arrived at a maximum; if not, estimates and errors are only near theirs, and nothing should be
    /// read from the fit without saying so.</summary>
    public bool Converged => Convergence.Converged;

    /// <summary>Akaike's criterion, −2 (marginal) log-likelihood + 2 × number of coefficients, scale and group variances.</summary>
    public double Aic => -2 * MarginalLogLikelihood
        + 2 * (Coefficients.Length + (Distribution == FailureDistribution.Exponential ? 0 : 1) + Groups.Length);

    internal int ColumnCount { get; init; }

    internal ImmutableArray<int> KeptColumns { get; init; }

    /// <summary>Which of the kept columns were fitted from their means.</summary>
    internal CentredColumns Centred { get; init; } = CentredColumns.None;

    /// <summary>The kept columns' coefficients as fitted, from which predictions are made: those as given would add up large
    /// numbers that cancel.</summary>
    internal double[] CentredEstimates { get; init; } = [];

    /// <summary>Inverse of the information in the columns as fitted, from which covariances are read.</summary>
    internal CurvatureInverse Inverse { get; init; } = null!;

    /// <summary>Per group, where its levels begin in <see cref="Covariance"/>; −1 at the zero boundary.</summary>
    internal ImmutableArray<int> GroupStarts { get; init; }

    /// <summary>Covariance of the errors of two level effects of a group; 0 where its variance is zero.</summary>
    public double CovarianceOfEffects(int group, int level, int other) =>
        GroupStarts[group] is >= 0 and var start ? Inverse.Entry(start + level, start + other) : 0;

    /// <summary>Location of log duration for a row that belongs to no level of any group.</summary>
    public FailurePrediction Predict(ReadOnlySpan<double> x) => Predict(x, new GroupLevel[Groups.Length]);

    /// <summary>Location of log duration for a new row.</summary>
    /// <param name="x">One value a column of the design as it was given, dropped ones included.</param>
    /// <param name="levels">One level a group, in group order.</param>
    /// <exception cref="ArgumentException">Numbers of values, levels or a level index that do not fit.</exception>
    public FailurePrediction Predict(ReadOnlySpan<double> x, ReadOnlySpan<GroupLevel> levels)
    {
        double location = Location(x, levels), variance = 0;
        var weights = new List<(int Row, double Weight)>(ColumnCount + levels.Length);
        for (int j = 0; j < KeptColumns.Length; j++)
            weights.Add((j, Value(x, j)));

        for (int k = 0; k < levels.Length; k++)
        {
            FailureTimeGroup group = Groups[k];
            if (levels[k].IsUnseen)
            {
                variance += group.Variance;
            }
            else if (!levels[k].IsNone && !group.AtZeroBoundary)
            {
                weights.Add((GroupStarts[k] + levels[k].Index, 1));
            }
        }

        ReadOnlySpan<(int, double)> row = CollectionsMarshal.AsSpan(weights);
        variance += Inverse.Form(row, row);
        double withScale = Distribution == FailureDistribution.Exponential ? 0 : Inverse.Form(row, [(CovarianceOrder.Length - 1, 1)]);
        return new FailurePrediction(location, variance, LogScale, VarianceOfLogScale, withScale);
    }

    /// <summary>The same without its variance, for which nothing of the fit's covariance has to be looked at.</summary>
    /// <param name="x">One value a column of the design as it was given, dropped ones included.</param>
    /// <param name="levels">One level a group, in group order.</param>
    /// <exception cref="ArgumentException">Numbers of values, levels or a level index that do not fit.</exception>
    public double Location(ReadOnlySpan<double> x, ReadOnlySpan<GroupLevel> levels)
    {
        if (x.Length != ColumnCount || levels.Length != Groups.Length)
        {
            throw new ArgumentException(
                $"The model has {ColumnCount} columns and {Groups.Length} groups; this row has {x.Length} values and {levels.Length} levels.");
        }

        double location = 0;
        for (int j = 0; j < KeptColumns.Length; j++)
            location += Value(x, j) * CentredEstimates[j];
        for (int k = 0; k < levels.Length; k++)
        {
            if (!levels[k].IsUnseen && !levels[k].IsNone)
                location += EffectOf(Groups[k], levels[k].Index);
        }

        return location;
    }

    /// <summary>The time by which the share p has ended.</summary>
    public double Quantile(double p, double location, double scale) => FailureTime.Quantile(Distribution, p, location, scale);

    /// <summary>The time by which the share p has ended, with its standard error: exp(η + σw) has the gradient (1, σw)
    /// in (η, log σ).</summary>
    public QuantileEstimate Quantile(double p, FailurePrediction prediction)
    {
        double spread = Math.Exp(prediction.LogScale) * FailureTime.StandardQuantile(Distribution, p);
        double value = Math.Exp(prediction.Location + spread);
        double variance = prediction.VarianceOfLocation + 2 * spread * prediction.Covariance
            + spread * spread * prediction.VarianceOfLogScale;
        return new QuantileEstimate(value, value * Math.Sqrt(variance));
    }

    /// <summary>P(T &gt; t).</summary>
    public double Survival(double t, double location, double scale) => FailureTime.Survival(Distribution, t, location, scale);

    /// <summary>Rate of ending at t among those still running, per unit of time.</summary>
    public double Hazard(double t, double location, double scale) => FailureTime.Hazard(Distribution, t, location, scale);

    private double Value(ReadOnlySpan<double> x, int kept) => Centred.IsNone
        ? x[KeptColumns[kept]] : Centred.Moved(kept, x[KeptColumns[kept]], x[KeptColumns[Centred.Intercept]]);

    private static double EffectOf(FailureTimeGroup group, int level) => level < group.Levels.Length
        ? group.Levels[level].Effect
        : throw new ArgumentException(
            $"Group '{group.Name}' has {group.Levels.Length} levels; {level} is not one of them. Use GroupLevel.Unseen for a new one.");
}
