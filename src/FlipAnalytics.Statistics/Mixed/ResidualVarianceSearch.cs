namespace FlipAnalytics.Statistics;

/// <summary>
/// Finds σ² where variances, not ratios, of some terms are held. Then γₖ = vₖ/σ² for those terms K, and with the other
/// ratios at their best for each σ² (the envelope theorem)
/// <code>∂d/∂log σ² = M − (y'Py + ν₀s₀²)/σ² − Σₖ ∂d/∂log γₖ, k in K,</code>
/// whose zero is bracketed. Without such terms σ² is profiled out or held, and only ratios are searched for.
/// </summary>
internal sealed class ResidualVarianceSearch(ProfiledDeviance deviance, DevianceSlopes slopes)
{
    /// <summary>Share of the least-squares residual variance below which σ² counts as 0.</summary>
    private const double LowestShare = 1e-6;

    private const double Tolerance = 1e-11;

    private const double FirstStride = 0.1;

    private readonly int[] _held =
        [.. Enumerable.Range(0, deviance.Data.Terms.Length).Where(k => deviance.Options.HeldVarianceOf(k) is not null)];

    private double[]? _near;
    private int _iterations;
    private MixedModelConvergence? _last;

    /// <summary>Finds σ² and ratios and leaves deviance and slopes evaluated there.</summary>
    /// <param name="near">A search that ended nearby, null for none.</param>
    public MixedModelConvergence Run(ProfiledDeviance? near = null)
    {
        _near = near?.Ratios;
        if (_held.Length == 0 || deviance.Options.HeldResidualVariance is not null)
        {
            return new VarianceRatioSearch(deviance, slopes).Run(_near);
        }

        double largest = Math.Log(
            (deviance.Data.ResidualSumOfSquares + deviance.PriorSum) / deviance.TotalDegreesOfFreedom);
        double lowest = largest + Math.Log(LowestShare);
        double start = near is null ? largest : Math.Max(lowest, Math.Log(near.ResidualVariance));
        (double X, double Value) here = (start, Slope(start));
        (double X, double Value) there = here;
        double stride = here.Value > 0 ? -FirstStride : FirstStride;
        while (Math.Sign(there.Value) == Math.Sign(here.Value) && there.Value != 0)
        {
            here = there;
            there.X += stride;
            stride *= 2;
            if (there.X < lowest)
            {
                Slope(lowest);
                return _last! with { Iterations = _iterations, Reason = ConvergenceReason.ResidualVarianceAtLowerLimit };
            }

            there.Value = Slope(there.X);
        }

        double slope = Slope(BracketedRoot.Find(Slope, here, there, Tolerance));
        return _last! with
        {
            Iterations = _iterations,
            MaximumAbsoluteScore = Math.Max(_last!.MaximumAbsoluteScore, Math.Abs(slope)),
        };
    }

    private double Slope(double logVariance)
    {
        double variance = Math.Exp(logVariance);
        deviance.HeldResidualVariance = variance;
        _last = new VarianceRatioSearch(deviance, slopes).Run(_near);
        _near = [.. deviance.Ratios];
        _iterations += _last.Iterations;
        return deviance.TotalDegreesOfFreedom - (deviance.PenalisedQuadraticForm / variance)
            - _held.Sum(k => slopes.Score[k]);
    }
}
