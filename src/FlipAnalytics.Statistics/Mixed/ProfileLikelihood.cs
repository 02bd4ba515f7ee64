using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Limits from the profile likelihood: a standard deviation belongs to the interval unless the criterion, minimised over
/// everything else, lies more than the χ²₁ quantile above its minimum; Bates, Mächler, Bolker and Walker (2015), Journal
/// of Statistical Software 67(1), section 5.1. What is profiled is the criterion of the fit, priors included: restricted
/// likelihood by default, where R's <c>confint</c> always takes the ordinary one.
/// </summary>
public static class ProfileLikelihood
{
    /// <summary>The name of the residual standard deviation among the limits.</summary>
    public const string Residual = "Residual";

    /// <summary>
    /// log of the factor below the estimate, or above the larger of estimate and residual, beyond which there is no limit.
    /// </summary>
    private const double Farthest = 10;

    private const double Stride = 0.7;

    private const double Tolerance = 1e-9;

    /// <summary>Limits of the standard deviations of the random terms, in their order, and then of the residual.</summary>
    /// <param name="fit">The fit; what its options hold has no limits and is not listed.</param>
    /// <param name="level">Between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static ImmutableArray<StandardDeviationLimits> StandardDeviations(MixedModelFit fit, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(fit);
        Limits.RefuseLevel(level);
        double quantile = Tails.NormalQuantile((1 + level) / 2);
        var limits = ImmutableArray.CreateBuilder<StandardDeviationLimits>();
        MixedModelOptions options = fit.Options;
        ProfiledDeviance? near = null;
        bool arrived = true;

        // √ of how far the criterion lies above its minimum, less the quantile; every search starts where the last ended.
        double Distance(MixedModelOptions held)
        {
            (near, _, MixedModelConvergence convergence) = MixedModel.Minimise(fit.Data, held, near);
            arrived &= convergence.Arrived;
            return Math.Sqrt(Math.Max(0, near.Value - fit.Objective)) - quantile;
        }

        for (int k = 0; k < fit.Terms.Length; k++)
        {
            if (options.HeldRatioOf(k) is not null || options.HeldVarianceOf(k) is not null)
            {
                continue;
            }

            int term = k;
            Add(
                fit.Terms[k].Name, fit.Terms[k].Variance, options.PriorOf(k) is null,
                deviation => Distance(WithVariance(options, term, fit.Terms.Length, deviation * deviation)));
        }

        if (options.HeldResidualVariance is null)
        {
            Add(
                Residual, fit.ResidualVariance, false,
                deviation => Distance(options with { HeldResidualVariance = deviation * deviation }));
        }

        return limits.ToImmutable();

        void Add(string name, double variance, bool mayBeZero, Func<double, double> distance)
        {
            arrived = fit.Converged;
            Limits of = Of(variance, mayBeZero, fit.ResidualVariance, distance);
            limits.Add(new(name, Math.Sqrt(variance), of) { Converged = arrived });
        }
    }

    private static MixedModelOptions WithVariance(MixedModelOptions options, int term, int terms, double variance) => options with
    {
        HeldVariances = [.. Enumerable.Range(0, terms).Select(k => k == term ? variance : options.HeldVarianceOf(k))],
    };

    private static Limits Of(double variance, bool mayBeZero, double residualVariance, Func<double, double> distance)
    {
        double OnLogScale(double log) => distance(Math.Exp(log));
        double estimate = Math.Sqrt(variance);
        double inside = Math.Log(estimate > 0 ? estimate : Math.Sqrt(residualVariance));
        while (OnLogScale(inside) > 0)
        {
            inside -= Stride;
        }

        double low = estimate == 0 || (mayBeZero && distance(0) <= 0)
            ? 0
            : Limit(OnLogScale, inside, -Stride, inside - Farthest);
        double highest = (Math.Log(Math.Max(variance, residualVariance)) / 2) + Farthest;
        return new(low, Limit(OnLogScale, inside, Stride, highest));
    }

    private static double Limit(Func<double, double> distance, double inside, double stride, double farthest)
    {
        (double X, double Value) here = (inside, distance(inside));
        (double X, double Value) there = here;
        while (there.Value <= 0)
        {
            here = there;
            there.X += stride;
            if (stride < 0 ? there.X < farthest : there.X > farthest)
            {
                return stride < 0 ? 0 : double.PositiveInfinity;
            }

            there.Value = distance(there.X);
        }

        return Math.Exp(BracketedRoot.Find(distance, here, there, Tolerance));
    }
}
