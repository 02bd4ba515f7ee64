using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What flips are grouped by.</summary>
public enum WageGroupBy
{
    /// <summary>Kind of furniture.</summary>
    Type,

    /// <summary>Colour it was given.</summary>
    Color,

    /// <summary>Where it was found.</summary>
    Source,

    /// <summary>Quarter of the calendar year in which it was sold.</summary>
    Quarter,
}

/// <summary>Flips that have something in common.</summary>
/// <param name="Name">What they have in common; null for those of which the log does not tell it.</param>
/// <param name="Sum">Their money and hours.</param>
public sealed record WageGroup(string? Name, WageSum Sum);

/// <summary>All flips, parted into groups.</summary>
/// <param name="By">What by.</param>
/// <param name="Groups">Quarters by date, others by full wage, best first; those without a wage after them, and last the
/// flips of which the log does not tell.</param>
public sealed record WageGrouping(WageGroupBy By, ImmutableArray<WageGroup> Groups)
{
    /// <summary>The grouping of some flips. Names that differ only in case are one.</summary>
    /// <param name="flips">The flips, in the order of the log.</param>
    /// <param name="by">What by.</param>
    /// <param name="currency">The workshop's currency.</param>
    public static WageGrouping Of(IReadOnlyCollection<FlipWage> flips, WageGroupBy by, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(flips);
        IEnumerable<WageGroup> groups = flips
            .GroupBy(flip => NameOf(flip, by) ?? "", StringComparer.OrdinalIgnoreCase)
            .Select(group => new WageGroup(NameOf(group.First(), by), WageSum.Of([.. group], currency)));
        return new(by, [.. by == WageGroupBy.Quarter
            ? groups.OrderBy(group => group.Name is null).ThenBy(group => group.Name, StringComparer.Ordinal)
            : groups.OrderBy(group => group.Name is null)
                .ThenByDescending(group => group.Sum.FullWage ?? decimal.MinValue)
                .ThenBy(group => group.Name, StringComparer.OrdinalIgnoreCase)]);
    }

    /// <summary>The name of the group that a flip is in; null where the log does not tell it.</summary>
    /// <param name="flip">The flip.</param>
    /// <param name="by">What by.</param>
    public static string? NameOf(FlipWage flip, WageGroupBy by)
    {
        ArgumentNullException.ThrowIfNull(flip);
        string? name = by switch
        {
            WageGroupBy.Type => flip.Type,
            WageGroupBy.Color => flip.Colour,
            WageGroupBy.Source => flip.Source,
            _ => flip.SoldOn is { } day ? ReportPeriod.QuarterOf(day).Name : null,
        };
        return string.IsNullOrWhiteSpace(name) ? null : name;
    }
}
