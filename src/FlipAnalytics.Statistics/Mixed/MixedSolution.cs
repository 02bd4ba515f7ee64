namespace FlipAnalytics.Statistics;

/// <summary>
/// The solution of Henderson's equations at the estimated ratios, in the coordinates of levels and orthonormal fixed
/// columns: effects, and C⁻¹, the covariance of their errors over σ².
/// </summary>
internal sealed class MixedSolution
{
    private readonly ReducedCrossProducts _data;
    private readonly Lazy<double[]> _covariance;
    private readonly double[] _drawInverse;
    private readonly double[] _drawFixed;
    private readonly double[] _scales;
    private readonly double[] _fixedCovariance;

    public MixedSolution(ProfiledDeviance deviance, DevianceSlopes slopes)
    {
        _data = deviance.Data;
        int q = _data.DrawCount;
        int p = _data.FixedCount;
        int m = deviance.ActiveCount;
        ResidualVariance = deviance.ResidualVariance;
        HoldsResidualVariance = deviance.HeldResidualVariance is not null;
        QuadraticForm = deviance.PenalisedQuadraticForm;
        DegreesOfFreedom = deviance.TotalDegreesOfFreedom;
        Ratios = [.. deviance.Ratios];
        Coefficients = new double[p];
        for (int c = 0; c < p; c++)
        {
            Coefficients[c] = _data.OrdinaryCoefficients[c] + deviance.Shift[c];
        }

        double[] factorInverse = new double[p * p];
        _fixedCovariance = new double[p * p];
        RowMajorCholesky.InvertLower(deviance.Information, p, factorInverse);
        RowMajorCholesky.InverseFromLower(factorInverse, p, _fixedCovariance);

        _scales = new double[q];
        _drawInverse = new double[q * q];
        _drawFixed = new double[q * p];
        double[] response = new double[q];
        for (int a = 0; a < m; a++)
        {
            int j = deviance.Active[a];
            _scales[j] = deviance.Scale[a];
            response[j] = slopes.Response[a];
            for (int b = 0; b < m; b++)
            {
                _drawInverse[(j * q) + deviance.Active[b]] = slopes.Inverse[(a * m) + b];
            }

            for (int c = 0; c < p; c++)
            {
                _drawFixed[(j * p) + c] = slopes.FixedPart[(c * m) + a];
            }
        }

        Effects = _data.LevelsFromDraws(response, 1, _scales);
        _covariance = new(JointCovariance);
    }

    /// <summary>σ̂².</summary>
    public double ResidualVariance { get; }

    /// <summary>Whether σ² was held, or tied to variances that were.</summary>
    public bool HoldsResidualVariance { get; }

    /// <summary>y'Py with the prior's share.</summary>
    public double QuadraticForm { get; }

    /// <summary>Degrees of freedom σ̂² was divided by, with the prior's share.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>γ.</summary>
    public double[] Ratios { get; }

    /// <summary>Coefficients of the orthonormal columns, without the response mean.</summary>
    public double[] Coefficients { get; }

    /// <summary>û of every level of every term.</summary>
    public double[] Effects { get; }

    /// <summary>Levels plus fixed columns.</summary>
    public int Size => Effects.Length + Coefficients.Length;

    /// <summary>C⁻¹: levels first, then orthonormal fixed columns; both triangles.</summary>
    public double[] Covariance => _covariance.Value;

    /// <summary>(X'W⁻¹X)⁻¹ for the original columns.</summary>
    public double[] OriginalFixedCovariance()
    {
        int p = Coefficients.Length;
        double[] half = [.. _fixedCovariance];
        for (int pass = 0; pass < 2; pass++)
        {
            for (int c = 0; c < p; c++)
            {
                _data.Fixed.ToOriginal(half.AsSpan(c * p, p));
            }

            half = ReducedCrossProducts.Transposed(half, p, p);
        }

        return half;
    }

    /// <summary>Var(û − u)/σ² as if the coefficients were known, all levels.</summary>
    public double[] ConditionalCovariance()
    {
        int q = _data.DrawCount;
        int levels = Effects.Length;
        double[] half = _data.LevelsFromDraws(_drawInverse, q, _scales);
        return _data.LevelsFromDraws(ReducedCrossProducts.Transposed(half, levels, q), levels, _scales);
    }

    private double[] JointCovariance()
    {
        int levels = Effects.Length;
        int p = Coefficients.Length;
        int size = Size;
        double[] conditional = ConditionalCovariance();
        double[] levelFixed = _data.LevelsFromDraws(_drawFixed, p, _scales);
        double[] joint = new double[size * size];
        double[] product = new double[p];
        for (int i = 0; i < levels; i++)
        {
            ReadOnlySpan<double> own = levelFixed.AsSpan(i * p, p);
            for (int c = 0; c < p; c++)
            {
                product[c] = VectorKernel.Dot(own, _fixedCovariance.AsSpan(c * p, p));
                joint[(i * size) + levels + c] = -product[c];
                joint[((levels + c) * size) + i] = -product[c];
            }

            for (int j = 0; j < levels; j++)
            {
                joint[(i * size) + j] = conditional[(i * levels) + j]
                    + VectorKernel.Dot(product, levelFixed.AsSpan(j * p, p));
            }
        }

        for (int c = 0; c < p; c++)
        {
            _fixedCovariance.AsSpan(c * p, p).CopyTo(joint.AsSpan(((levels + c) * size) + levels));
        }

        return joint;
    }
}
