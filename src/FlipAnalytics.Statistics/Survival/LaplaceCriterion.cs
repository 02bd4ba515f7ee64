namespace FlipAnalytics.Statistics;

/// <summary>Laplace's approximation to the logarithm of an integral of the likelihood over parameters:
/// log ∫ exp h ≈ h(mode) + ½ d log 2π − ½ log|−h″| (Tierney and Kadane, 1986, JASA 81, 82–86).</summary>
internal static class LaplaceCriterion
{
    private static readonly double LogTwoPi = Math.Log(2 * Math.PI);

    /// <summary>Over β, u and log σ, as restricted likelihood does for a linear model; flat where a parameter has no
    /// prior.</summary>
    internal static double Restricted(PenalisedMode mode, ReadOnlySpan<double> logVariances, double priorConstant) =>
        mode.Penalised + priorConstant + EffectConstants(mode.Likelihood, logVariances)
        + (mode.Likelihood.FreeSize * LogTwoPi - mode.Factor.LogDeterminant) / 2;

    /// <summary>Over u alone, β and log σ at their estimates.</summary>
    internal static double OverEffects(PenalisedMode mode, ReadOnlySpan<double> logVariances)
    {
        FailureLikelihood likelihood = mode.Likelihood;
        int first = likelihood.CoefficientCount, count = likelihood.LogScaleIndex - first;
        if (count == 0)
        {
            return mode.LogLikelihood;
        }

        var factor = new CurvatureFactor(likelihood.Layout, first, likelihood.Layout.BorderCount - first - 1);
        if (!factor.TryFactor(mode.Information, 0))
        {
            return double.NaN;
        }

        double squares = 0;
        for (int k = 0; k < logVariances.Length; k++)
        {
            squares += SumOfSquares(mode, k) * Math.Exp(-logVariances[k]);
        }

        return mode.LogLikelihood - squares / 2 + EffectConstants(likelihood, logVariances)
            + (count * LogTwoPi - factor.LogDeterminant) / 2;
    }

    /// <summary>Σ u² of a group.</summary>
    internal static double SumOfSquares(PenalisedMode mode, int group)
    {
        double sum = 0;
        for (int i = mode.Likelihood.GroupStarts[group]; i < mode.Likelihood.GroupStarts[group + 1]; i++)
        {
            sum += mode.Parameters[i] * mode.Parameters[i];
        }

        return sum;
    }

    // The constants of the effects' normal densities.
    private static double EffectConstants(FailureLikelihood likelihood, ReadOnlySpan<double> logVariances)
    {
        double sum = 0;
        for (int k = 0; k < logVariances.Length; k++)
        {
            sum -= (likelihood.GroupStarts[k + 1] - likelihood.GroupStarts[k]) * (LogTwoPi + logVariances[k]) / 2;
        }

        return sum;
    }
}
