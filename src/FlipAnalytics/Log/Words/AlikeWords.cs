namespace FlipAnalytics;

/// <summary>Finds words of a log that are one, or look like one.</summary>
internal static class AlikeWords
{
    // A slip is rare beside the word that was meant.
    private const int TimesRarer = 3;

    /// <summary>Words of a kind that reading took as one.</summary>
    public static IEnumerable<WordsAlike> ReadAsOne(SalesLog log, IEnumerable<OtherSpelling> others, WordKind kind)
    {
        string? column = GroupingWords.ColumnOf(kind);
        return others.Where(other => other.Column == column)
            .GroupBy(other => other.ReadAs, StringComparer.OrdinalIgnoreCase)
            .Select(same =>
            {
                var written = same.ToLookup(other => other.Written, other => new WordPlace(other.File, other.Row), StringComparer.OrdinalIgnoreCase);
                var elsewhere = same.Select(other => new WordPlace(other.File, other.Row)).ToHashSet();
                WordPlace[] first =
                [
                    .. WordUse.Of(log, kind).Where(use => use.Word.Equals(same.Key, StringComparison.OrdinalIgnoreCase))
                        .Select(use => new WordPlace(use.File, use.Row)).Where(place => !elsewhere.Contains(place)),
                ];
                return new WordsAlike(
                    kind, true, [CountedWord.Of(same.Key, first), .. written.Select(other => CountedWord.Of(other.Key, [.. other]))]);
            });
    }

    /// <summary>Words of a kind that each count by themselves, though they are alike or one may be a slip for the other.</summary>
    public static IEnumerable<WordsAlike> LikelyOne(SalesLog log, WordKind kind)
    {
        var words = WordUse.Of(log, kind)
            .GroupBy(use => use.Word, use => new WordPlace(use.File, use.Row), StringComparer.OrdinalIgnoreCase)
            .Select(uses => new TakenApart(CountedWord.Of(uses.Key, [.. uses]), WordForm.Parts(uses.Key)))
            .OrderByDescending(word => word.Word.Count).ToArray();
        bool[] isTold = new bool[words.Length];
        for (int i = 0; i < words.Length; i++)
        {
            if (isTold[i])
                continue;
            var alike = new List<CountedWord> { words[i].Word };
            for (int j = i + 1; j < words.Length; j++)
            {
                if (!isTold[j] && IsLikelyOne(words[i], words[j]))
                {
                    alike.Add(words[j].Word);
                    isTold[j] = true;
                }
            }

            if (alike.Count > 1)
                yield return new(kind, false, [.. alike]);
        }
    }

    private static bool IsLikelyOne(TakenApart often, TakenApart rare)
    {
        bool mayBeSlip = TimesRarer * rare.Word.Count <= often.Word.Count || (often.IsOfTheTrade && !rare.IsOfTheTrade);
        // Most pairs of words are told apart by these two alone; without a slip their letters are the same.
        if ((!mayBeSlip && often.Letters != rare.Letters) || !often.Mask.MayBeSlipOf(rare.Mask))
            return false;
        return WordSlips.Between(often.Parts, rare.Parts) is { } slips && (slips == 0 ? rare.Parts.Length > 0 : mayBeSlip);
    }

    private sealed record TakenApart(CountedWord Word, string[] Parts)
    {
        public string Letters { get; } = string.Concat(Parts);

        public bool IsOfTheTrade { get; } = Parts.All(TradeWords.Has);

        public LetterMask Mask { get; } = LetterMask.Of(Parts);
    }
}
