namespace FlipAnalytics;

/// <summary>
/// How many slips of the pen lie between two words: a letter too many, too few, another one, or two neighbours swapped
/// (optimal string alignment, the restricted distance of Damerau (1964), CACM 7(3), 171–176).
/// </summary>
internal static class WordSlips
{
    /// <summary>Slips between two words; null where they are too many for words of such length to be one.</summary>
    /// <remarks>
    /// Words are compared part by part, so that a long common part does not make an oak table an ash table. Numbers must
    /// be equal, and two words that the trade knows are two words, however alike: satin is no slip for stain.
    /// </remarks>
    public static int? Between(string word, string other) => Between(WordForm.Parts(word), WordForm.Parts(other));

    /// <summary>The same of the parts of two words.</summary>
    public static int? Between(string[] parts, string[] others)
    {
        if (!parts.Where(HasDigit).SequenceEqual(others.Where(HasDigit)))
            return null;
        if (parts.Length != others.Length)
            return OfParts(string.Concat(parts), string.Concat(others));
        int sum = 0;
        for (int i = 0; i < parts.Length; i++)
        {
            if (OfParts(parts[i], others[i]) is not { } slips)
                return null;
            sum += slips;
        }

        return sum <= Most(Math.Max(parts.Sum(p => p.Length), others.Sum(p => p.Length))) ? sum : null;
    }

    private static int? OfParts(string part, string other)
    {
        if (part == other)
            return 0;
        int longer = Math.Max(part.Length, other.Length);
        int most = Most(longer);
        if (Math.Abs(part.Length - other.Length) > most
            || HasDigit(part) || HasDigit(other)
            || (TradeWords.Has(part) && TradeWords.Has(other)))
        {
            return null;
        }

        int slips = Count(part, other);
        // Slips hardly ever hit the first letter: with it goes most of the likeness.
        return slips <= most && (slips == 1 || part[0] == other[0]) ? slips : null;
    }

    /// <summary>A word of three letters has too many neighbours to be told from them; the longer, the fewer.</summary>
    internal static int Most(int length) => length switch
    {
        <= 3 => 0,
        <= 5 => 1,
        <= 11 => 2,
        _ => 3,
    };

    private static bool HasDigit(string part) => part.Any(char.IsDigit);

    /// <summary>Slips between two texts as they stand.</summary>
    public static int Count(string from, string to)
    {
        // d(i, j): slips between the first i letters of the one and the first j of the other; three rows are enough.
        int[] before = new int[to.Length + 1];
        int[] last = [.. Enumerable.Range(0, to.Length + 1)];
        int[] row = new int[to.Length + 1];
        for (int i = 1; i <= from.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
            {
                row[j] = Math.Min(Math.Min(last[j], row[j - 1]) + 1, last[j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
            }

            (before, last, row) = (last, row, before);
        }

        return last[to.Length];
    }
}
