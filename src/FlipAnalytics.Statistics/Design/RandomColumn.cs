using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics.Statistics;

/// <summary>A random term and the level of it that each row belongs to.</summary>
/// <param name="Term">Name and levels.</param>
/// <param name="Level">A level index a row, 0 or more.</param>
public sealed record RandomColumn(RandomTerm Term, ImmutableArray<int> Level)
{
    internal static RandomColumn Of(Term.RandomIntercept term, DataColumns data)
    {
        string?[] texts = data.TextsOf(term.Column);
        ImmutableArray<string> levels =
            [.. texts.Select(text => text!).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return new(
            RandomTerm.Exchangeable(term.Column, levels),
            [.. texts.Select(text => levels.BinarySearch(text!, StringComparer.Ordinal))]);
    }

    internal static RandomColumn Of(Term.RandomWalk term, DataColumns data)
    {
        double[] values = data.NumbersOf(term.Column);
        ImmutableArray<double> positions = term.Positions.IsDefaultOrEmpty
            ? [.. values.Distinct().Order()]
            : term.Positions;
        RandomTerm walk = RandomTerm.RandomWalk(
            term.Column, [.. positions.Select(position => position.ToString("R", CultureInfo.InvariantCulture))], positions);
        int[] level = [.. values.Select(value => positions.BinarySearch(value))];
        int astray = Array.FindIndex(level, index => index < 0);
        return astray < 0
            ? new(walk, [.. level])
            : throw new ArgumentException(FormattableString.Invariant(
                $"'{term.Column}' is {values[astray]} in row {data.PlaceOf(astray)} (counting from 0), where the random walk has no position; it has {Listing.Quoted(walk.Levels)}. Move the row to one of them or add its position."));
    }

    /// <summary>
    /// Where new rows belong: the level's index, −1 for a level never fitted and for one that is not given.
    /// </summary>
    internal int[] IndicesOf(DataColumns data) =>
    [
        .. data.TextsOf(Term.Name).Select(text =>
            Math.Max(-1, string.IsNullOrEmpty(text) ? -1 : Term.Levels.BinarySearch(text, StringComparer.Ordinal))),
    ];
}
