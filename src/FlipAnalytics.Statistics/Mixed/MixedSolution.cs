namespace FlipAnalytics.Statistics;

/// <summary>
/// The solution of Henderson's equations at the estimated ratios, in the coordinates of levels and orthonormal fixed
/// columns: effects, and the covariance of their errors.
/// </summary>
internal sealed class MixedSolution
{
    private readonly ReducedCrossProducts _data;

    public MixedSolution(ProfiledDeviance deviance, BorderedInverse inverse)
    {
        _data = deviance.Data;
        ResidualVariance = deviance.ResidualVariance;
        HoldsResidualVariance = deviance.HeldResidualVariance is not null;
        QuadraticForm = deviance.PenalisedQuadraticForm;
        DegreesOfFreedom = deviance.TotalDegreesOfFreedom;
        Ratios = [.. deviance.Ratios];
        BorderedLayout layout = _data.Products.Layout;
        Coefficients = new double[_data.FixedCount];
        for (int c = 0; c < Coefficients.Length; c++)
        {
            Coefficients[c] = _data.OrdinaryCoefficients[c] + inverse.BorderEffects[layout.BorderCount + c];
        }

        Effects = new double[_data.LevelOffsets[^1]];
        for (int b = 0; b < layout.BorderCount; b++)
        {
            Effects[layout.BorderLevels[b]] = inverse.BorderEffects[b];
        }

        for (int a = 0; a < layout.BlockLevels.Length; a++)
        {
            Effects[layout.BlockLevels[a]] = inverse.Factor.BlockScales[a] * inverse.BlockSolution[a];
        }

        Covariance = new(inverse, Effects.Length);
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

    /// <summary>C⁻¹.</summary>
    public ErrorCovariance Covariance { get; }

    /// <summary>(X'W⁻¹X)⁻¹ for the original columns.</summary>
    public double[] OriginalFixedCovariance()
    {
        int p = Coefficients.Length;
        double[] half = Covariance.OfFixedColumns();
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
}
