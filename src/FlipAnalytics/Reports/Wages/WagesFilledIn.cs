namespace FlipAnalytics;

/// <summary>The answer once hours that nobody wrote down are filled in with estimates.</summary>
/// <param name="Filled">Flips filled in.</param>
/// <param name="Hours">Hands-on hours filled in.</param>
/// <param name="StillUnknown">Flips with a known profit that no estimate was given for.</param>
/// <param name="Total">The total with them.</param>
public sealed record WagesFilledIn(int Filled, decimal Hours, int StillUnknown, WageSum Total)
{
    /// <summary>The total with hours filled in; null where none is missing that is given.</summary>
    /// <param name="flips">The flips.</param>
    /// <param name="hours">Estimates by piece id; hours on record count before them.</param>
    /// <param name="currency">The workshop's currency.</param>
    public static WagesFilledIn? Of(
        IReadOnlyCollection<FlipWage> flips, IReadOnlyDictionary<string, decimal> hours, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(flips);
        ArgumentNullException.ThrowIfNull(hours);
        FlipWage[] without = [.. flips.Where(flip => flip is { FullProfit: not null, BenchHours: null })];
        FlipWage[] fillable = [.. without.Where(flip => hours.ContainsKey(flip.Id))];
        return fillable.Length == 0 ? null : new(
            fillable.Length,
            fillable.Sum(flip => hours[flip.Id]),
            without.Length - fillable.Length,
            WageSum.Of(
                [
                    .. flips.Select(flip => flip is { FullProfit: not null, BenchHours: null }
                        && hours.TryGetValue(flip.Id, out decimal estimate) ? flip.WithBenchHours(estimate) : flip),
                ],
                currency));
    }
}
