using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// Turns observations into the columns and groups of a model of a log amount. Where a colour or finish was not recorded,
/// the row belongs to the level "not recorded": a row with gaps still counts.
/// </summary>
internal sealed class EffectsDesign
{
    private EffectsDesign(DesignColumns columns, ImmutableArray<Grouping> groups, ImmutableArray<int> months)
    {
        Columns = columns;
        Groups = groups;
        Months = months;
    }

    public DesignColumns Columns { get; }

    /// <summary>Groups of exchangeable effects, in order; the months, if any, come after them.</summary>
    public ImmutableArray<Grouping> Groups { get; }

    /// <summary>Month numbers with an observation, in order; empty where the level does not drift.</summary>
    public ImmutableArray<int> Months { get; }

    public int TermCount => Groups.Length + (Months.IsEmpty ? 0 : 1);

    /// <summary>A design for these rows.</summary>
    /// <param name="specification">The terms.</param>
    /// <param name="rows">The observations.</param>
    /// <param name="plain">
    /// Whether outside software must be able to fit it: no drift, no predictor of the types' effects, no materials, no column that never
    /// varies, and only groups that have at least two levels and fewer levels than rows.
    /// </param>
    public static EffectsDesign Of(EffectsSpecification specification, ImmutableArray<EffectsRow> rows, bool plain)
    {
        PieceFacts[] facts = [.. rows.Select(r => r.Facts)];
        var columns = DesignColumns.Of([.. specification.FixedTerms.Select(t => t.Name)], facts);
        ImmutableArray<Grouping> groups =
            [.. Groupings(specification, facts).Where(g => !specification.LeftOut.Contains(g.Name))];
        if (plain)
        {
            return new(
                columns.Without(TermNames.TypeHours).WithoutConstant(rows.Select(r => r.Values)),
                [.. groups.Where(g => g.Name != TermNames.Material && g.Levels.Length >= 2 && g.Levels.Length < rows.Length)],
                []);
        }

        ImmutableArray<int> months =
            [.. rows.Where(r => r.Date is not null).Select(r => Crossing.Month(r.Date!.Value)).Distinct().Order()];
        return new(columns, groups, specification.MonthlyDrift is null || months.Length < 2 ? [] : months);
    }

    /// <summary>Where a row stands in each group and in the months: a level index, or −1 for none.</summary>
    public int[] Levels(EffectsRow row)
    {
        var levels = Groups.Select(g => g.IndexOf(row.Facts));
        if (!Months.IsEmpty)
        {
            // A guess, or a sale without a date, says nothing of how the level moved: it counts as made at the start.
            levels = levels.Append(row.Date is { } day ? Months.IndexOf(Crossing.Month(day)) : -1);
        }

        return [.. levels];
    }

    /// <summary>The levels of a new piece, at its date.</summary>
    public LevelRef[] NewLevels(DesignValues values)
    {
        var levels = Groups.Select(g => g.IndexOf(values.Facts) is var index and >= 0 ? LevelRef.Known(index) : LevelRef.Unseen);
        return [.. Months.IsEmpty ? levels : levels.Append(LevelRef.AtPosition(Crossing.Month(values.Date!.Value)))];
    }

    /// <summary>The random terms, for the fit.</summary>
    public RandomTerm[] RandomTerms()
    {
        var terms = Groups.Select(g => RandomTerm.Exchangeable(g.Name, g.Levels));
        if (!Months.IsEmpty)
        {
            terms = terms.Append(RandomTerm.RandomWalk(
                TermNames.Month, [.. Months.Select(Crossing.MonthName)], [.. Months.Select(m => (double)m)]));
        }

        return [.. terms];
    }

    private static IEnumerable<Grouping> Groupings(EffectsSpecification specification, PieceFacts[] facts)
    {
        yield return Grouping.Of(TermNames.Type, facts, f => f.Type);
        if (specification.Colour is not null)
        {
            Grouping colour = Grouping.Of(TermNames.Colour, facts, f => f.Colour ?? TermNames.NotRecorded);
            Grouping family = Grouping.Of(
                TermNames.Family, facts, f => f.Colour is null ? TermNames.NotRecorded : f.Family ?? f.Colour);
            // A family can be told from its colours only where several families hold several colours.
            if (colour.Levels.Length >= family.Levels.Length + 3)
                yield return family;
            yield return colour;
        }

        yield return Grouping.Of(TermNames.Finish, facts, f => f.Finish ?? TermNames.NotRecorded);
        // One material everywhere, or none on record, tells nothing of what another would change.
        if (specification.Material is not null
            && Grouping.Of(TermNames.Material, facts, f => f.Material ?? TermNames.NotRecorded) is { Levels.Length: > 1 } material)
        {
            yield return material;
        }

        if (specification.Further is not null)
            yield return Grouping.Of(TermNames.Further, facts, specification.Further);
    }
}
