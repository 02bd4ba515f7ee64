using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A fitted Cox regression.</summary>
public sealed class CoxFit
{
    private const double FarthestStep = 1e-6;

    private readonly CoxRows rows;
    private readonly int[] kept;
    private readonly double[] estimates;
    private readonly Lazy<Concordance> concordance;
    private readonly Lazy<ImmutableArray<CoxBaseline>> baselines;

    internal CoxFit(CoxRows rows, TieMethod ties, string[] names, int[] kept, CoxSearch search)
    {
        this.rows = rows;
        this.kept = kept;
        Ties = ties;
        estimates = search.Coefficients;
        DesignColumns = [.. names];
        DroppedColumns = [.. names.Where((_, j) => !kept.Contains(j))];
        double[][] inverse = search.Factor.Inverse();
        Covariance = [.. inverse.Select(line => line.ToImmutableArray())];
        Coefficients = [.. estimates.Select((b, j) =>
        {
            double error = Math.Sqrt(inverse[j][j]), z = b / error;
            return new CoxCoefficient(names[kept[j]], b, error, z, 2 * Tails.Normal(-Math.Abs(z)));
        })];
        LogLikelihoodNull = search.Null.LogLikelihood;
        LogLikelihood = search.Fitted.LogLikelihood;
        int width = estimates.Length;
        double wald = 0;
        for (int j = 0; j < width; j++)
        {
            for (int k = 0; k < width; k++)
                wald += estimates[j] * search.Fitted.Information[j * width + k] * estimates[k];
        }
        LikelihoodRatio = ChiSquaredTest.Of(2 * (LogLikelihood - LogLikelihoodNull), width);
        Wald = ChiSquaredTest.Of(wald, width);
        Score = ChiSquaredTest.Of(search.ScoreStatistic, width);
        Iterations = search.Iterations;
        LastStep = search.LastStep;
        concordance = new(() => Concordance.Of(rows, rows.LinearPredictors(estimates)));
        baselines = new(() => CoxBaseline.Of(rows, ties, estimates));
    }

    /// <summary>How ties were treated.</summary>
    public TieMethod Ties { get; }

    /// <summary>Rows fitted.</summary>
    public int RowCount => rows.Count;

    /// <summary>Rows that ended.</summary>
    public int EventCount => rows.Times.Count(time => time.Ended);

    /// <summary>The names of all columns given, dropped ones included, in their order.</summary>
    public ImmutableArray<string> DesignColumns { get; }

    /// <summary>Columns constant among those at risk together, or given by columns before them; they take no part.</summary>
    public ImmutableArray<string> DroppedColumns { get; }

    /// <summary>The coefficients of the columns not dropped, in the order given.</summary>
    public ImmutableArray<CoxCoefficient> Coefficients { get; }

    /// <summary>The estimated coefficient of that name.</summary>
    /// <exception cref="KeyNotFoundException">No such column, or it was dropped.</exception>
    public CoxCoefficient this[string name] => Coefficients.FirstOrDefault(coefficient => coefficient.Name == name)
        ?? throw new KeyNotFoundException(
            $"There is no coefficient '{name}'; the fit has {string.Join(", ", Coefficients.Select(c => $"'{c.Name}'"))}.");

    /// <summary>Inverse information, in the order of <see cref="Coefficients"/>.</summary>
    public ImmutableArray<ImmutableArray<double>> Covariance { get; }

    /// <summary>Partial log-likelihood with every coefficient 0.</summary>
    public double LogLikelihoodNull { get; }

    /// <summary>Partial log-likelihood at its maximum.</summary>
    public double LogLikelihood { get; }

    /// <summary>Akaike's criterion, −2 log L + 2 × coefficients; for fits to the same spells only.</summary>
    public double Aic => -2 * LogLikelihood + 2 * Coefficients.Length;

    /// <summary>That all coefficients are 0: twice the gain in log-likelihood.</summary>
    public ChiSquaredTest LikelihoodRatio { get; }

    /// <summary>That all coefficients are 0: bᵀI(b)b.</summary>
    public ChiSquaredTest Wald { get; }

    /// <summary>That all coefficients are 0: uᵀI⁻¹u at 0; with one column of 0 and 1 and no ties, the log-rank test.</summary>
    public ChiSquaredTest Score { get; }

    /// <summary>Newton steps taken.</summary>
    public int Iterations { get; }

    /// <summary>Length, in standard errors, of the step at which the search stopped.</summary>
    public double LastStep { get; }

    /// <summary>Whether the estimates lie within 1e-6 standard errors of the maximum. A search that does not arrive there throws
    /// <see cref="NoEstimateException"/> instead of ending in a fit.</summary>
    public bool Converged => LastStep <= FarthestStep;

    /// <summary>Whether a higher xᵀb goes with an earlier end; computed when asked for.</summary>
    public Concordance Concordance => concordance.Value;

    /// <summary>Cumulative hazard where every column is 0, a curve a stratum in ordinal order of their names; computed when
    /// asked for.</summary>
    public ImmutableArray<CoxBaseline> Baselines => baselines.Value;

    internal CoxRows Rows => rows;

    internal double[] Estimates => estimates;

    /// <summary>xᵀb; 0 where every column is 0.</summary>
    /// <param name="row">A value for each of <see cref="DesignColumns"/>; values of dropped columns are ignored.</param>
    /// <exception cref="ArgumentException">Another number of values than columns.</exception>
    public double LogRelativeHazard(ReadOnlySpan<double> row)
    {
        if (row.Length != DesignColumns.Length)
            throw new ArgumentException(
                $"The row has {row.Length} values where the design has {DesignColumns.Length} columns: {string.Join(", ", DesignColumns)}.",
                nameof(row));
        double sum = 0;
        for (int j = 0; j < kept.Length; j++)
            sum += row[kept[j]] * estimates[j];
        return sum;
    }

    /// <summary>Ŝ(t | x) = exp(−Ĥ₀(t) exp(xᵀb)). Past the last stop it is unknown and stays what it was there.</summary>
    /// <param name="row">A value for each of <see cref="DesignColumns"/>.</param>
    /// <param name="time">t.</param>
    /// <param name="stratum">Whose baseline; may be left out where there is only one.</param>
    /// <exception cref="ArgumentException">Another number of values than columns, or no such stratum.</exception>
    public double Survival(ReadOnlySpan<double> row, double time, string? stratum = null) =>
        Math.Exp(-Baseline(stratum).At(time) * Math.Exp(LogRelativeHazard(row)));

    private CoxBaseline Baseline(string? stratum)
    {
        if (stratum is null && Baselines.Length == 1)
            return Baselines[0];
        return Baselines.FirstOrDefault(baseline => baseline.Stratum == stratum) ?? throw new ArgumentException(
            $"There is no stratum '{stratum}'; the fit has {string.Join(", ", Baselines.Select(b => $"'{b.Stratum}'"))}.",
            nameof(stratum));
    }
}
