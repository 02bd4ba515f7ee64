namespace FlipAnalytics;

/// <summary>
/// How fast a level sells now. Its log days against the average were θ ~ N(0, τ²) in the years before and are θ + N(0, δ²) in
/// the last one. Each is seen with variance σ²/d over d sales, as the log of expected over seen sales times σ. τ² is that of the
/// days model; δ² is what the changes of all levels scatter beyond luck (method of moments, as DerSimonian and Laird, 1986,
/// Controlled Clinical Trials 7, 177–188, from memory). So the last year weighs the more, the more taste moves, and a color
/// sold twice is drawn to its earlier sales and to the average.
/// </summary>
internal sealed class RecentDays
{
    private const int LastYear = 365;

    // A level without a sale has a rate too.
    private const double Half = 0.5;

    private readonly Dictionary<string, (RecentSales Before, RecentSales Lately)> seen;
    private readonly double between;
    private readonly double change;

    /// <param name="scores">Each listed piece: its sale less the sales expected of it without its level.</param>
    /// <param name="by">How pieces are grouped.</param>
    /// <param name="today">The log's date.</param>
    /// <param name="scale">σ of log days.</param>
    /// <param name="between">τ², the variance between levels.</param>
    public RecentDays(IEnumerable<DaysScore> scores, GroupedBy by, DateOnly today, double scale, double between)
    {
        this.between = between;
        var levels = scores.GroupBy(s => by.LevelOf(s.Piece), StringComparer.OrdinalIgnoreCase).Select(level => (
            level.Key,
            Before: RecentSales.Of([.. level.Where(s => !IsLate(s.Piece, today))], scale),
            Lately: RecentSales.Of([.. level.Where(s => IsLate(s.Piece, today))], scale))).ToArray();
        double before = Average(levels.Select(l => l.Before)), lately = Average(levels.Select(l => l.Lately));
        seen = levels.ToDictionary(
            l => l.Key, l => (l.Before - before, l.Lately - lately), StringComparer.OrdinalIgnoreCase);
        change = Change([.. seen.Values.Where(s => s.Before.Sold > 0 && s.Lately.Sold > 0)]);
    }

    public static bool IsLate(Piece piece, DateOnly today) =>
        Crossing.Day(piece.ListedOn!.Value) > Crossing.Day(today) - LastYear;

    /// <summary>Sold of a level's pieces listed before the last year, and since; with the log ratio of their days.</summary>
    public (int Before, int Lately, double LogRatio, double Variance)? Trend(string level) =>
        seen.TryGetValue(level, out var s)
            ? (s.Before.Sold, s.Lately.Sold, s.Lately.Effect - s.Before.Effect, s.Before.Variance + s.Lately.Variance) : null;

    /// <summary>Log days of a level in the last year against the average level, with variance; null where none was listed.</summary>
    public (double Effect, double Variance)? Of(string level)
    {
        if (!seen.TryGetValue(level, out var s))
            return null;
        // First what the years before tell, then the last one.
        double effect = between / (between + s.Before.Variance) * s.Before.Effect;
        double variance = between * s.Before.Variance / (between + s.Before.Variance) + change;
        if (double.IsInfinity(s.Before.Variance))
            (effect, variance) = (0, between + change);
        if (double.IsInfinity(s.Lately.Variance))
            return (effect, variance);
        double weight = variance / (variance + s.Lately.Variance);
        return (effect + weight * (s.Lately.Effect - effect), (1 - weight) * variance);
    }

    private static double Change((RecentSales Before, RecentSales Lately)[] levels)
    {
        if (levels.Length < 2)
            return 0;
        double sum = 0, weights = 0;
        foreach (var (before, lately) in levels)
        {
            double luck = before.Variance + lately.Variance, weight = 1 / (luck * luck);
            sum += weight * (Math.Pow(lately.Effect - before.Effect, 2) - luck);
            weights += weight;
        }

        return Math.Max(0, sum / weights);
    }

    private static double Average(IEnumerable<RecentSales> levels)
    {
        double sum = 0, weights = 0;
        foreach (RecentSales level in levels.Where(l => !double.IsInfinity(l.Variance)))
        {
            sum += level.Effect / level.Variance;
            weights += 1 / level.Variance;
        }

        return weights > 0 ? sum / weights : 0;
    }

    private readonly record struct RecentSales(int Sold, double Effect, double Variance)
    {
        public static RecentSales Of(DaysScore[] pieces, double scale)
        {
            if (pieces.Length == 0)
                return new(0, 0, double.PositiveInfinity);
            int sold = pieces.Sum(p => p.Sold);
            return new(
                sold, scale * Math.Log((pieces.Sum(p => p.Expected) + Half) / (sold + Half)), scale * scale / (sold + Half));
        }

        public static RecentSales operator -(RecentSales level, double average) => level with { Effect = level.Effect - average };
    }
}
