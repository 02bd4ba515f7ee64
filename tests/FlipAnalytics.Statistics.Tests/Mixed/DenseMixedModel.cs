using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>
/// The same model the long way, from the n × n covariance W = R + Σ γₖZₖKₖZₖ' of the response over σ², as an independent
/// check. Kₖ is the identity for exchangeable levels and min(sᵢ, sⱼ) − s₀ for a walk over positions s.
/// </summary>
internal sealed class DenseMixedModel
{
    private readonly Matrix<double> _x;
    private readonly Matrix<double>[] _zk;
    private readonly Matrix<double> _w;
    private readonly Matrix<double> _informationInverse;
    private readonly Vector<double> _weightedResidual;
    private readonly RandomTerm[] _terms;
    private readonly double[] _ratios;

    public DenseMixedModel(
        double[][] x, RandomTerm[] terms, int[][] levels, double[] y, double[] weights, double[] ratios, bool restricted)
    {
        int n = y.Length;
        _terms = terms;
        _ratios = ratios;
        _x = Matrix<double>.Build.Dense(n, x[0].Length, (i, j) => x[i][j]);
        Vector<double> response = Vector<double>.Build.Dense(y);
        _zk = [.. terms.Select((term, k) => Matrix<double>.Build.Dense(
            n, term.Levels.Length, (i, t) => levels[k][i] < 0 ? 0 : Covariance(term, levels[k][i], t)))];
        _w = Matrix<double>.Build.Diagonal(n, n, i => 1 / weights[i]);
        for (int k = 0; k < terms.Length; k++)
        {
            Matrix<double> z = Matrix<double>.Build.Dense(
                n, terms[k].Levels.Length, (i, t) => levels[k][i] == t ? 1 : 0);
            _w += ratios[k] * _zk[k] * z.Transpose();
        }

        Matrix<double> information = _x.Transpose() * _w.Solve(_x);
        _informationInverse = information.Inverse();
        Coefficients = _informationInverse * (_x.Transpose() * _w.Solve(response));
        Vector<double> residual = response - (_x * Coefficients);
        _weightedResidual = _w.Solve(residual);
        int degrees = restricted ? n - _x.ColumnCount : n;
        ResidualVariance = residual * _weightedResidual / degrees;
        MinusTwoLogLikelihood = (degrees * (Math.Log(2 * Math.PI * ResidualVariance) + 1))
            + Math.Log(_w.Determinant()) + (restricted ? Math.Log(information.Determinant()) : 0);
    }

    public Vector<double> Coefficients { get; }

    public double ResidualVariance { get; }

    public double MinusTwoLogLikelihood { get; }

    public double Effect(int term, int level) => _ratios[term] * (_zk[term].Column(level) * _weightedResidual);

    /// <summary>Mean and variance of its error; <paramref name="covariance"/>(k, t) is Cov(u, level t)/(σ²γ).</summary>
    public (double Mean, double Variance) Predict(double[] x, Func<int, int, double> covariance, double ownVariance)
    {
        var c = Vector<double>.Build.Dense(_x.RowCount);
        for (int k = 0; k < _terms.Length; k++)
        {
            // Cov(response, new effect) = Σ over the row's own level
            for (int i = 0; i < _x.RowCount; i++)
            {
                int own = Own(k, i);
                c[i] += own < 0 ? 0 : _ratios[k] * covariance(k, own);
            }
        }

        Vector<double> row = Vector<double>.Build.Dense(x);
        Vector<double> solved = _w.Solve(c);
        Vector<double> difference = row - (_x.Transpose() * solved);
        double mean = (row * Coefficients) + (c * _weightedResidual);
        double variance = ownVariance - (c * solved) + (difference * (_informationInverse * difference));
        return (mean, variance * ResidualVariance);
    }

    public required Func<int, int, int> Own { get; init; }

    public static double Covariance(RandomTerm term, int s, int t) => term.Structure == RandomStructure.RandomWalk
        ? Math.Min(term.Positions[s], term.Positions[t]) - term.Positions[0]
        : s == t ? 1 : 0;
}
