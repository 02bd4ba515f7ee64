using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>
/// A mixed model written out: the n × n covariance W of the responses over σ², and the covariance C⁻¹ over σ² of the
/// errors in every level effect and coefficient, for given variance ratios; Searle, Casella and McCulloch (1992), Variance
/// Components, chapters 6 and 7. Cubic in the rows, and as plain as the formulas:
/// <code>P = W⁻¹ − W⁻¹X(X'W⁻¹X)⁻¹X'W⁻¹,  û = GZ'Py,  Var(û − u)/σ² = G − GZ'PZG,  Cov(β̂, û − u)/σ² = −(X'W⁻¹X)⁻¹X'W⁻¹ZG.</code>
/// </summary>
internal sealed class WholeCovarianceModel
{
    private readonly MixedModelOptions _options;
    private readonly RandomTerm[] _terms;
    private readonly double[] _ratios;
    private readonly Matrix<double> _z;
    private readonly Matrix<double> _x;
    private readonly Vector<double> _y;
    private readonly Matrix<double> _p;
    private readonly Matrix<double> _wInverse;
    private readonly Matrix<double> _g;

    public WholeCovarianceModel(
        double[][] x, RandomTerm[] terms, int[][] levels, double[] y, double[] weights, double[] ratios, MixedModelOptions options)
    {
        _options = options;
        _terms = terms;
        _ratios = ratios;
        int n = y.Length;
        Offsets = new int[terms.Length + 1];
        for (int k = 0; k < terms.Length; k++)
        {
            Offsets[k + 1] = Offsets[k] + terms[k].Levels.Length;
        }

        _x = Matrix<double>.Build.DenseOfRowArrays(x);
        _y = Vector<double>.Build.Dense(y);
        _z = Matrix<double>.Build.Dense(n, Offsets[^1]);
        _g = Matrix<double>.Build.Dense(Offsets[^1], Offsets[^1]);
        for (int k = 0; k < terms.Length; k++)
        {
            for (int i = 0; i < n; i++)
            {
                if (levels[k][i] >= 0)
                {
                    _z[i, Offsets[k] + levels[k][i]] = 1;
                }
            }

            for (int s = 0; s < terms[k].Levels.Length; s++)
            {
                for (int t = 0; t < terms[k].Levels.Length; t++)
                {
                    _g[Offsets[k] + s, Offsets[k] + t] = ratios[k] * DenseMixedModel.Covariance(terms[k], s, t);
                }
            }
        }

        Matrix<double> w = Matrix<double>.Build.Diagonal(n, n, i => 1 / weights[i]) + (_z * _g * _z.Transpose());
        _wInverse = w.Inverse();
        Matrix<double> information = _x.Transpose() * _wInverse * _x;
        Matrix<double> fixedCovariance = information.Inverse();
        Matrix<double> half = _wInverse * _x * fixedCovariance;
        _p = _wInverse - (half * _x.Transpose() * _wInverse);
        Coefficients = half.Transpose() * _y;
        Effects = _g * _z.Transpose() * _p * _y;
        bool restricted = options.Criterion == LikelihoodCriterion.Reml;
        double degrees = restricted ? n - _x.ColumnCount : n;
        double priorDegrees = options.ResidualVariancePrior?.DegreesOfFreedom ?? 0;
        double form = _y * _p * _y;
        ResidualVariance = options.HeldResidualVariance ?? (form + (priorDegrees * (options.ResidualVariancePrior?.Scale ?? 0))) / (degrees + priorDegrees);
        MinusTwoLogLikelihood = (degrees * Math.Log(2 * Math.PI * ResidualVariance)) + (form / ResidualVariance)
            + LogDeterminant(w) + (restricted ? LogDeterminant(information) : 0);
        Conditional = _g - (_g * _z.Transpose() * _wInverse * _z * _g);
        Matrix<double> cross = -(half.Transpose() * _z * _g);
        Errors = Matrix<double>.Build.DenseOfMatrixArray(new[,]
        {
            { _g - (_g * _z.Transpose() * _p * _z * _g), cross.Transpose() },
            { cross, fixedCovariance },
        });
        Rows = _z.Append(_x);
    }

    /// <summary>First level of each term.</summary>
    public int[] Offsets { get; }

    public Vector<double> Coefficients { get; }

    public Vector<double> Effects { get; }

    public double ResidualVariance { get; }

    public double MinusTwoLogLikelihood { get; }

    /// <summary>Var(û − u)/σ² as if the coefficients were known.</summary>
    public Matrix<double> Conditional { get; }

    /// <summary>C⁻¹: levels, then coefficients.</summary>
    public Matrix<double> Errors { get; }

    /// <summary>(Z, X).</summary>
    public Matrix<double> Rows { get; }

    /// <summary>
    /// ∂d/∂log γₖ = tr(P ∂W) − y'P ∂W P y/σ² and the slope of a ratio's prior; W⁻¹ in the trace for the ordinary likelihood.
    /// </summary>
    public double Score(int k)
    {
        int levels = _terms[k].Levels.Length;
        Matrix<double> z = _z.SubMatrix(0, _z.RowCount, Offsets[k], levels);
        Matrix<double> change = z * _g.SubMatrix(Offsets[k], levels, Offsets[k], levels) * z.Transpose();
        Vector<double> projected = _p * _y;
        double score = ((_options.Criterion == LikelihoodCriterion.Reml ? _p : _wInverse) * change).Trace()
            - (projected * change * projected / ResidualVariance);
        return _options.RatioPriors.IsDefaultOrEmpty || _options.RatioPriors[k] is not { } prior ? score
            : score + (2 * (Math.Log(_ratios[k]) - prior.LogMean) / (prior.LogStandardDeviation * prior.LogStandardDeviation));
    }

    private static double LogDeterminant(Matrix<double> matrix) =>
        2 * matrix.Cholesky().Factor.Diagonal().Sum(Math.Log);
}
