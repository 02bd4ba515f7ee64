namespace FlipAnalytics.Statistics;

/// <summary>Lower and upper end of an interval, both included; either may be infinite.</summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
public readonly record struct Limits(double Low, double High)
{
    /// <summary>High − Low.</summary>
    public double Width => High - Low;

    /// <summary>Whether the value lies between the ends, ends included.</summary>
    public bool Contains(double value) => value >= Low && value <= High;

    internal static void RefuseLevel(double level)
    {
        if (!(level is > 0 and < 1))
            throw new ArgumentOutOfRangeException(
                nameof(level), level, "A level must lie between 0 and 1, for example 0.95.");
    }
}
