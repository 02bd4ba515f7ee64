using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>How the full wages of single flips lie.</summary>
/// <param name="Flips">Flips with a wage.</param>
/// <param name="Lowest">The lowest wage.</param>
/// <param name="LowerQuartile">A quarter of the flips paid at most this.</param>
/// <param name="Median">Half of them paid at most this.</param>
/// <param name="UpperQuartile">Three quarters of them paid at most this.</param>
/// <param name="Highest">The highest wage.</param>
/// <param name="AtTarget">Flips that paid the target wage or more; null without a target.</param>
public sealed record WageSpread(
    int Flips,
    decimal Lowest,
    decimal LowerQuartile,
    decimal Median,
    decimal UpperQuartile,
    decimal Highest,
    int? AtTarget)
{
    /// <summary>Share of flips that paid the target wage or more, 0 to 1; null without a target.</summary>
    public decimal? ShareAtTarget => AtTarget * 1m / Flips;

    /// <summary>The spread of some flips; null where none has a wage.</summary>
    /// <param name="flips">The flips.</param>
    /// <param name="targetWage">What the owner wants for an hour; null for no target.</param>
    public static WageSpread? Of(IEnumerable<FlipWage> flips, decimal? targetWage)
    {
        ArgumentNullException.ThrowIfNull(flips);
        ImmutableArray<decimal> wages = [.. flips.Select(flip => flip.FullWage).OfType<decimal>().Order()];
        return wages.IsEmpty ? null : new(
            wages.Length,
            wages[0],
            Quantile(wages, 0.25m),
            Quantile(wages, 0.5m),
            Quantile(wages, 0.75m),
            wages[^1],
            targetWage is { } target ? wages.Count(wage => wage >= target) : null);
    }

    /// <summary>Definition 7 of Hyndman and Fan (1996), Am. Stat. 50, 361–365: between the values, which lie at (i − 1) / (n − 1).</summary>
    private static decimal Quantile(ImmutableArray<decimal> sorted, decimal share)
    {
        decimal place = share * (sorted.Length - 1);
        int below = (int)place;
        decimal part = place - below;
        return part == 0 ? sorted[below] : sorted[below] + part * (sorted[below + 1] - sorted[below]);
    }
}
