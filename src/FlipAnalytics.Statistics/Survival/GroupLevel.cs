namespace FlipAnalytics.Statistics;

/// <summary>Which level of a grouping a new row belongs to.</summary>
public readonly record struct GroupLevel
{
    private const int UnseenIndex = -1;
    private const int NoIndex = -2;

    private GroupLevel(int index) => Index = index;

    /// <summary>A level that was never seen: no effect is known, its whole variance is added.</summary>
    public static GroupLevel Unseen { get; } = new(UnseenIndex);

    /// <summary>The row is in no level: neither effect nor variance.</summary>
    public static GroupLevel None { get; } = new(NoIndex);

    internal int Index { get; }

    internal bool IsUnseen => Index == UnseenIndex;

    internal bool IsNone => Index == NoIndex;

    /// <summary>The level at this index of <see cref="GroupColumn.Levels"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative index.</exception>
    public static GroupLevel Known(int index) => index >= 0
        ? new(index)
        : throw new ArgumentOutOfRangeException(nameof(index), index, "A level's index is 0 or more; use Unseen or None otherwise.");
}
