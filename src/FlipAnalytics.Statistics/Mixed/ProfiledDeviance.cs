namespace FlipAnalytics.Statistics;

/// <summary>
/// −2 log (restricted) likelihood of a linear mixed model as a function of the variance ratios γ alone, with
/// coefficients and residual variance profiled out, plus −2 log of the priors. For W = I + ZΓZ', Λ = Γ^½,
/// H = I + ΛZ'ZΛ, P = W⁻¹ − W⁻¹X(X'W⁻¹X)⁻¹X'W⁻¹:
/// <code>d(γ) = m log 2π + M log σ̂² + M + log|W| + log|X'W⁻¹X|,  σ̂² = (y'Py + ν₀s₀²)/M,  M = m + ν₀,  m = n − p</code>
/// and, where σ² is held, d = m log 2π + M log σ² + (y'Py + ν₀s₀²)/σ² + log|W| + log|X'W⁻¹X|
/// (m = n and no last term for the ordinary likelihood); Bates, Mächler, Bolker and Walker (2015), Journal of
/// Statistical Software 67(1), section 3. Everything comes from cross-products by ΛZ'W⁻¹ = H⁻¹ΛZ', which needs no
/// subtraction of large numbers; <see cref="BorderedFactor"/> factors H.
/// </summary>
internal sealed class ProfiledDeviance
{
    private readonly ReducedCrossProducts _data;
    private readonly MixedModelOptions _options;
    private readonly double[] _scales;

    public ProfiledDeviance(ReducedCrossProducts data, MixedModelOptions options)
    {
        _data = data;
        _options = options;
        _scales = new double[data.Terms.Length];
        Ratios = new double[data.Terms.Length];
        Factor = new BorderedFactor(data.Products);
        DegreesOfFreedom = options.Criterion == LikelihoodCriterion.Reml ? data.Rows - data.FixedCount : data.Rows;
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

    /// <summary>The factor of Henderson's matrix at the last evaluation.</summary>
    public BorderedFactor Factor { get; }

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
        for (int k = 0; k < _scales.Length; k++)
        {
            _scales[k] = Math.Sqrt(ratios[k]);
        }

        return Value = TryFactor() ? Penalised() : double.PositiveInfinity;
    }

    private double Penalised()
    {
        LogDeterminants = Factor.LogDeterminant - _data.SumOfLogWeights
            + (Restricted ? Factor.FixedLogDeterminant + _data.Fixed.LogDeterminant : 0);
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

    private bool TryFactor()
    {
        if (!Factor.TryFactor(_scales))
        {
            return false;
        }

        QuadraticForm = Factor.QuadraticForm;
        if (QuadraticForm < 0 && (PriorSum > 0 || HeldResidualVariance is not null))
        {
            QuadraticForm = 0;
        }

        return ResidualVariance > 0;
    }
}
