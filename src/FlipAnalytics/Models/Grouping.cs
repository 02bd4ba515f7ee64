using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The levels of a grouping of pieces, in ordinal order without regard to case.</summary>
internal sealed class Grouping
{
    private readonly Func<PieceFacts, string> levelOf;
    private readonly Dictionary<string, int> index = new(StringComparer.OrdinalIgnoreCase);

    private Grouping(string name, ImmutableArray<string> levels, Func<PieceFacts, string> levelOf)
    {
        Name = name;
        Levels = levels;
        this.levelOf = levelOf;
        for (int i = 0; i < levels.Length; i++)
            index[levels[i]] = i;
    }

    public string Name { get; }

    public ImmutableArray<string> Levels { get; }

    public static Grouping Of(string name, IEnumerable<PieceFacts> pieces, Func<PieceFacts, string> levelOf) =>
        new(name,
            [.. pieces.Select(levelOf).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)],
            levelOf);

    /// <summary>The index of a piece's level; −1 where no row has it.</summary>
    public int IndexOf(PieceFacts facts) => IndexOf(levelOf(facts));

    /// <summary>The index of a level; −1 where no row has it.</summary>
    public int IndexOf(string level) => index.GetValueOrDefault(level, -1);
}
