using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>How a mixed model is fitted.</summary>
public sealed record MixedModelOptions
{
    /// <summary>What is maximised. Default: restricted likelihood.</summary>
    public LikelihoodCriterion Criterion { get; init; } = LikelihoodCriterion.Reml;

    /// <summary>A prior for each term's variance ratio, null for none. Default: empty, none for any term.</summary>
    public ImmutableArray<VarianceRatioPrior?> RatioPriors { get; init; } = [];

    /// <summary>
    /// A variance ratio to hold for each term, null to estimate it. Default: empty, all are estimated. A held ratio
    /// ignores its prior.
    /// </summary>
    public ImmutableArray<double?> HeldRatios { get; init; } = [];

    /// <summary>
    /// A variance to hold for each term, in squared units of the response (of a walk per unit of position), null to
    /// estimate it: one known from elsewhere, a measurement's say. Default: empty, all are estimated. A prior of the
    /// term's ratio then speaks of the residual variance.
    /// </summary>
    public ImmutableArray<double?> HeldVariances { get; init; } = [];

    /// <summary>σ² to hold, in squared units of the response, above 0; null to estimate it. Default: null.</summary>
    public double? HeldResidualVariance
    {
        get;
        init => field = value is null || (value > 0 && double.IsFinite(value.Value)) ? value
            : throw new ArgumentOutOfRangeException(
                nameof(HeldResidualVariance), value, "A residual variance to hold must be finite and above 0.");
    }

    /// <summary>Prior of the residual variance. Default: none.</summary>
    public ResidualVariancePrior? ResidualVariancePrior { get; init; }

    /// <summary>
    /// The search stops once every slope of −2 log-likelihood in a log variance ratio is at most this. Default 1e-8.
    /// </summary>
    public double ScoreTolerance
    {
        get;
        init => field = value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(
            nameof(ScoreTolerance), value, "The score tolerance must be finite and above 0.");
    } = 1e-8;

    /// <summary>Newton steps allowed from one start. Default 100.</summary>
    public int MaximumIterations
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(
            nameof(MaximumIterations), value, "At least one iteration must be allowed.");
    } = 100;

    internal VarianceRatioPrior? PriorOf(int term) =>
        RatioPriors.IsDefaultOrEmpty || HeldRatioOf(term) is not null ? null : RatioPriors[term];

    internal double? HeldRatioOf(int term) => HeldRatios.IsDefaultOrEmpty ? null : HeldRatios[term];

    internal double? HeldVarianceOf(int term) => HeldVariances.IsDefaultOrEmpty ? null : HeldVariances[term];

    internal void CheckAgainst(int termCount)
    {
        CheckLength(nameof(RatioPriors), RatioPriors, termCount);
        CheckHeld(nameof(HeldRatios), HeldRatios, termCount);
        CheckHeld(nameof(HeldVariances), HeldVariances, termCount);
        for (int k = 0; k < termCount; k++)
        {
            if (HeldRatioOf(k) is not null && HeldVarianceOf(k) is not null)
            {
                throw new ArgumentException(
                    $"HeldRatios and HeldVariances both hold random term {k} (counting from 0); give one of them.");
            }

            if (HeldVarianceOf(k) == 0 && PriorOf(k) is not null)
            {
                throw new ArgumentException(
                    $"HeldVariances holds random term {k} (counting from 0) at 0, where its ratio's prior allows none; drop one of them.");
            }
        }
    }

    private static void CheckLength<T>(string name, ImmutableArray<T> entries, int termCount)
    {
        if (!entries.IsDefaultOrEmpty && entries.Length != termCount)
        {
            throw new ArgumentException(
                $"{name} has {entries.Length} entries for {termCount} random terms; "
                + "give one for each term (null for none) or leave it empty.");
        }
    }

    private static void CheckHeld(string name, ImmutableArray<double?> entries, int termCount)
    {
        CheckLength(name, entries, termCount);
        foreach (double? entry in entries.IsDefault ? [] : entries)
        {
            if (entry is { } held && (!double.IsFinite(held) || held < 0))
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"{name} contains {held}; what is held is finite and 0 or more."));
            }
        }
    }
}
