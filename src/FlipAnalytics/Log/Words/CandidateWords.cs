using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A candidate whose words are as the log writes them.</summary>
/// <param name="Candidate">The candidate, with what was made of its words.</param>
/// <param name="Unclear">Words that are only like one of the log.</param>
internal sealed record CandidateWords(Candidate Candidate, ImmutableArray<UnclearWord> Unclear)
{
    /// <summary>Settles the words of a candidate; one settled before stays as it is.</summary>
    /// <param name="candidate">The piece in the store.</param>
    /// <param name="words">The words of the log.</param>
    /// <param name="takeNew">Whether a word that is like one of the log is a new word all the same.</param>
    public static CandidateWords Settle(Candidate candidate, LogWords words, bool takeNew)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        var settled = new SettledWords(words, takeNew);
        Candidate read = candidate with
        {
            Type = settled.Settle(WordKind.Type, candidate.Type)!,
            Material = settled.Settle(WordKind.Material, candidate.Material),
            Colour = settled.Settle(WordKind.Color, candidate.Colour),
            Finish = settled.Settle(WordKind.Finish, candidate.Finish),
        };
        return new(
            read with { WordNotes = [.. candidate.WordNotes.Union(settled.Notes)] }, settled.Unclear);
    }
}
