namespace FlipAnalytics.Statistics;

/// <summary>
/// Linear mixed model with crossed random intercepts, y = Xβ + Σ Zₖuₖ + ε with uₖ ~ N(0, σ²γₖI) and εᵢ ~ N(0, σ²/wᵢ):
/// thin levels are pulled towards the common mean by as much as the data say levels differ. Coefficients and level
/// effects solve Henderson's mixed model equations (Henderson 1975, Biometrics 31, 423–447).
/// </summary>
public static class MixedModel
{
    /// <summary>Fits the model by restricted (default) or ordinary maximum likelihood.</summary>
    /// <exception cref="TooFewRowsException">There are not more rows than coefficients and no residual prior.</exception>
    /// <exception cref="ExactFitException">The coefficients reproduce every response and there is no residual prior.</exception>
    public static MixedModelFit Fit(MixedModelData data, MixedModelOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        options ??= new MixedModelOptions();
        options.CheckAgainst(data.Terms.Length);
        if (data.RowCount == 0)
        {
            throw new TooFewRowsException(0, data.CoefficientNames.Length);
        }

        ReducedCrossProducts reduced = data.Reduced;
        if (options.ResidualVariancePrior is null)
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
        MixedModelConvergence convergence = new VarianceRatioSearch(deviance, slopes).Run();
        return new MixedModelFit(data, deviance, slopes, convergence);
    }
}
