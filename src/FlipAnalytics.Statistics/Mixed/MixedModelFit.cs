using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace FlipAnalytics.Statistics;

/// <summary>A fitted linear mixed model. Immutable; safe to use from several threads.</summary>
public sealed class MixedModelFit
{
    /// <summary>Leverage this close to 1 means that the row alone determines a coefficient.</summary>
    private const double FullLeverage = 1e-10;

    private const int RowsAtOnce = 4096;

    private readonly MixedSolution _solution;

    internal MixedModelFit(
        MixedModelData data, ProfiledDeviance deviance, DevianceSlopes slopes, MixedModelConvergence convergence)
    {
        _solution = new MixedSolution(deviance, slopes.Inverse);
        Data = data;
        Options = deviance.Options;
        Objective = deviance.Value;
        Convergence = convergence;
        Criterion = deviance.Options.Criterion;
        ResidualVariance = deviance.ResidualVariance;
        MinusTwoLogLikelihood = deviance.MinusTwoLogLikelihood;
        ResidualDegreesOfFreedom = deviance.TotalDegreesOfFreedom;
        FixedColumns columns = data.Reduced.Fixed;
        int[] kept = columns.Kept;
        double[] estimates = [.. _solution.Coefficients];
        columns.ToOriginal(estimates);
        double[] covariance = _solution.OriginalFixedCovariance();
        CoefficientCovariance = [.. Enumerable.Range(0, kept.Length).Select(a => ImmutableArray.CreateRange(
            Enumerable.Range(0, kept.Length).Select(b => ResidualVariance * covariance[(a * kept.Length) + b])))];
        Coefficients = [.. kept.Select((column, a) => new MixedCoefficient(
            data.CoefficientNames[column],
            estimates[a] + (column == columns.Constant ? columns.ConstantEstimateOffset : 0),
            Math.Sqrt(CoefficientCovariance[a][a])))];
        DroppedColumns = [.. data.CoefficientNames.Where((_, column) => !kept.Contains(column))];
        Terms = EstimateTerms();
    }

    /// <summary>Which likelihood was maximised.</summary>
    public LikelihoodCriterion Criterion { get; }

    /// <summary>How the search for the variance ratios ended.</summary>
    public MixedModelConvergence Convergence { get; }

    /// <summary>Whether the search arrived at a minimum; if not (<see cref="MixedModelConvergence.Reason"/> says why), variances and
    /// all that follows from them are those of where it stopped, and nothing should be read from the fit without saying so.
    /// </summary>
    public bool Converged => Convergence.Converged;

    /// <summary>How many rows were fitted.</summary>
    public int ObservationCount => Data.RowCount;

    /// <summary>Estimated coefficients; a dropped column has none.</summary>
    public ImmutableArray<MixedCoefficient> Coefficients { get; }

    /// <summary>Columns that earlier ones determine exactly; they were left out and are ignored in predictions.</summary>
    public ImmutableArray<string> DroppedColumns { get; }

    /// <summary>Covariance of the coefficients, rows and columns in the order of <see cref="Coefficients"/>.</summary>
    public ImmutableArray<ImmutableArray<double>> CoefficientCovariance { get; }

    /// <summary>The random terms, in the order given.</summary>
    public ImmutableArray<RandomTermEstimate> Terms { get; }

    /// <summary>σ̂², or σ² as held, in squared units of the response, of a row of weight 1.</summary>
    public double ResidualVariance { get; }

    /// <summary>
    /// What σ̂² was divided by where no variance is held: n − p (restricted) or n, plus the prior's degrees of freedom.
    /// </summary>
    public double ResidualDegreesOfFreedom { get; }

    /// <summary>
    /// −2 log (restricted) likelihood of the data with every constant, priors not counted; restricted likelihoods are
    /// only comparable between fits with the same fixed columns.
    /// </summary>
    public double MinusTwoLogLikelihood { get; }

    /// <summary>Log (restricted) likelihood of the data.</summary>
    public double LogLikelihood => -MinusTwoLogLikelihood / 2;

    /// <summary>Predicts a new row.</summary>
    /// <param name="x">One value for each fixed column given to the fit, dropped ones included.</param>
    /// <param name="levels">One reference for each random term.</param>
    public MixedPrediction Predict(ReadOnlySpan<double> x, ReadOnlySpan<LevelRef> levels)
    {
        var row = new SparseRow(Data);
        row.Set(x, levels, _solution.Ratios);
        double variance = _solution.Covariance.Form(row, row) + row.ExtraVariance;
        return new(Mean(row), ResidualVariance * variance, ResidualVariance);
    }

    /// <summary>Covariance of the errors in the means of two new rows of known levels: σ² v'C⁻¹v*.</summary>
    /// <param name="x">One value for each fixed column of the one row.</param>
    /// <param name="levels">Its levels, known ones or none.</param>
    /// <param name="otherX">One value for each fixed column of the other row.</param>
    /// <param name="otherLevels">Its levels, known ones or none.</param>
    public double CovarianceOfMeans(
        ReadOnlySpan<double> x, ReadOnlySpan<LevelRef> levels, ReadOnlySpan<double> otherX, ReadOnlySpan<LevelRef> otherLevels)
    {
        var row = new SparseRow(Data);
        row.Set(x, levels, _solution.Ratios);
        var other = new SparseRow(Data);
        other.Set(otherX, otherLevels, _solution.Ratios);
        return ResidualVariance * _solution.Covariance.Form(row, other);
    }

