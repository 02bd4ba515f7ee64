namespace FlipAnalytics.Statistics;

/// <summary>
/// Linear mixed model with crossed random intercepts, y = Xβ + Σ Zₖuₖ + ε with uₖ ~ N(0, σ²γₖI) and εᵢ ~ N(0, σ²/wᵢ):
/// thin levels are pulled towards the common mean by as much as the data say levels differ. Coefficients and level
/// effects solve Henderson's mixed model equations (Henderson 1975, Biometrics 31, 423–447).
/// </summary>
public static class MixedModel
{
    /// <summary>Fits the model by restricted (default) or ordinary maximum likelihood.</summary>
    /// <exception cref="TooFewRowsException">There are not more rows than coefficients and nothing known of the residual variance.</exception>
    /// <exception cref="ExactFitException">The coefficients reproduce every response and there is no residual prior.</exception>
    public static MixedModelFit Fit(MixedModelData data, MixedModelOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        (ProfiledDeviance deviance, DevianceSlopes slopes, MixedModelConvergence convergence) =
            Minimise(data, options ?? new MixedModelOptions());
        return new MixedModelFit(data, deviance, slopes, convergence);
    }

    /// <summary>
    /// The search alone, from where another one ended if given; it leaves deviance and slopes evaluated at the minimum.
    /// </summary>
    internal static (ProfiledDeviance Deviance, DevianceSlopes Slopes, MixedModelConvergence Convergence) Minimise(
        MixedModelData data, MixedModelOptions options, ProfiledDeviance? near = null)
    {
        options.CheckAgainst(data.Terms.Length);
        if (data.RowCount == 0)
        {
            throw new TooFewRowsException(0, data.CoefficientNames.Length);
        }

        ReducedCrossProducts reduced = data.Reduced;
        if (options.ResidualVariancePrior is null && options.HeldResidualVariance is null)
        {
            if (reduced.Rows <= reduced.FixedCount)
            {
                throw new TooFewRowsException(reduced.Rows, reduced.FixedCount);
            }

            if (reduced.ResidualSumOfSquares == 0)
            {
                throw new ExactFitException(reduced.Rows);
            }
        }

        var deviance = new ProfiledDeviance(reduced, options);
        var slopes = new DevianceSlopes(deviance);
        return (deviance, slopes, new ResidualVarianceSearch(deviance, slopes).Run(near));
    }
}
