using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>Words of a log that may mean the same: spelt alike but for spaces and hyphens, or colors that look alike.</summary>
public static class SimilarWords
{
    /// <summary>Two colors nearer than this (CIEDE2000) can hardly be told apart side by side.</summary>
    private const double HardlyDifferent = 2;

    /// <summary>A sentence for each such group of words; none where every word is plainly another.</summary>
    /// <param name="log">The log.</param>
    public static ImmutableArray<string> In(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return
        [
            .. SpeltAlike("color", log.Pieces.Select(p => p.Colour)),
            .. SpeltAlike("type", log.Pieces.Select(p => p.Type)),
            .. SpeltAlike("finish", log.Pieces.Select(p => p.Finish)),
            .. SpeltAlike("source", log.Pieces.Select(p => p.Source)),
            .. SpeltAlike("channel", log.Pieces.Select(p => p.Channel)),
            .. LookingAlike(log),
        ];
    }

    private static IEnumerable<string> SpeltAlike(string column, IEnumerable<string?> words) =>
        from same in words.OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)
            .GroupBy(word => string.Concat(word.Where(char.IsLetterOrDigit)), StringComparer.OrdinalIgnoreCase)
        where same.Key.Length > 0 && same.Count() > 1
        select $"{Listed(same)} count as different {(column == "finish" ? "finishes" : column + "s")}; write them alike if they are one.";

    private static IEnumerable<string> LookingAlike(SalesLog log)
    {
        var used = log.Pieces.Select(p => p.Colour).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        var seen = log.Colours.Where(c => c.Hex is not null && used.Contains(c.Word))
            .Select(c => (c.Word, Look: LabColour.FromHex(c.Hex!))).ToArray();
        for (int i = 0; i < seen.Length; i++)
        {
            foreach (var other in seen[(i + 1)..])
            {
                if (ColourDifference.Ciede2000(seen[i].Look, other.Look) < HardlyDifferent)
                    yield return $"{Listed([seen[i].Word, other.Word])} look the same by their hex in colors.csv; use one word if they are one color.";
            }
        }
    }

    private static string Listed(IEnumerable<string> words)
    {
        string[] quoted = [.. words.Select(word => $"'{LogProblems.OnOneLine(word)}'")];
        return $"{string.Join(", ", quoted[..^1])} and {quoted[^1]}";
    }
}
