using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Which of the usual cautions fit a piece.</summary>
public static class Cautions
{
    /// <summary>
    /// The cautions that fit, the most serious first. They are picked by the words of the type and title, by words of
    /// age, material and finish, and by height; a caution that does not fit is left out, so a plain piece gets few.
    /// </summary>
    /// <param name="query">What is known of the piece.</param>
    public static ImmutableArray<Caution> For(CautionQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        var traits = new CautionTraits(query);
        return [.. CautionTable.Rules.Where(rule => rule.Fits(traits)).Select(rule => rule.Caution)];
    }
}
