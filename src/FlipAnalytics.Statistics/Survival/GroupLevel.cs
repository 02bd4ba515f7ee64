namespace FlipAnalytics.Statistics;

/// <summary>Which level of a grouping a new row belongs to; the default is <see cref="None"/>.</summary>
public readonly record struct GroupLevel
{
    // The index plus 2, so that the default value belongs to no level; 1 is an unseen one.
    private readonly int code;

    private GroupLevel(int code) => this.code = code;

    /// <summary>A level that was never seen: no effect is known, its whole variance is added.</summary>
    public static GroupLevel Unseen { get; } = new(1);

    /// <summary>The row is in no level: neither effect nor variance.</summary>
    public static GroupLevel None { get; }

    internal int Index => code - 2;

    internal bool IsUnseen => code == 1;

    internal bool IsNone => code == 0;

    /// <summary>The level at this index of <see cref="GroupColumn.Levels"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative index.</exception>
    public static GroupLevel Known(int index) => index >= 0
        ? new(index + 2)
        : throw new ArgumentOutOfRangeException(nameof(index), index, "A level's index is 0 or more; use Unseen or None otherwise.");
}
