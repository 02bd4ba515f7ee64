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
    /// <summary>What was made of the words of the question: taken for words of the log, or new to it.</summary>
    public ImmutableArray<string> WordNotes { get; init; } = [];

    /// <summary>Rows of the file of candidates that could not be read, by line; they are not among the decisions.</summary>
    public ImmutableArray<LogProblem> SetAside { get; init; } = [];

    /// <summary>The line on a row that is worth a look and on which the answer hangs; null where there is none.</summary>
    public string? WorthALook { get; init; }

    /// <summary>Answers a list of candidates from a log, their words taken as the log writes them.</summary>
    /// <param name="log">The log as known at its date.</param>
    /// <param name="candidates">Pieces in the store.</param>
    /// <param name="terms">What the owner asks of a purchase.</param>
    /// <exception cref="UnclearWordException">A word is not in the log, but so like one that it may be a slip.</exception>
    public static PurchaseReport Of(SalesLog log, IReadOnlyList<Candidate> candidates, PurchaseTerms terms)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(terms);
        var words = LogWords.Of(log);
        var own = new SettledWords(words, terms.NewWords);
        PurchaseTerms settled = terms with { Channel = own.Settle(WordKind.Channel, terms.Channel) };
        CandidateWords[] pieces = [.. candidates.Select(piece => CandidateWords.Settle(piece, words, terms.NewWords))];
        UnclearWord[] unclear =
        [
            .. pieces.SelectMany(piece => piece.Unclear.Select(word =>
                word with { Piece = pieces.Length > 1 ? piece.Candidate.Id : null })),
            .. own.Unclear,
        ];
        if (unclear.Length > 0)
            throw new UnclearWordException(unclear.Distinct());
        return new(
            log.Date, log.Workshop, settled.WageFor(log.Workshop),
            new MostToPay(FittedModels.Of(log), settled).Decide([.. pieces.Select(piece => piece.Candidate)]))
        {
            WordNotes = [.. pieces.SelectMany(piece => piece.Candidate.WordNotes).Concat(own.Notes).Distinct()],
        };
    }
}
