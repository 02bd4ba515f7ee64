using System.Numerics;

namespace FlipAnalytics;

/// <summary>
/// Which letters a word has, to see in a moment that two words cannot be slips of each other: a slip takes away or brings at
/// most one letter, so that with n slips neither word has more than n letters that the other has not.
/// </summary>
/// <param name="Letters">A bit for each letter, several letters to a bit where there are more than 64.</param>
/// <param name="Length">How many letters the word has.</param>
internal readonly record struct LetterMask(ulong Letters, int Length)
{
    public static LetterMask Of(string[] parts)
    {
        ulong letters = 0;
        foreach (char letter in parts.SelectMany(part => part))
            letters |= 1UL << (letter & 63);
        return new(letters, parts.Sum(part => part.Length));
    }

    /// <summary>False only for words that <see cref="WordSlips.Between(string[], string[])"/> takes for two.</summary>
    public bool MayBeSlipOf(LetterMask other)
    {
        int most = WordSlips.Most(Math.Max(Length, other.Length));
        return Math.Abs(Length - other.Length) <= most
            && BitOperations.PopCount(Letters & ~other.Letters) <= most
            && BitOperations.PopCount(other.Letters & ~Letters) <= most;
    }
}
