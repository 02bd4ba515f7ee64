using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>What is made of a condition, colour, finish or material that is not stated.</summary>
internal enum Unstated
{
    /// <summary>It is a row with a gap like the log's own.</summary>
    AsRecorded,

    /// <summary>The log's mix, and no more than the usual one: for what the owner gains.</summary>
    NoMore,

    /// <summary>The log's mix, and no less than the usual one: for what the owner spends.</summary>
    NoLess,
}

/// <summary>
/// What the traits that a candidate leaves open add: the mix of the log's pieces, or the usual one's effect where that
/// is the more careful. So leaving a trait out never beats stating the usual one.
/// </summary>
internal sealed class UnstatedTraits
{
    private readonly List<(double Mix, double Usual)> effects = [];

    /// <summary>Variance that the open levels leave in the log.</summary>
    public double Variance { get; private set; }

    /// <summary>Groups whose level is open: their whole spread is in the forecast.</summary>
    public ImmutableArray<int> Groups { get; private set; } = [];

    public static UnstatedTraits Of(
        EffectsDesign design, MixedModelFit fit, ImmutableArray<EffectsRow> rows, PieceFacts facts,
        (double Worn, double Damaged) condition)
    {
        var traits = new UnstatedTraits();
        EffectsRow[] logged = [.. rows.Where(r => r.Origin == RowOrigin.Log)];
        if (facts.Condition is null)
        {
            // The columns of an unknown condition hold the mix already.
            traits.Add(logged.Where(r => r.Facts.Condition is not null), r => r.Facts.Condition!.Value.ToString(),
                r => r.Facts.Condition switch { Condition.Worn => condition.Worn, Condition.Damaged => condition.Damaged, _ => 0 },
                isInMean: true);
        }

        if (facts.Colour is null)
            traits.AddGroups(design, fit, logged, f => f.Colour, TermNames.Family, TermNames.Colour);
        if (facts.Finish is null)
            traits.AddGroups(design, fit, logged, f => f.Finish, TermNames.Finish);
        if (facts.Material is null)
            traits.AddGroups(design, fit, logged, f => f.Material, TermNames.Material);
        return traits;
    }

    /// <summary>What they add to the mean of the log.</summary>
    /// <param name="unstated">Which side is the careful one.</param>
    /// <param name="conditionVariance">Variance that an open condition leaves.</param>
    public double Shift(Unstated unstated, double conditionVariance) => unstated == Unstated.NoMore
        // A wider spread raises the mean of an exponential by half the variance; not knowing must not.
        ? effects.Sum(e => Math.Min(e.Mix, e.Usual)) - (Variance + conditionVariance) / 2
        : effects.Sum(e => Math.Max(e.Mix, e.Usual));

    private void AddGroups(
        EffectsDesign design, MixedModelFit fit, EffectsRow[] logged, Func<PieceFacts, string?> word, params string[] names)
    {
        int[] groups = [.. Enumerable.Range(0, design.Groups.Length).Where(k => names.Contains(design.Groups[k].Name))];
        EffectsRow[] recorded = [.. logged.Where(r => word(r.Facts) is not null)];
        if (groups.Length == 0 || recorded.Length == 0)
            return;
        Groups = [.. Groups, .. groups];
        Variance += groups.Sum(k => fit.Terms[k].Variance);
        Add(recorded, r => word(r.Facts)!, r => groups.Sum(k => fit.Terms[k].Levels[design.Groups[k].IndexOf(r.Facts)].Effect),
            isInMean: false);
    }

    private void Add(IEnumerable<EffectsRow> recorded, Func<EffectsRow, string> word, Func<EffectsRow, double> effect, bool isInMean)
    {
        EffectsRow[] all = [.. recorded];
        if (all.Length == 0)
            return;
        double mix = all.Average(effect);
        EffectsRow usual = all.GroupBy(word, StringComparer.OrdinalIgnoreCase)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.OrdinalIgnoreCase).First().First();
        effects.Add(isInMean ? (0, effect(usual) - mix) : (mix, effect(usual)));
    }
}
