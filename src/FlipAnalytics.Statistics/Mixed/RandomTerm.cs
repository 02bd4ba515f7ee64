using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A random intercept: a factor whose level effects are drawn from a common normal distribution.</summary>
public sealed record RandomTerm
{
    private RandomTerm(
        string name, ImmutableArray<string> levels, RandomStructure structure, ImmutableArray<double> positions)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        if (levels.IsDefaultOrEmpty)
        {
            throw new ArgumentException($"Random term '{name}' has no levels; give at least one.", nameof(levels));
        }

        var twice = levels.GroupBy(level => level, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1);
        if (twice is not null)
        {
            throw new ArgumentException(
                $"Random term '{name}' names the level '{twice.Key}' {twice.Count()} times; name each level once.",
                nameof(levels));
        }

        Name = name;
        Levels = levels;
        Structure = structure;
        Positions = positions;
    }

    /// <summary>The factor's name.</summary>
    public string Name { get; }

    /// <summary>Level names in index order.</summary>
    public ImmutableArray<string> Levels { get; }

    /// <summary>How the levels vary together.</summary>
    public RandomStructure Structure { get; }

    /// <summary>For a random walk, where each level lies (any unit, increasing); empty for exchangeable levels.</summary>
    public ImmutableArray<double> Positions { get; }

    /// <summary>Independent level effects u ~ N(0, σ²γ).</summary>
    public static RandomTerm Exchangeable(string name, ImmutableArray<string> levels) =>
        new(name, levels, RandomStructure.Exchangeable, []);

    /// <summary>
    /// A walk over ordered periods: 0 at the first, then independent increments of variance σ²γ per unit of position.
    /// </summary>
    /// <param name="name">The term's name.</param>
    /// <param name="levels">Period names, earliest first.</param>
    /// <param name="positions">Where each period lies, strictly increasing, one for each level.</param>
    public static RandomTerm RandomWalk(string name, ImmutableArray<string> levels, ImmutableArray<double> positions)
    {
        var term = new RandomTerm(name, levels, RandomStructure.RandomWalk, positions);
        if (positions.IsDefault || positions.Length != levels.Length)
        {
            throw new ArgumentException(
                $"Random walk '{name}' has {levels.Length} levels but "
                + $"{(positions.IsDefault ? 0 : positions.Length)} positions; give one position for each level.",
                nameof(positions));
        }

        for (int t = 0; t < positions.Length; t++)
        {
            if (!double.IsFinite(positions[t]) || (t > 0 && positions[t] <= positions[t - 1]))
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Random walk '{name}': position {positions[t]} of '{levels[t]}' must be finite and greater ")
                    + "than the one before it; sort the periods and merge those at the same position.",
                    nameof(positions));
            }
        }

        return term;
    }

    /// <summary>Independent normal draws behind the levels: every level, or every step of a walk.</summary>
    internal int ColumnCount => Structure == RandomStructure.RandomWalk ? Levels.Length - 1 : Levels.Length;
}
