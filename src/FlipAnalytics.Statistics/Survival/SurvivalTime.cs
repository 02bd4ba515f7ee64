namespace FlipAnalytics.Statistics;

/// <summary>One spell under observation, (Start, Stop]: followed from just after Start to Stop, where it either ended or was
/// last seen running. Any unit of time.</summary>
/// <param name="Start">0, or the age at which the spell came under observation; 0 or more.</param>
/// <param name="Stop">The age when it ended or was last seen; above Start.</param>
/// <param name="Ended">Whether it ended at Stop.</param>
public readonly record struct SurvivalTime(double Start, double Stop, bool Ended)
{
    /// <summary>A spell followed from its beginning.</summary>
    public SurvivalTime(double stop, bool ended)
        : this(0, stop, ended)
    {
    }

    internal static void Refuse(IReadOnlyList<SurvivalTime> times)
    {
        ArgumentNullException.ThrowIfNull(times);
        if (times.Count == 0)
            throw new ArgumentException("There are no spells; a curve needs at least one.", nameof(times));
        for (int i = 0; i < times.Count; i++)
        {
            if (!(times[i].Start >= 0 && times[i].Stop > times[i].Start && double.IsFinite(times[i].Stop)))
                throw new ArgumentException(
                    $"Spell {i} (counting from 0) runs from {times[i].Start} to {times[i].Stop}; it must start at 0 or later and stop after it starts.",
                    nameof(times));
        }
    }
}
