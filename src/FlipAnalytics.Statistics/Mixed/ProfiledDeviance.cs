using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// −2 log (restricted) likelihood of a linear mixed model as a function of the variance ratios γ alone, with
/// coefficients and residual variance profiled out, plus −2 log of the priors. For W = I + ZΓZ', Λ = Γ^½,
/// H = I + ΛZ'ZΛ, P = W⁻¹ − W⁻¹X(X'W⁻¹X)⁻¹X'W⁻¹:
/// <code>d(γ) = m log 2π + M log σ̂² + M + log|W| + log|X'W⁻¹X|,  σ̂² = (y'Py + ν₀s₀²)/M,  M = m + ν₀,  m = n − p</code>
/// and, where σ² is held, d = m log 2π + M log σ² + (y'Py + ν₀s₀²)/σ² + log|W| + log|X'W⁻¹X|
/// (m = n and no last term for the ordinary likelihood); Bates, Mächler, Bolker and Walker (2015), Journal of
/// Statistical Software 67(1), section 3. Everything comes from cross-products by ΛZ'W⁻¹ = H⁻¹ΛZ', which needs no
/// subtraction of large numbers. No row is in two levels of an exchangeable term, so the block of H that belongs to the
/// largest one is diagonal; it comes first and is eliminated at no cost.
/// </summary>
internal sealed class ProfiledDeviance
{
    private readonly ReducedCrossProducts _data;
    private readonly MixedModelOptions _options;
    private readonly int _p;
    private readonly int[] _active;
    private readonly double[] _scale;
    private readonly double[] _h;
    private readonly double[] _n;

    public ProfiledDeviance(ReducedCrossProducts data, MixedModelOptions options)
    {
        _data = data;
        _options = options;
        _p = data.FixedCount;
        int q = data.DrawCount;
        _active = new int[q];
        _scale = new double[q];
        _h = new double[q * q];
        _n = new double[q * (_p + 1)];
        Information = new double[_p * _p];
        Shift = new double[_p];
        Ratios = new double[data.Terms.Length];
        TermOrder =
        [
            .. Enumerable.Range(0, data.Terms.Length)
                .OrderByDescending(k => data.Terms[k].Structure == RandomStructure.Exchangeable ? data.Terms[k].ColumnCount : 0),
        ];
        DegreesOfFreedom = options.Criterion == LikelihoodCriterion.Reml ? data.Rows - _p : data.Rows;
        PriorDegreesOfFreedom = options.ResidualVariancePrior?.DegreesOfFreedom ?? 0;
        PriorSum = PriorDegreesOfFreedom * (options.ResidualVariancePrior?.Scale ?? 0);
        HeldResidualVariance = options.HeldResidualVariance;
    }

    /// <summary>m, without the prior's.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>ν₀.</summary>
    public double PriorDegreesOfFreedom { get; }

    /// <summary>ν₀s₀².</summary>
    public double PriorSum { get; }

    /// <summary>M = m + ν₀.</summary>
    public double TotalDegreesOfFreedom => DegreesOfFreedom + PriorDegreesOfFreedom;

    public bool Restricted => _options.Criterion == LikelihoodCriterion.Reml;

    public ReducedCrossProducts Data => _data;

    public MixedModelOptions Options => _options;

    /// <summary>γ of the last evaluation.</summary>
    public double[] Ratios { get; }

    /// <summary>Number of draws whose ratio is not zero.</summary>
    public int ActiveCount { get; private set; }

    /// <summary>The terms in the order of their active columns: the largest exchangeable one first.</summary>
    public ImmutableArray<int> TermOrder { get; }

    /// <summary>How many active columns from the first on make a diagonal block of H.</summary>
    public int DiagonalCount { get; private set; }

    /// <summary>Columns of Z whose ratio is not zero.</summary>
    public ReadOnlySpan<int> Active => _active.AsSpan(0, ActiveCount);

    /// <summary>√γ of each active column.</summary>
    public ReadOnlySpan<double> Scale => _scale.AsSpan(0, ActiveCount);

    /// <summary>Cholesky factor L of H for the active columns.</summary>
    public ReadOnlySpan<double> Factor => _h.AsSpan(0, ActiveCount * ActiveCount);

    /// <summary>L⁻¹ΛZ'(X, e).</summary>
    public ReadOnlySpan<double> Reduced => _n.AsSpan(0, ActiveCount * (_p + 1));

    /// <summary>Cholesky factor of X'W⁻¹X (orthonormal columns).</summary>
    public double[] Information { get; }

    /// <summary>Generalised minus ordinary least-squares coefficients, orthonormal columns.</summary>
    public double[] Shift { get; }

    /// <summary>y'Py.</summary>
    public double QuadraticForm { get; private set; }

    /// <summary>y'Py + ν₀s₀².</summary>
    public double PenalisedQuadraticForm => QuadraticForm + PriorSum;

