using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>What pieces can be told apart by.</summary>
public enum PieceTrait
{
    /// <summary>Kind of furniture.</summary>
    Type,

    /// <summary>Colour it was given.</summary>
    Color,

    /// <summary>Finish it was given.</summary>
    Finish,

    /// <summary>Condition when bought.</summary>
    Condition,
}

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
/// <param name="DifferenceP">
/// Chance of differences at least this large if all groups sold alike (log-rank test); null for fewer than two groups or
/// where they cannot be compared.
/// </param>
public sealed record MarketCurves(string By, DateOnly AsOf, ImmutableArray<MarketCurve> Curves, KaplanMeier? All, double? DifferenceP)
{
    /// <summary>Groups of every piece that was ever listed; pieces whose trait was not recorded are left out.</summary>
    /// <param name="log">The log as known at its date.</param>
    /// <param name="trait">What to tell pieces apart by.</param>
    public static MarketCurves Of(SalesLog log, PieceTrait trait)
    {
        ArgumentNullException.ThrowIfNull(log);
        var spells =
            (from piece in log.Pieces
             let name = NameOf(piece, trait)
             let last = AskingPath.Of(piece, [], log.Date).LastOrDefault()
             where name is not null && last is not null
             select (Name: name, Time: new SurvivalTime(last.Stop, last.Sold))).ToArray();
        var groups = spells.GroupBy(spell => spell.Name, StringComparer.OrdinalIgnoreCase)
            .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.OrdinalIgnoreCase);
        return new(trait.ToString().ToLowerInvariant(), log.Date,
            [.. groups.Select(group => new MarketCurve(group.Key, KaplanMeier.Estimate([.. group.Select(spell => spell.Time)])))],
            spells.Length == 0 ? null : KaplanMeier.Estimate([.. spells.Select(spell => spell.Time)]),
            Difference([.. spells.Select(spell => spell.Time)], [.. spells.Select(spell => spell.Name.ToUpperInvariant())]));
    }

    private static double? Difference(SurvivalTime[] times, string[] names)
    {
        if (names.Distinct().Count() < 2 || !times.Any(time => time.Ended))
            return null;
        try
        {
            double p = LogRank.Test(times, names).P;
            return double.IsFinite(p) ? p : null;
        }
        catch (ArgumentException)
        {
            // Groups that were never on the market at the same age cannot be compared.
            return null;
        }
    }

    private static string? NameOf(Piece piece, PieceTrait trait) => trait switch
    {
        PieceTrait.Type => piece.Type,
        PieceTrait.Color => piece.Colour,
        PieceTrait.Finish => piece.Finish,
        _ => piece.Condition?.ToString().ToLowerInvariant(),
    };
}
