using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The words of a question, each as the log writes it: what was taken for what is noted, what is only like a word of the
/// log is asked back, and what is like none is new.
/// </summary>
internal sealed class SettledWords
{
    private readonly LogWords words;
    private readonly bool takeNew;
    private readonly List<string> notes = [];
    private readonly List<UnclearWord> unclear = [];

    /// <summary>Settles words by a log.</summary>
    /// <param name="words">The words of the log.</param>
    /// <param name="takeNew">Whether a word that is like one of the log is a new word all the same.</param>
    public SettledWords(LogWords words, bool takeNew)
    {
        ArgumentNullException.ThrowIfNull(words);
        (this.words, this.takeNew) = (words, takeNew);
    }

    /// <summary>What was taken for what, and what is new, a sentence each.</summary>
    public ImmutableArray<string> Notes => [.. notes];

    /// <summary>Words that are only like one of the log.</summary>
    public ImmutableArray<UnclearWord> Unclear => [.. unclear];

    /// <summary>The word as the log writes it; as it was written where the log does not know it.</summary>
    /// <param name="kind">What it is said of.</param>
    /// <param name="written">The word; null where none was given.</param>
    public string? Settle(WordKind kind, string? written)
    {
        if (written is null || words[kind] is not { IsEmpty: false } known)
            return written?.Trim();
        WordMatch match = known.Find(written);
        string shown = CleanText.OnOneLine(written.Trim());
        switch (match.Fit)
        {
            case WordFit.Known:
                return match.Words[0];
            case WordFit.SameWord:
                notes.Add($"No '{shown}' in your log; taken as {match.Words[0]}.");
                return match.Words[0];
            case WordFit.Resembles when !takeNew:
                unclear.Add(new(kind, shown, match.Choice));
                break;
            default:
                notes.Add($"No '{shown}' in your log yet{(match.Words.IsEmpty || match.Fit == WordFit.Resembles ? "" : $"; it has {And(match.Words)}")}.");
                break;
        }

        return written.Trim();
    }

    private static string And(ImmutableArray<string> words) =>
        words.Length == 1 ? words[0] : $"{string.Join(", ", words[..^1])} and {words[^1]}";
}

/// <summary>A word that is not in the log, but so like one that is that it may be a slip.</summary>
/// <param name="Kind">What it is said of.</param>
/// <param name="Written">As it was written.</param>
/// <param name="Choice">The words of the log it resembles, as in "sage or slate".</param>
public sealed record UnclearWord(WordKind Kind, string Written, string Choice)
{
    /// <summary>The piece it is said of; null where there is only one.</summary>
    public string? Piece { get; init; }

    /// <summary>The question, and how to say that it is meant.</summary>
    public string Question => (Piece is null ? "" : $"{CleanText.OnOneLine(Piece)}: ") + $"No '{Written}' in your log: did you mean {Choice}? " + (Kind == WordKind.Type
        ? "Say --new-type if it is a new kind."
        : $"Say --new-words if it is a new {Kind.ToString().ToLowerInvariant()}.");
}

/// <summary>A question that holds a word that is only like one of the log; the message asks which is meant.</summary>
public sealed class UnclearWordException : Exception
{
    /// <summary>Asks about these words.</summary>
    /// <param name="words">The words; at least one.</param>
    public UnclearWordException(IEnumerable<UnclearWord> words)
        : base(string.Join('\n', words.Select(word => word.Question)))
        => Questions = [.. words.Select(word => word.Question)];

    /// <summary>The questions, a line each.</summary>
    public ImmutableArray<string> Questions { get; }
}
