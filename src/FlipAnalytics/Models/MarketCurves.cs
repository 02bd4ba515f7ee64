using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>How long the pieces of one group stay on the market.</summary>
/// <param name="Name">The group, such as a colour.</param>
/// <param name="Curve">Share still on sale by days since the first listing; pieces still on sale count as far as seen.</param>
public sealed record MarketCurve(string Name, KaplanMeier Curve)
{
    /// <summary>Pieces still under observation just before so many days.</summary>
    public int AtRisk(double days) => Curve.Steps.FirstOrDefault(step => step.Time >= days)?.AtRisk ?? 0;
}

/// <summary>How long groups of pieces stay on the market, as seen, without a model.</summary>
/// <param name="By">What the groups are told apart by, in a word such as color.</param>
/// <param name="AsOf">The log's date.</param>
/// <param name="Curves">The groups, most pieces first.</param>
/// <param name="All">All these pieces together; null where there are none.</param>
/// <param name="Unnamed">Pieces whose group is not written down, which are in no other curve; null where there are none.</param>
/// <param name="DifferenceP">
/// Chance of differences at least this large if all groups sold alike (log-rank test); null for fewer than two groups or
/// where they cannot be compared.
/// </param>
public sealed record MarketCurves(
    string By, DateOnly AsOf, ImmutableArray<MarketCurve> Curves, KaplanMeier? All, KaplanMeier? Unnamed, double? DifferenceP)
{
    private const double RangeLevel = 0.95;

    private readonly Lazy<Dictionary<string, KaplanMeier>> byName =
        new(() => Curves.ToDictionary(curve => curve.Name, curve => curve.Curve, StringComparer.OrdinalIgnoreCase));

    /// <summary>Groups of every piece that was ever listed.</summary>
    /// <param name="log">The log as known at its date.</param>
    /// <param name="by">By which word of theirs to tell pieces apart.</param>
    /// <param name="level">Chance that a range of a curve holds, between 0 and 1.</param>
    public static MarketCurves Of(SalesLog log, GroupedBy by, double level = RangeLevel)
    {
        ArgumentNullException.ThrowIfNull(log);
        var spells =
            (from piece in log.Pieces
             let last = AskingPath.Of(piece, [], log.Date).LastOrDefault()
             where last is not null
             select (Name: Word(piece), Time: new SurvivalTime(last.Stop, last.Sold))).ToArray();
        var named = spells.Where(spell => spell.Name is not null).ToArray();
        var groups = named.GroupBy(spell => spell.Name!, StringComparer.OrdinalIgnoreCase)
            .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.OrdinalIgnoreCase);
        return new(by.Singular(), log.Date,
            [.. groups.Select(group => new MarketCurve(group.Key, Curve(group.Select(spell => spell.Time))!))],
            Curve(named.Select(spell => spell.Time)),
            Curve(spells.Where(spell => spell.Name is null).Select(spell => spell.Time)),
            Difference([.. named.Select(spell => spell.Time)], [.. named.Select(spell => spell.Name!.ToUpperInvariant())]));

        string? Word(Piece piece) => by.WordOf(piece);

        KaplanMeier? Curve(IEnumerable<SurvivalTime> times) =>
            times.ToArray() is { Length: > 0 } some ? KaplanMeier.Estimate(some, level) : null;
    }

    /// <summary>The curve of a group, in either case; null where none of its pieces was listed.</summary>
    /// <param name="name">Its name; null for pieces whose group is not written down.</param>
    public KaplanMeier? Named(string? name) => name is null ? Unnamed : byName.Value.GetValueOrDefault(name);

    private static double? Difference(SurvivalTime[] times, string[] names)
    {
        if (names.Distinct().Count() < 2 || !times.Any(time => time.Ended))
            return null;
        try
        {
            double p = LogRank.Test(times, names).P;
            return double.IsFinite(p) ? p : null;
        }
        catch (NoEstimateException)
        {
            // Groups that were never on the market at the same age cannot be compared.
            return null;
        }
    }
}
