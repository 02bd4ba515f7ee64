using System.Collections.Frozen;
using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>How a word fits those that are known.</summary>
public enum WordFit
{
    /// <summary>It is one of them.</summary>
    Known,

    /// <summary>It is one of them but for case, number, spaces, hyphens or British and American spelling.</summary>
    SameWord,

    /// <summary>It is none of them, but so like one that it may be a slip of the pen.</summary>
    Resembles,

    /// <summary>It is like none of them.</summary>
    New,
}

/// <summary>What was found for a word.</summary>
/// <param name="Fit">How it fits.</param>
/// <param name="Words">
/// The word that is known; those it resembles, nearest first; for a new word those that share a part with it.
/// </param>
public sealed record WordMatch(WordFit Fit, ImmutableArray<string> Words)
{
    /// <summary>The words to choose from, as in "sage or slate".</summary>
    public string Choice => Words.Length < 2 ? string.Concat(Words) : $"{string.Join(", ", Words[..^1])} or {Words[^1]}";
}

/// <summary>The words that something may be, and which of them was meant by what was written.</summary>
public sealed class KnownWords
{
    private const int MostNamed = 3;
    private const int MostSlips = 2;

    // Of an abbreviation: at least so many letters, and at least half of the word.
    private const int ShortestBeginning = 4;

    private readonly ImmutableArray<string> words;
    private readonly Lazy<FrozenSet<string>> exact;
    private readonly Lazy<FrozenDictionary<string, string>> byForm;

    /// <summary>Knows these words.</summary>
    /// <param name="words">The words; where two differ in nothing that counts the earlier is preferred.</param>
    public KnownWords(IEnumerable<string> words)
    {
        this.words = [.. words.Distinct(StringComparer.OrdinalIgnoreCase)];
        exact = new(() => this.words.ToFrozenSet(StringComparer.Ordinal));
        byForm = new(() => this.words.Select(word => KeyValuePair.Create(WordForm.Of(word), word))
            .DistinctBy(pair => pair.Key).ToFrozenDictionary(StringComparer.Ordinal));
    }

    /// <summary>Whether there is any.</summary>
    public bool IsEmpty => words.IsEmpty;

    /// <summary>Finds what was meant.</summary>
    /// <param name="written">The word as it was written.</param>
    public WordMatch Find(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        if (exact.Value.Contains(written))
            return new(WordFit.Known, [written]);
        string form = WordForm.Of(written);
        if (byForm.Value.TryGetValue(form, out string? same) && form.Length > 0)
            return new(WordFit.SameWord, [same]);
        ImmutableArray<string> near = Nearest(written, form);
        return near.IsEmpty ? new(WordFit.New, Related(written)) : new(WordFit.Resembles, near);
    }

    /// <summary>
    /// The one most likely meant where none but these can be: the same word, or the one with the fewest slips, at most two
    /// and fewer than half of its letters. Null where none is so near.
    /// </summary>
    /// <param name="written">The word as it was written.</param>
    public string? Meant(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        string form = WordForm.Of(written);
        // The end of a word is lost more often than that of a number, whose noughts are.
        bool isWord = !form.Any(char.IsDigit);
        return words.Select(word => (Word: word, Form: WordForm.Of(word)))
            .Where(near => Math.Abs(near.Form.Length - form.Length) <= MostSlips)
            .Select(near => (near.Word, near.Form, Slips: WordSlips.Count(form, near.Form)))
            .Where(near => near.Slips <= MostSlips && near.Slips * 2 < near.Form.Length)
            .OrderBy(near => near.Slips).ThenByDescending(near => isWord && near.Form.StartsWith(form, StringComparison.Ordinal))
            .Select(near => near.Word).FirstOrDefault();
    }

    private ImmutableArray<string> Nearest(string written, string form)
    {
        if (form.Length == 0)
            return [];
        var slips = words.Select(word => (Word: word, Slips: WordSlips.Between(written, word)))
            .Where(near => near.Slips is not null).OrderBy(near => near.Slips).ToArray();
        if (slips.Length > 0)
            return [.. slips.Where(near => near.Slips == slips[0].Slips).Select(near => near.Word).Take(MostNamed)];
        return form.Length < ShortestBeginning || TradeWords.Has(form) ? [] :
        [
            .. words.Where(word => WordForm.Of(word) is var known && known.StartsWith(form, StringComparison.Ordinal)
                && 2 * form.Length >= known.Length).Take(MostNamed),
        ];
    }

    private ImmutableArray<string> Related(string written)
    {
        string[] parts = WordForm.Parts(written);
        return parts.Length == 0 ? [] :
        [
            .. words.Where(word => WordForm.Parts(word) is { Length: > 0 } known
                && (parts.All(known.Contains) || known.All(parts.Contains))).Take(MostNamed),
        ];
    }
}
