using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What a comparison comes to.</summary>
public enum AdviceKind
{
    /// <summary>Nothing to compare yet.</summary>
    CannotSay,

    /// <summary>Whatever is chosen, the next piece does not pay.</summary>
    DoesNotPay,

    /// <summary>Sales cannot tell the levels apart.</summary>
    DoesNotMatter,

    /// <summary>Some stand out for the better: choose one of them.</summary>
    Choose,

    /// <summary>Some stand out for the worse: choose any other.</summary>
    Avoid,

    /// <summary>What stands out is better in one way and worse in another.</summary>
    Depends,

    /// <summary>Levels differ, and are not chosen at the bench: types, sources, channels.</summary>
    Differ,
}

/// <summary>
/// The one answer of a comparison. Its page, document and pictures say this and nothing that goes against it. Only levels
/// with enough sales are in it.
/// </summary>
/// <param name="Kind">What it comes to.</param>
/// <param name="Recommended">Levels to choose; empty unless the kind is <see cref="AdviceKind.Choose"/>.</param>
/// <param name="Faster">Levels that sell faster than the others, in the last year too.</param>
/// <param name="Slower">Levels that sell more slowly, in the last year too.</param>
/// <param name="BringMore">Levels that bring more.</param>
/// <param name="BringLess">Levels that bring less.</param>
/// <param name="NoLonger">Levels whose speed stood out over all years, but not in the last.</param>
public sealed record GroupAdvice(
    AdviceKind Kind, ImmutableArray<string> Recommended, ImmutableArray<string> Faster, ImmutableArray<string> Slower,
    ImmutableArray<string> BringMore, ImmutableArray<string> BringLess, ImmutableArray<string> NoLonger)
{
    /// <summary>Whether anything stands out.</summary>
    public bool StandsOut => !(Faster.IsEmpty && Slower.IsEmpty && BringMore.IsEmpty && BringLess.IsEmpty);

    internal static GroupAdvice Of(GroupComparisonReport report)
    {
        ToldApart told = report.ToldApart;
        double limit = 1 - told.Confidence;
        LevelRecord[] compared = [.. report.Levels.Where(l => l.IsCompared)];
        LevelRecord[] days = told.DaysDiffer ? [.. compared.Where(l => l.DaysP <= limit && l.Days is not null)] : [];
        LevelRecord[] still = [.. days.Where(l => l.DaysLately is null || l.DaysLately.Share < 0 == l.Days!.Share < 0)];
        LevelRecord[] price = told.PricesDiffer ? [.. compared.Where(l => l.PriceP <= limit && l.Price is not null)] : [];
        var answer = new GroupAdvice(
            AdviceKind.DoesNotMatter, [],
            Names(still.Where(l => l.Days!.Share < 0)), Names(still.Where(l => l.Days!.Share >= 0)),
            Names(price.Where(l => l.Price!.Share > 0)), Names(price.Where(l => l.Price!.Share <= 0)),
            Names(days.Except(still)));
        return answer.Decide(report, [.. compared.Select(l => l.Level)]);
    }

    private GroupAdvice Decide(GroupComparisonReport report, ImmutableArray<string> compared)
    {
        bool isChosen = report.By is GroupedBy.Color or GroupedBy.Finish;
        if (isChosen && !compared.IsEmpty && report.Next is { Pays: false })
            return this with { Kind = AdviceKind.DoesNotPay };
        if (compared.Length < 2)
            return this with { Kind = AdviceKind.CannotSay };
        if (!StandsOut)
            return this;
        if (!isChosen)
            return this with { Kind = AdviceKind.Differ };
        string[] better = [.. Faster.Union(BringMore)], worse = [.. Slower.Union(BringLess)];
        string[] good = [.. better.Except(worse).Where(Pays)];
        string[] best = [.. good.Where(level => Faster.Contains(level) && BringMore.Contains(level))];
        ImmutableArray<string> recommended = [.. best.Length > 0 ? best : good];
        return this with
        {
            Kind = !recommended.IsEmpty ? AdviceKind.Choose
                : better.Length == 0 && compared.Except(worse).Any(Pays) ? AdviceKind.Avoid : AdviceKind.Depends,
            Recommended = recommended,
        };

        bool Pays(string level) => report.Next?.Choices.FirstOrDefault(c => c.Level == level) is not { Money: <= 0 };
    }

    private static ImmutableArray<string> Names(IEnumerable<LevelRecord> levels) => [.. levels.Select(l => l.Level)];
}
