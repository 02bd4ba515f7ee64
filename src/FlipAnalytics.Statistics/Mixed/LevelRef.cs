namespace FlipAnalytics.Statistics;

/// <summary>Which level of a random term a new row belongs to. The default value is <see cref="None"/>.</summary>
public readonly record struct LevelRef
{
    private LevelRef(LevelKind kind, int index, double position)
    {
        Kind = kind;
        Index = index;
        Position = position;
    }

    /// <summary>The term contributes nothing to this row.</summary>
    public static LevelRef None => default;

    /// <summary>A level never fitted: effect 0, and the whole variance component is added.</summary>
    public static LevelRef Unseen { get; } = new(LevelKind.Unseen, -1, double.NaN);

    /// <summary>A fitted level by its index in <see cref="RandomTerm.Levels"/>.</summary>
    public static LevelRef Known(int index) => index >= 0
        ? new(LevelKind.Known, index, double.NaN)
        : throw new ArgumentOutOfRangeException(
            nameof(index), index, "A level index is 0 or more; use LevelRef.Unseen or LevelRef.None.");

    /// <summary>
    /// A place on a random walk, in the unit of its positions. Beyond either end the walk's end stays and
    /// σ²γ · distance is added; between two periods the effect is interpolated and the bridge variance added.
    /// </summary>
    public static LevelRef AtPosition(double position) => double.IsFinite(position)
        ? new(LevelKind.Position, -1, position)
        : throw new ArgumentOutOfRangeException(nameof(position), position, "A position must be finite.");

    internal LevelKind Kind { get; }

    internal int Index { get; }

    internal double Position { get; }
}

internal enum LevelKind
{
    None,
    Known,
    Unseen,
    Position,
}
