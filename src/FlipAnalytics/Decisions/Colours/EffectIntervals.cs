using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The shrunk effect of one level, in percent.</summary>
/// <param name="Name">The level, such as a colour.</param>
/// <param name="Count">Pieces it rests on: listed ones for days, sold ones for the sale price.</param>
/// <param name="Estimate">Change against the average level, in percent; above −100.</param>
/// <param name="Low">Lower end of its range.</param>
/// <param name="High">Upper end of its range.</param>
public sealed record EffectInterval(string Name, int Count, double Estimate, double Low, double High)
{
    /// <summary>Whether it stands out: unless a comparison says so or not, whether its range leaves out zero.</summary>
    public bool StandsOut { get; init; } = Low > 0 || High < 0;
}

/// <summary>What the levels of a group do to an amount, everything else being equal.</summary>
/// <param name="Response">The amount in words, such as sale price.</param>
/// <param name="Group">What is compared in words, such as color.</param>
/// <param name="Level">Chance that a range holds, 0 to 1.</param>
/// <param name="Rows">The levels, the best first: fewest days, highest price.</param>
public sealed record EffectIntervals(string Response, string Group, double Level, ImmutableArray<EffectInterval> Rows)
{
    /// <summary>What they show, in a sentence without a full stop; null where the rows speak for themselves.</summary>
    public string? Finding { get; init; }

    /// <summary>The effects in a comparison, in percent, days those of the last year; no rows where nothing is known of them.</summary>
    /// <param name="report">The comparison.</param>
    /// <param name="amount">Days on market or sale price.</param>
    /// <exception cref="ArgumentOutOfRangeException">The comparison holds no such amount.</exception>
    public static EffectIntervals Of(GroupComparisonReport report, ModelName amount)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (amount is not (ModelName.Days or ModelName.Price))
            throw new ArgumentOutOfRangeException(nameof(amount), amount, "Groups are compared by days and by price: name one of them.");
        (LevelRecord Level, RelativeDifference Effect)[] known =
        [
            .. from level in report.Levels
               where level.Level != GroupWords.NotWrittenDown
               let effect = amount == ModelName.Days ? level.DaysLately ?? level.Days : level.Price
               where effect is not null
               orderby effect.Share * (amount == ModelName.Days ? 1 : -1), level.Level
               select (level, effect),
        ];
        var sentences = new GroupComparisonSentences(report);
        GroupAdvice advice = report.Advice;
        string[] standing = amount == ModelName.Days
            ? [.. advice.Faster, .. advice.Slower] : [.. advice.BringMore, .. advice.BringLess];
        return new(
            ModelFitting.Words(amount), report.By.Singular(), GroupComparison.RangeLevel,
            [
                .. known.Select(row => new EffectInterval(
                    row.Level.Level,
                    amount == ModelName.Days ? report.Market.Named(row.Level.Level)?.Count ?? 0 : row.Level.Sold,
                    100 * row.Effect.Share, 100 * row.Effect.Low, 100 * row.Effect.High)
                {
                    StandsOut = standing.Contains(row.Level.Level),
                }),
            ])
        {
            Finding = amount == ModelName.Days ? sentences.DaysFinding() : sentences.PriceFinding(),
        };
    }
}
