using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>One law of the duration among those compared.</summary>
/// <param name="Fit">The model with it.</param>
/// <param name="AicDifference">Its information criterion less the smallest; 0 for the best, and from about 10 on the data speak
/// clearly against it (Burnham and Anderson, Model Selection and Multimodel Inference, 2002, section 2.6).</param>
/// <param name="Weight">exp(−difference/2) over the sum of the same; the weights sum to 1.</param>
public sealed record RankedFailureDistribution(AcceleratedFailureFit Fit, double AicDifference, double Weight);

/// <summary>A law that could not be fitted.</summary>
/// <param name="Distribution">The law.</param>
/// <param name="Reason">Why not.</param>
public sealed record UnfittedFailureDistribution(FailureDistribution Distribution, string Reason);

/// <summary>The same durations under every law, ordered by Akaike's information criterion, −2 log L + 2 × parameters; Akaike
/// (1974), IEEE Trans. Autom. Control 19, 716–723.</summary>
/// <param name="Ranked">The best first.</param>
/// <param name="Unfitted">Those without an estimate; empty as a rule.</param>
public sealed record FailureDistributionComparison(
    ImmutableArray<RankedFailureDistribution> Ranked, ImmutableArray<UnfittedFailureDistribution> Unfitted)
{
    /// <summary>The fit with the smallest criterion.</summary>
    public AcceleratedFailureFit Best => Ranked[0].Fit;

    /// <summary>Fits the four laws.</summary>
    /// <param name="data">The durations.</param>
    /// <param name="options">What else to choose; its distribution is not used.</param>
    /// <exception cref="ArgumentException">As <see cref="AcceleratedFailure.Fit"/>.</exception>
    /// <exception cref="NoEstimateException">None of the four has an estimate.</exception>
    public static FailureDistributionComparison Of(AcceleratedFailureData data, AcceleratedFailureOptions? options = null)
    {
        List<AcceleratedFailureFit> fits = [];
        List<UnfittedFailureDistribution> unfitted = [];
        foreach (FailureDistribution distribution in Enum.GetValues<FailureDistribution>())
        {
            try
            {
                fits.Add(AcceleratedFailure.Fit(
                    data, (options ?? new AcceleratedFailureOptions()) with { Distribution = distribution }));
            }
            catch (NoEstimateException trouble)
            {
                unfitted.Add(new(distribution, trouble.Message));
            }
        }
        if (fits.Count == 0)
            throw new NoEstimateException($"No law of the duration has an estimate. {unfitted[0].Reason}");
        double best = fits.Min(fit => fit.Aic), total = fits.Sum(fit => Likelihood(fit, best));
        return new(
            [.. fits.OrderBy(fit => fit.Aic).Select(fit =>
                new RankedFailureDistribution(fit, fit.Aic - best, Likelihood(fit, best) / total))],
            [.. unfitted]);
    }

    private static double Likelihood(AcceleratedFailureFit fit, double best) => Math.Exp((best - fit.Aic) / 2);
}
