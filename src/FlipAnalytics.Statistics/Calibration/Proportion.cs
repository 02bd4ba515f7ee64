namespace FlipAnalytics.Statistics;

/// <summary>Intervals for a chance of which so many of so many came true.</summary>
public static class Proportion
{
    /// <summary>Wilson (1927), J. Am. Stat. Assoc. 22, 209–212: covers about the level, and behaves at 0 and at n.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No trials, successes outside 0..trials, or a level not between 0 and 1.
    /// </exception>
    public static Limits Wilson(int successes, int trials, double level = 0.95)
    {
        Refuse(successes, trials, level);
        double z = Tails.NormalQuantile((1 + level) / 2), n = trials, share = successes / n;
        double centre = share + z * z / (2 * n);
        double half = z * Math.Sqrt(share * (1 - share) / n + z * z / (4 * n * n));
        double scale = 1 + z * z / n;
        return new(
            successes == 0 ? 0 : (centre - half) / scale,
            successes == trials ? 1 : (centre + half) / scale);
    }

    /// <summary>Clopper and Pearson (1934), Biometrika 26, 404–413: covers at least the level, so it is wide.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No trials, successes outside 0..trials, or a level not between 0 and 1.
    /// </exception>
    public static Limits Exact(int successes, int trials, double level = 0.95)
    {
        Refuse(successes, trials, level);
        double tail = (1 - level) / 2;
        return new(
            successes == 0 ? 0 : Tails.BetaQuantile(tail, successes, trials - successes + 1),
            // The upper limit of a share is one less the lower limit of its opposite, which keeps a small tail small.
            successes == trials ? 1 : 1 - Tails.BetaQuantile(tail, trials - successes, successes + 1));
    }

    private static void Refuse(int successes, int trials, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        if (successes < 0 || successes > trials)
            throw new ArgumentOutOfRangeException(
                nameof(successes), successes, $"Successes must lie from 0 to the {trials} trials.");
        Limits.RefuseLevel(level);
    }
}
