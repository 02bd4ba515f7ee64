using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics;

/// <summary>A least squares fit. Formulas are those of R's <c>summary.lm</c>; σ counts as a parameter in the
/// information criteria, as in R.</summary>
public sealed class LinearFit
{
    private readonly LinearSolution solution;
    private readonly FittedRows? rows;
    private readonly Lazy<double> conditionNumber;
    private readonly Lazy<RowDiagnostics> byRow;

    internal LinearFit(LinearSolution solution, FittedRows? rows)
    {
        this.solution = solution;
        this.rows = rows;
        conditionNumber = new(ScaledCondition);
        byRow = new(() => RowDiagnostics.Of(this));
        int width = solution.Coefficients.Length, intercepts = HasIntercept ? 1 : 0;
        double n = RowCount;
        double residualVariance = ResidualSumOfSquares / ResidualDegreesOfFreedom;
        Sigma = Math.Sqrt(residualVariance);
        Covariance = [.. solution.Inverse.Select(line => line.Select(value => value * residualVariance).ToImmutableArray())];
        Coefficients = [.. solution.Coefficients.Select((estimate, j) => TestOf(j, estimate))];
        RSquared = solution.ModelSumOfSquares / (solution.ModelSumOfSquares + ResidualSumOfSquares);
        AdjustedRSquared = 1 - (1 - RSquared) * ((n - intercepts) / ResidualDegreesOfFreedom);
        int numerator = width - intercepts;
        double f = numerator == 0 ? double.NaN : solution.ModelSumOfSquares / numerator / residualVariance;
        Overall = new(f, numerator, ResidualDegreesOfFreedom, Tails.UpperF(f, numerator, ResidualDegreesOfFreedom));
        LogLikelihood = 0.5 * (solution.SumOfLogWeights - n * (Math.Log(2 * Math.PI) + 1 + Math.Log(ResidualSumOfSquares / n)));
        Aic = -2 * LogLikelihood + 2 * (width + 1);
        Bic = -2 * LogLikelihood + Math.Log(n) * (width + 1);
        VarianceInflation =
        [
            .. solution.CentredSumsOfSquares
                .Select((spread, j) => new VarianceInflation(Coefficients[j].Name, spread * solution.Inverse[j][j]))
                .Where((_, j) => HasIntercept && solution.CentredSumsOfSquares[j] > 0),
        ];
    }

    /// <summary>Rows fitted.</summary>
    public int RowCount => solution.RowCount;

    /// <summary>Rows less coefficients; at least 1.</summary>
    public int ResidualDegreesOfFreedom => RowCount - solution.Coefficients.Length;

    /// <summary>Whether one of the columns is constant; R² and F are then about the mean, else about 0.</summary>
    public bool HasIntercept => solution.HasIntercept;

    /// <summary>The names of all columns given, dropped ones included, in their order.</summary>
    public ImmutableArray<string> DesignColumns => [.. solution.Names];

    /// <summary>The columns that depend on columns before them and take no part in the fit.</summary>
    public ImmutableArray<string> DroppedColumns => [.. solution.Names.Where((_, j) => !solution.Kept.Contains(j))];

    /// <summary>The coefficients of the columns not dropped, in the order given.</summary>
    public ImmutableArray<Coefficient> Coefficients { get; }

    /// <summary>The estimated coefficient of that name.</summary>
    /// <exception cref="KeyNotFoundException">No such column, or it was dropped.</exception>
    public Coefficient this[string name] => Coefficients.FirstOrDefault(coefficient => coefficient.Name == name)
        ?? throw new KeyNotFoundException(
            $"There is no coefficient '{name}'; the fit has {string.Join(", ", Coefficients.Select(c => $"'{c.Name}'"))}.");

    /// <summary>σ² (XᵀWX)⁻¹, in the order of <see cref="Coefficients"/>.</summary>
    public ImmutableArray<ImmutableArray<double>> Covariance { get; }

    /// <summary>σ: the root of Σ w e² over the residual degrees of freedom, in the unit of the response.</summary>
    public double Sigma { get; }

    /// <summary>Σ w e².</summary>
    public double ResidualSumOfSquares => solution.ResidualSumOfSquares;

    /// <summary>Whether the residuals are nothing but rounding: √Σ w e² is at most 1e-14 of √Σ w y², a hundred roundings of
    /// the response; in a fit made from totals, where squares have lost half the digits, 1e-7 of the response's spread.
    /// σ, standard errors, t, P, F and the information criteria then measure rounding and tell nothing of the coefficients.
    /// </summary>
    public bool IsExact => ResidualSumOfSquares <= solution.RoundingSumOfSquares;

    /// <summary>The share of the response's sum of squares that the columns explain.</summary>
    public double RSquared { get; }

    /// <summary>R² less what as many columns of noise would explain.</summary>
    public double AdjustedRSquared { get; }

    /// <summary>The test of all columns but the intercept together.</summary>
    public OverallTest Overall { get; }

    /// <summary>The normal log-likelihood at its maximum.</summary>
    public double LogLikelihood { get; }

    /// <summary>Akaike's criterion, −2 log L + 2 (coefficients + 1).</summary>
    public double Aic { get; }

    /// <summary>Schwarz's criterion, −2 log L + log n (coefficients + 1).</summary>
    public double Bic { get; }

    /// <summary>One factor for every column that is not constant; empty without an intercept.</summary>
    public ImmutableArray<VarianceInflation> VarianceInflation { get; }

    /// <summary>The largest over the smallest singular value of √W X with its columns scaled to length 1; above 30 is worth
    /// a look (Belsley, Kuh and Welsch, Regression Diagnostics, 1980, section 3.2).</summary>
    public double ConditionNumber => conditionNumber.Value;

    /// <summary>Whether the fit knows its rows; one made from totals does not.</summary>
    public bool HasRows => rows is not null;

    /// <summary>Residuals, leverage and influence of every row.</summary>
    /// <exception cref="InvalidOperationException">The fit was made from totals.</exception>
    public RowDiagnostics ByRow => byRow.Value;

    internal FittedRows Rows => rows ?? throw new InvalidOperationException(
        "This fit was made from totals and kept no rows; fit the rows with LeastSquares.Fit to see them one by one.");

    internal double[][] Inverse => solution.Inverse;

    internal IReadOnlyList<double[]> Upper => solution.Upper;

    internal IReadOnlyList<int> KeptColumns => solution.Kept;

    private Coefficient TestOf(int j, double estimate)
    {
        double error = Math.Sqrt(Covariance[j][j]);
        double t = estimate / error;
        return new(solution.Names[solution.Kept[j]], estimate, error, t, Tails.TwoSidedStudent(t, ResidualDegreesOfFreedom));
    }

    private double ScaledCondition()
    {
        double[] lengths = [.. Upper.Select(column => Math.Sqrt(column.Sum(value => value * value)))];
        var scaled = Matrix<double>.Build.Dense(
            lengths.Length, lengths.Length, (i, j) => i <= j ? Upper[j][i] / lengths[j] : 0);
        return scaled.ConditionNumber();
    }
}
