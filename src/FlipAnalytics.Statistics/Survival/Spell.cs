namespace FlipAnalytics.Statistics;

/// <summary>One row of durations: a whole spell, or an episode (start, stop] of one that was followed only from
/// <see cref="Start"/> on, or whose covariates changed there. Times are positive, in any one unit.</summary>
public readonly record struct Spell
{
    private Spell(SpellKind kind, double start, double lower, double upper)
    {
        Kind = kind;
        Start = start;
        Lower = lower;
        Upper = upper;
    }

    /// <summary>What is known about the end.</summary>
    public SpellKind Kind { get; }

    /// <summary>Age of the spell when this row begins, 0 or more: nothing is learnt from before it.</summary>
    public double Start { get; }

    /// <summary>The end is at this time or later; 0 when only an upper bound is known.</summary>
    public double Lower { get; }

    /// <summary>The end is at this time or earlier; infinite while the spell is running.</summary>
    public double Upper { get; }

    /// <summary>The last time the row speaks of: its end, or when it was last seen running.</summary>
    public double Stop => Kind == SpellKind.Running ? Lower : Upper;

    /// <summary>A spell seen to end at <paramref name="stop"/>, followed since <paramref name="start"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 ≤ start &lt; stop, both finite.</exception>
    public static Spell Ended(double stop, double start = 0)
    {
        CheckEpisode(start, stop);
        return new Spell(SpellKind.Ended, start, stop, stop);
    }

    /// <summary>A spell still running at <paramref name="stop"/> (right-censored), followed since
    /// <paramref name="start"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 ≤ start &lt; stop, both finite.</exception>
    public static Spell Running(double stop, double start = 0)
    {
        CheckEpisode(start, stop);
        return new Spell(SpellKind.Running, start, stop, double.PositiveInfinity);
    }

    /// <summary>A spell that had ended by <paramref name="stop"/>, nobody knows when (left-censored).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 &lt; stop, finite.</exception>
    public static Spell EndedBefore(double stop)
    {
        CheckEpisode(0, stop);
        return new Spell(SpellKind.EndedBefore, 0, 0, stop);
    }

    /// <summary>A spell seen running at <paramref name="lower"/> and found ended at <paramref name="upper"/>
    /// (interval-censored), followed since <paramref name="start"/>: it adds [S(lower) − S(upper)] / S(start) to the likelihood.
    /// With start equal to lower it is known only to have ended by <paramref name="upper"/> since it was first seen.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 &lt; lower &lt; upper, both finite, and 0 ≤ start ≤ lower.</exception>
    public static Spell EndedBetween(double lower, double upper, double start = 0)
    {
        if (!(lower > 0) || !double.IsFinite(lower))
        {
            throw new ArgumentOutOfRangeException(nameof(lower), lower,
                "The time at which a spell was last seen running must be positive and finite; use EndedBefore when it is 0.");
        }

        if (!(upper > lower) || !double.IsFinite(upper))
        {
            throw new ArgumentOutOfRangeException(nameof(upper), upper,
                $"The time at which a spell was found ended must be finite and after {lower}, when it was still running; use Ended when they are equal.");
        }

        if (!(start >= 0 && start <= lower))
        {
            throw new ArgumentOutOfRangeException(nameof(start), start,
                $"A spell seen running at {lower} is followed since then at the latest, and since 0 at the earliest; give 0 when it was followed from its beginning.");
        }

        return new Spell(SpellKind.EndedBetween, start, lower, upper);
    }

    private static void CheckEpisode(double start, double stop)
    {
        if (!(start >= 0) || !double.IsFinite(start))
        {
            throw new ArgumentOutOfRangeException(nameof(start), start,
                "A spell is followed from time 0 or later; give 0 when it was followed from its beginning.");
        }

        if (!(stop > start) || !double.IsFinite(stop))
        {
            throw new ArgumentOutOfRangeException(nameof(stop), stop,
                $"A spell must stop at a finite time after its start, {start}; give something that ended on its first day half a day or a day.");
        }
    }
}
