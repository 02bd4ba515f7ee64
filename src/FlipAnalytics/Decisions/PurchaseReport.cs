using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The answers for a list of candidates, with what they share.</summary>
/// <param name="AsOf">The log's date.</param>
/// <param name="Workshop">The workshop's settings.</param>
/// <param name="TargetWage">The wage the limits pay for.</param>
/// <param name="Decisions">The answers, in the candidates' order.</param>
public sealed record PurchaseReport(
    DateOnly AsOf, Workshop Workshop, decimal TargetWage, ImmutableArray<PurchaseDecision> Decisions)
{
    /// <summary>Answers a list of candidates from a log.</summary>
    /// <param name="log">The log as known at its date.</param>
    /// <param name="candidates">Pieces in the store.</param>
    /// <param name="terms">What the owner asks of a purchase.</param>
    public static PurchaseReport Of(SalesLog log, IReadOnlyList<Candidate> candidates, PurchaseTerms terms)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(terms);
        return new(
            log.Date, log.Workshop, terms.WageFor(log.Workshop),
            new MostToPay(FittedModels.Of(log), terms).Decide(candidates));
    }
}