    /// <summary>Response minus x'β̂ + z'û for each fitted row, in units of the response.</summary>
    /// <exception cref="InvalidOperationException">The rows were not kept.</exception>
    public ImmutableArray<double> Residuals()
    {
        RowStore rows = KeptRows();
        var row = new SparseRow(Data);
        var residuals = ImmutableArray.CreateBuilder<double>(rows.Count);
        for (int i = 0; i < rows.Count; i++)
        {
            row.Set(i);
            residuals.Add(rows.Y(i) - Mean(row));
        }

        return residuals.MoveToImmutable();
    }

    /// <summary>
    /// Each fitted row predicted from the others, variance ratios held: with h = w v'C⁻¹v the residual is
    /// (y − ŷ)/(1 − h), as if the model had been solved anew without the row. Variances that are held keep σ² as it is.
    /// </summary>
    /// <exception cref="InvalidOperationException">The rows were not kept.</exception>
    public ImmutableArray<LeaveOneOutPrediction> LeaveOneOut()
    {
        RowStore rows = KeptRows();
        var results = new LeaveOneOutPrediction[rows.Count];
        // No row's prediction looks at another's.
        if (rows.Count <= RowsAtOnce)
            Predict(0, rows.Count);
        else
            Parallel.For(0, (rows.Count + RowsAtOnce - 1) / RowsAtOnce, block => Predict(block * RowsAtOnce, Math.Min(rows.Count, (block + 1) * RowsAtOnce)));
        return ImmutableCollectionsMarshal.AsImmutableArray(results);

        void Predict(int from, int before)
        {
            var row = new SparseRow(Data);
            for (int i = from; i < before; i++)
            {
                row.Set(i);
                results[i] = WithoutRow(row, rows.Y(i), rows.Weight(i));
            }
        }
    }

    /// <summary>
    /// The weight of each fitted response in a row's predicted mean, which is a linear function of them: v*'C⁻¹vᵢwᵢ.
    /// They sum to 1 if the fixed columns hold a constant.
    /// </summary>
    /// <exception cref="InvalidOperationException">The rows were not kept.</exception>
    public double[] RowWeights(ReadOnlySpan<double> x, ReadOnlySpan<LevelRef> levels)
    {
        RowStore rows = KeptRows();
        var row = new SparseRow(Data);
        row.Set(x, levels, _solution.Ratios);
        (double[] levelSpread, double[] fixedSpread) = _solution.Covariance.Spread(row);
        double[] weights = new double[rows.Count];
        for (int i = 0; i < weights.Length; i++)
        {
            row.Set(i);
            weights[i] = rows.Weight(i) * row.Times(levelSpread, fixedSpread);
        }

        return weights;
    }

    internal MixedModelData Data { get; }

    internal MixedModelOptions Options { get; }

    /// <summary>What the search minimised: −2 log-likelihood less 2 log of the priors.</summary>
    internal double Objective { get; }

    private double Mean(SparseRow row) => row.Offset + row.Times(_solution.Effects, _solution.Coefficients);

    private LeaveOneOutPrediction WithoutRow(SparseRow row, double y, double weight)
    {
        double form = _solution.Covariance.Form(row, row);
        double rest = 1 - (weight * form);
        if (rest < FullLeverage)
        {
            return new(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
        }

        double fitted = y - Mean(row);
        double residual = fitted / rest;
        double degrees = _solution.DegreesOfFreedom - 1;
        double residualVariance = _solution.HoldsResidualVariance ? ResidualVariance : degrees > 0
            ? Math.Max(0, _solution.QuadraticForm - (weight * fitted * residual)) / degrees
            : double.NaN;
        double variance = residualVariance * form / rest;
        return new(
            residual, y - residual, variance, residualVariance,
            residual / Math.Sqrt(variance + (residualVariance / weight)));
    }

    private RowStore KeptRows() => Data.Rows ?? throw new InvalidOperationException(
        "The rows were not kept; build the data with keepRows: true to look at single rows.");

    private ImmutableArray<RandomTermEstimate> EstimateTerms()
    {
        (double[] conditional, double[] joint) = _solution.Covariance.OfLevels();
        var terms = ImmutableArray.CreateBuilder<RandomTermEstimate>(Data.Terms.Length);
        for (int k = 0; k < Data.Terms.Length; k++)
        {
            double ratio = _solution.Ratios[k];
            int offset = Data.LevelOffsets[k];
            terms.Add(new(
                Data.Terms[k].Name,
                ResidualVariance * ratio,
                ratio,
                ratio == 0,
                [.. Data.Terms[k].Levels.Select((level, t) => new RandomLevelEstimate(
                    level,
                    _solution.Effects[offset + t],
                    ResidualVariance * conditional[offset + t],
                    ResidualVariance * joint[offset + t]))]));
        }

        return terms.MoveToImmutable();
    }
}