    /// <summary>σ² while it is held; null while it is profiled out.</summary>
    public double? HeldResidualVariance { get; set; }

    /// <summary>σ² as held, or σ̂².</summary>
    public double ResidualVariance => HeldResidualVariance ?? PenalisedQuadraticForm / TotalDegreesOfFreedom;

    /// <summary>d(γ) of the last evaluation.</summary>
    public double Value { get; private set; }

    /// <summary>−2 log-likelihood of the data alone at the last ratios and their σ̂².</summary>
    public double MinusTwoLogLikelihood =>
        (DegreesOfFreedom * Math.Log(2 * Math.PI * ResidualVariance)) + (QuadraticForm / ResidualVariance) + LogDeterminants;

    private double LogDeterminants { get; set; }

    /// <summary>A ratio that is held, or that a held variance makes of the σ² held.</summary>
    public double? HeldRatioOf(int term) => _options.HeldRatioOf(term) ?? _options.HeldVarianceOf(term) / HeldResidualVariance;

    /// <summary>d(γ) with the priors; +∞ where the arithmetic cannot represent it.</summary>
    public double Evaluate(ReadOnlySpan<double> ratios)
    {
        ratios.CopyTo(Ratios);
        SelectActive();
        return Value = TryFactor() ? Penalised() : double.PositiveInfinity;
    }

    private double Penalised()
    {

        LogDeterminants = RowMajorCholesky.LogDeterminant(Factor, ActiveCount) - _data.SumOfLogWeights
            + (Restricted ? RowMajorCholesky.LogDeterminant(Information, _p) + _data.Fixed.LogDeterminant : 0);
        double value = (DegreesOfFreedom * Math.Log(2 * Math.PI))
            + (TotalDegreesOfFreedom * Math.Log(ResidualVariance))
            + (HeldResidualVariance is { } held ? PenalisedQuadraticForm / held : TotalDegreesOfFreedom) + LogDeterminants;
        for (int k = 0; k < Ratios.Length; k++)
        {
            if (_options.PriorOf(k) is { } prior)
            {
                double z = (Math.Log(Ratios[k]) - prior.LogMean) / prior.LogStandardDeviation;
                value += z * z;
            }
        }

        return value;
    }

    private void SelectActive()
    {
        int count = 0;
        DiagonalCount = 0;
        foreach (int k in TermOrder)
        {
            double scale = Math.Sqrt(Ratios[k]);
            if (count == 0 && scale > 0 && _data.Terms[k].Structure == RandomStructure.Exchangeable)
            {
                DiagonalCount = _data.Terms[k].ColumnCount;
            }

            for (int j = _data.Offsets[k]; scale > 0 && j < _data.Offsets[k + 1]; j++)
            {
                _active[count] = j;
                _scale[count++] = scale;
            }
        }

        ActiveCount = count;
    }

    private bool TryFactor()
    {
        int m = ActiveCount;
        int q = _data.DrawCount;
        int width = _p + 1;
        for (int a = 0; a < m; a++)
        {
            ReadOnlySpan<double> products = _data.ZZ.AsSpan(_active[a] * q, q);
            Span<double> row = _h.AsSpan(a * m, a + 1);
            for (int b = 0; b <= a; b++)
            {
                row[b] = _scale[a] * _scale[b] * products[_active[b]];
            }

            row[a] += 1;
            ReadOnlySpan<double> source = _data.ZXe.AsSpan(_active[a] * width, width);
            Span<double> target = _n.AsSpan(a * width, width);
            for (int c = 0; c < width; c++)
            {
                target[c] = _scale[a] * source[c];
            }
        }

        if (!RowMajorCholesky.TryFactor(_h, m, DiagonalCount))
        {
            return false;
        }

        RowMajorCholesky.SolveLowerRows(_h, m, _n, width);
        Array.Clear(Information);
        Array.Clear(Shift);
        double explained = 0;
        for (int a = 0; a < m; a++)
        {
            ReadOnlySpan<double> row = _n.AsSpan(a * width, width);
            for (int i = 0; i < _p; i++)
            {
                VectorKernel.AddScaled(Information.AsSpan(i * _p, i + 1), -row[i], row[..(i + 1)]);
            }

            VectorKernel.AddScaled(Shift, -row[_p], row[.._p]);
            explained += row[_p] * row[_p];
        }

        for (int i = 0; i < _p; i++)
        {
            Information[(i * _p) + i] += 1;
        }

        if (!RowMajorCholesky.TryFactor(Information, _p))
        {
            return false;
        }

        RowMajorCholesky.SolveLower(Information, _p, Shift);
        QuadraticForm = _data.ResidualSumOfSquares - explained - VectorKernel.Dot(Shift, Shift);
        RowMajorCholesky.SolveLowerTransposed(Information, _p, Shift);
        if (QuadraticForm < 0 && (PriorSum > 0 || HeldResidualVariance is not null))
        {
            QuadraticForm = 0;
        }

        return ResidualVariance > 0;
    }
}
