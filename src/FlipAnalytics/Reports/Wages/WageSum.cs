using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>Ends of a range in money an hour.</summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
public sealed record WageRange(decimal Low, decimal High);

/// <summary>
/// Money and hours of some flips. A wage is a sum of profits over the sum of their hours, over the flips of which both are
/// known, never a mean of wages. What lacks the one or the other is counted apart.
/// </summary>
public sealed record WageSum
{
    /// <summary>Level of <see cref="Range"/>: it holds 19 times in 20.</summary>
    public const double Level = 0.95;

    /// <summary>Fewest flips that tell how much of a wage is luck.</summary>
    public const int FewestForARange = 5;

    /// <summary>All flips.</summary>
    public required int Flips { get; init; }

    /// <summary>Flips with known profit and hours; the figures down to <see cref="OutsideHours"/> are theirs.</summary>
    public required int Counted { get; init; }

    /// <summary>Profits after the costs of each piece alone.</summary>
    public required decimal CashProfit { get; init; }

    /// <summary>Profits after all costs.</summary>
    public required decimal FullProfit { get; init; }

    /// <summary>Hands-on hours.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>Hours of outings and of work for no single piece.</summary>
    public required decimal OutsideHours { get; init; }

    /// <summary>Flips with known profit and unknown hours.</summary>
    public required int WithoutHours { get; init; }

    /// <summary>Cash profit of flips without hours.</summary>
    public required decimal CashProfitWithoutHours { get; init; }

    /// <summary>Full profit of flips without hours.</summary>
    public required decimal FullProfitWithoutHours { get; init; }

    /// <summary>Flips whose sale price or purchase price is unknown.</summary>
    public required int WithoutProfit { get; init; }

    /// <summary>Takings on record of flips without a known profit.</summary>
    public required decimal TakingsWithoutProfit { get; init; }

    /// <summary>Whether a counted flip lacks a cost of its own.</summary>
    public required bool CashIsAtMost { get; init; }

    /// <summary>Whether a counted flip lacks any cost.</summary>
    public required bool FullIsAtMost { get; init; }

    /// <summary>
    /// Where the full wage of such flips likely lies in the long run: a range that holds 19 times in 20, by
    /// <see cref="RatioOfTotals"/>. Null for fewer than <see cref="FewestForARange"/> counted flips.
    /// </summary>
    public WageRange? Range { get; init; }

    /// <summary>Hours at the bench and outside it.</summary>
    public decimal AllHours => BenchHours + OutsideHours;

    /// <summary>Cash profit for a hands-on hour; null where there are no such hours.</summary>
    public decimal? CashWage => BenchHours > 0 ? CashProfit / BenchHours : null;

    /// <summary>Full profit for an hour of all work; null where there are no hands-on hours.</summary>
    public decimal? FullWage => BenchHours > 0 ? FullProfit / AllHours : null;

    /// <summary>The sums of some flips.</summary>
    /// <param name="flips">The flips.</param>
    /// <param name="currency">The workshop's currency.</param>
    public static WageSum Of(IReadOnlyCollection<FlipWage> flips, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(flips);
        ArgumentNullException.ThrowIfNull(currency);
        FlipWage[] counted = [.. flips.Where(flip => flip.Counts)];
        FlipWage[] withoutHours = [.. flips.Where(flip => flip is { FullProfit: not null, BenchHours: null })];
        FlipWage[] withoutProfit = [.. flips.Where(flip => flip.FullProfit is null)];
        return new()
        {
            Flips = flips.Count,
            Counted = counted.Length,
            CashProfit = counted.Sum(flip => flip.CashProfit!.Value),
            FullProfit = counted.Sum(flip => flip.FullProfit!.Value),
            BenchHours = counted.Sum(flip => flip.BenchHours!.Value),
            OutsideHours = counted.Sum(flip => flip.OutsideHours),
            WithoutHours = withoutHours.Length,
            CashProfitWithoutHours = withoutHours.Sum(flip => flip.CashProfit!.Value),
            FullProfitWithoutHours = withoutHours.Sum(flip => flip.FullProfit!.Value),
            WithoutProfit = withoutProfit.Length,
            TakingsWithoutProfit = withoutProfit.Sum(flip => flip.Takings ?? 0),
            CashIsAtMost = counted.Any(flip => flip.CashIsAtMost),
            FullIsAtMost = counted.Any(flip => flip.FullIsAtMost),
            Range = RangeOf(counted, currency),
        };
    }

    private static WageRange? RangeOf(FlipWage[] counted, Currency currency)
    {
        if (counted.Length < FewestForARange || counted.All(flip => flip.BenchHours == 0))
            return null;
        Limits limits = RatioOfTotals.Of(
            [.. counted.Select(flip => ReportCrossing.Number(flip.FullProfit!.Value))],
            [.. counted.Select(flip => ReportCrossing.Number(flip.AllHours!.Value))]).Interval(Level);
        return ReportCrossing.Estimate(limits.Low, currency) is { } low
            && ReportCrossing.Estimate(limits.High, currency) is { } high
            ? new(low, high)
            : null;
    }
}
