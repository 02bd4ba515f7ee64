using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The levels of a category in the rows fitted.</summary>
/// <param name="Column">The category's column.</param>
/// <param name="BaseLevel">The level whose effect is 0.</param>
/// <param name="OtherLevels">The levels with a column of their own, in ordinal order.</param>
public sealed record CategoryLevels(string Column, string BaseLevel, ImmutableArray<string> OtherLevels)
{
    internal static CategoryLevels Of(Term.Category category, DataColumns data)
    {
        string[] levels =
        [
            .. data.TextsOf(category.Column).Select(level => level!)
                .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
        ];
        if (levels.Length < 2)
        {
            throw new ArgumentException(
                $"Category '{category.Column}' has only the level {Listing.Quoted(levels)} in the rows fitted; "
                + "it needs two or more to compare. Leave the term out.");
        }

        string baseLevel = category.BaseLevel ?? levels[0];
        if (!levels.Contains(baseLevel, StringComparer.Ordinal))
        {
            throw new ArgumentException(
                $"Category '{category.Column}' has no level '{baseLevel}' to compare with; the rows fitted have {Listing.Quoted(levels)}.");
        }

        return new(category.Column, baseLevel, [.. levels.Where(level => level != baseLevel)]);
    }

    /// <summary>1 where a row has the level, else 0; a level never fitted is named.</summary>
    internal double[] Indicator(string level, DataColumns data)
    {
        string?[] texts = data.TextsOf(Column);
        double[] indicator = new double[texts.Length];
        for (int i = 0; i < texts.Length; i++)
        {
            indicator[i] = texts[i] == level ? 1 : 0;
            if (indicator[i] == 0 && texts[i] != BaseLevel && !OtherLevels.Contains(texts[i]!, StringComparer.Ordinal))
            {
                throw new ArgumentException(
                    $"Row {i} (counting from 0): '{Column}' is '{texts[i]}', a level the fit never saw; "
                    + $"it knows {Listing.Quoted([BaseLevel, .. OtherLevels])}.");
            }
        }

        return indicator;
    }
}
