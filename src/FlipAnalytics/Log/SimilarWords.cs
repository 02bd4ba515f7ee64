using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>Words of a log that may mean the same: spelt alike, a slip of one another, or colors that look alike.</summary>
public static class SimilarWords
{
    /// <summary>Two colors nearer than this (CIEDE2000) can hardly be told apart side by side.</summary>
    private const double HardlyDifferent = 2;

    private static readonly ImmutableArray<WordKind> OfPieces =
        [WordKind.Color, WordKind.Type, WordKind.Finish, WordKind.Material, WordKind.Source, WordKind.Channel];

    /// <summary>A sentence for each such group of words of pieces; none where every word is plainly another.</summary>
    /// <param name="log">The log.</param>
    public static ImmutableArray<string> In(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return [.. OfPieces.SelectMany(kind => AlikeWords.LikelyOne(log, kind)).Select(words => words.Sentence), .. LookingAlike(log)];
    }

    /// <summary>Every group of words that reading took as one, or that look like one.</summary>
    internal static ImmutableArray<WordsAlike> All(SalesLog log, IReadOnlyList<OtherSpelling> others) =>
    [
        .. OfPieces.Concat([WordKind.SupplyKind, WordKind.Supply]).SelectMany(kind =>
            AlikeWords.ReadAsOne(log, others, kind).Concat(AlikeWords.LikelyOne(log, kind))),
    ];

    /// <summary>A sentence for each two colors that look the same by their hex.</summary>
    internal static IEnumerable<string> LookingAlike(SalesLog log)
    {
        var used = log.Pieces.Select(p => p.Colour).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        var seen = log.Colours.Where(c => c.Hex is not null && used.Contains(c.Word))
            .Select(c => (c.Word, Look: LabColour.FromHex(c.Hex!))).ToArray();
        for (int i = 0; i < seen.Length; i++)
        {
            foreach (var other in seen[(i + 1)..])
            {
                if (ColourDifference.Ciede2000(seen[i].Look, other.Look) < HardlyDifferent)
                    yield return $"'{CleanText.OnOneLine(seen[i].Word)}' and '{CleanText.OnOneLine(other.Word)}' look the same by their hex in colors.csv; use one word if they are one color.";
            }
        }
    }
}
