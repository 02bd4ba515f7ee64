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

    internal void CheckAgainst(int termCount)
    {
        if (!RatioPriors.IsDefaultOrEmpty && RatioPriors.Length != termCount)
        {
            throw new ArgumentException(
                $"RatioPriors has {RatioPriors.Length} entries for {termCount} random terms; "
                + "give one for each term (null for none) or leave it empty.");
        }

        if (!HeldRatios.IsDefaultOrEmpty && HeldRatios.Length != termCount)
        {
            throw new ArgumentException(
                $"HeldRatios has {HeldRatios.Length} entries for {termCount} random terms; "
                + "give one for each term (null to estimate) or leave it empty.");
        }

        foreach (double? ratio in HeldRatios.IsDefault ? [] : HeldRatios)
        {
            if (ratio is { } held && (!double.IsFinite(held) || held < 0))
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"HeldRatios contains {held}; a variance ratio is finite and 0 or more."));
            }
        }
    }
}
