using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// Widths, depths and heights so far from those of other pieces of the type that a wrong unit or a slip of the pen is
/// likelier, and counts far beyond those of all sets. The models take such a dimension as not recorded and such a count as
/// what is usual for the type.
/// </summary>
internal static class WildSizes
{
    // Fewer tell no usual size.
    private const int FewestOfType = 3;
    private const double ExpectedSpread = 0.15;
    private const double ExpectedCounts = 5;

    // Not even twice or half the usual size is wild.
    private static readonly double LeastFactor = Math.Log(2.1);

    // Sets hold from two chairs to a dozen; what is beyond twice that is wild where no other sets are on record.
    private const int FewestSets = 3;
    private static readonly double LargestSet = Math.Log(24);
    private const double SetSpread = 0.4;
    private static readonly double LeastSetFactor = Math.Log(6);

    /// <summary>The same pieces without such dimensions and counts.</summary>
    public static Dictionary<string, PieceFacts> SetAside(Dictionary<string, PieceFacts> pieces)
    {
        var result = new Dictionary<string, PieceFacts>(pieces, StringComparer.OrdinalIgnoreCase);
        for (int d = 0; d < TypicalSize.Dimensions; d++)
        {
            var deviations = Deviations(pieces, d);
            double scale = MedianScale.Deviation([.. deviations.Select(p => p.Deviation)], 0, ExpectedSpread, ExpectedCounts);
            double limit = Math.Max(LeastFactor, RowCounts.Ordinary * scale);
            foreach (var (id, _) in deviations.Where(p => Math.Abs(p.Deviation) > limit))
            {
                PieceFacts facts = result[id];
                double?[] kept = [.. facts.LogDimensions];
                kept[d] = null;
                result[id] = facts with { LogDimensions = kept };
            }
        }

        double largest = LargestOrdinarySet([.. pieces.Values.Select(p => p.LogCount).Where(count => count > 0)]);
        foreach (var (id, facts) in result.Where(p => p.Value.LogCount > largest).ToArray())
        {
            double usual = MedianScale.Median(pieces.Values
                .Where(p => string.Equals(p.Type, facts.Type, StringComparison.OrdinalIgnoreCase) && p.LogCount <= largest)
                .Select(p => p.LogCount).DefaultIfEmpty(0));
            result[id] = facts with { LogCount = usual };
        }

        return result;
    }

    private static double LargestOrdinarySet(double[] sets)
    {
        if (sets.Length < FewestSets)
            return LargestSet;
        double usual = MedianScale.Median(sets);
        return usual + Math.Max(
            LeastSetFactor, RowCounts.Ordinary * MedianScale.Deviation(sets, usual, SetSpread, ExpectedCounts));
    }

    private static ImmutableArray<(string Id, double Deviation)> Deviations(Dictionary<string, PieceFacts> pieces, int d) =>
    [
        .. from type in pieces.Where(p => p.Value.LogDimensions[d] is not null)
               .GroupBy(p => p.Value.Type, StringComparer.OrdinalIgnoreCase)
           where type.Count() >= FewestOfType
           let usual = MedianScale.Median(type.Select(p => p.Value.LogDimensions[d]!.Value))
           from piece in type
           select (piece.Key, piece.Value.LogDimensions[d]!.Value - usual),
    ];
}
