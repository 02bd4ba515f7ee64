using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// Widths, depths and heights so far from those of other pieces of the type that a wrong unit or a slip of the pen is
/// likelier. The models take them as not recorded.
/// </summary>
internal static class WildDimensions
{
    // Fewer tell no usual size.
    private const int FewestOfType = 3;
    private const double ExpectedSpread = 0.15;
    private const double ExpectedCounts = 5;

    // Not even twice or half the usual size is wild.
    private static readonly double LeastFactor = Math.Log(2.1);

    /// <summary>The same pieces without such dimensions.</summary>
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

        return result;
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
