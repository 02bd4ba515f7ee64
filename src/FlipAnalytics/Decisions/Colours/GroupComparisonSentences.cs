using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>The sentences of a comparison, for a page that lays them out in its own way.</summary>
public sealed class GroupComparisonSentences
{
    private const int PairsShown = 5;
    private const int NamesShown = 6;
    private const int ManyFlips = 1000;

    private readonly GroupComparisonReport report;
    private readonly GroupAdvice advice;
    private readonly ToldApart told;
    private readonly string one;
    private readonly string many;

    /// <summary>The sentences of a report.</summary>
    /// <param name="report">The comparison.</param>
    public GroupComparisonSentences(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        this.report = report;
        advice = report.Advice;
        told = report.ToldApart;
        one = report.By.Singular();
        many = report.By.Plural();
    }

    /// <summary>The one answer: what to choose, or that it does not matter, or why it cannot be said.</summary>
    public string Headline() => advice.Kind switch
    {
        AdviceKind.CannotSay => TooLittle(),
        AdviceKind.DoesNotPay => DoesNotPay(),
        AdviceKind.DoesNotMatter when !IsChosen => $"{Findings()}.",
        AdviceKind.DoesNotMatter => $"It does not matter which {one} you choose, as far as your sales can tell.",
        AdviceKind.Choose => $"{(report.By == GroupedBy.Color ? "Paint it" : "Choose")} {Or(advice.Recommended)}: {Reason()}.",
        AdviceKind.Avoid => $"Any {one} but {Or([.. advice.Slower.Union(advice.BringLess)])}: {Claims()}; between the others it does not matter.",
        AdviceKind.Depends => $"It depends on what you need: {Claims()}.",
        _ => $"{Findings()}.",
    };

    /// <summary>What stands out by days and by price, or that nothing does; without a full stop, for pictures too.</summary>
    public string Findings()
    {
        if (told.Compared.Length < 2)
            return TooLittle().TrimEnd('.');
        return advice.StandsOut
            ? Capital(Claims())
            : $"Your sales cannot tell your {many} apart, neither by days on sale nor by sale price";
    }

    /// <summary>What stands out by days alone; without a full stop.</summary>
    public string DaysFinding() => Speed() is { Length: > 0 } speed
        ? $"{Capital(speed)} than your other {many}" : $"Your sales cannot tell how fast one {one} sells from another";

    /// <summary>What stands out by sale price alone; without a full stop.</summary>
    public string PriceFinding() => Prices() is { Length: > 0 } prices
        ? $"{Capital(prices)} than your other {many}" : $"Your sales cannot tell what one {one} brings from another";

    /// <summary>How far that could be luck, what is too few, and how large a difference could be seen.</summary>
    public IEnumerable<string> Evidence()
    {
        if (told.Compared.Length < 2)
        {
            if (told.TooFew.Length > 0)
                yield return $"Sold so far: {Some(report.Levels.Where(l => l.Sold > 0).Select(l => Invariant($"{l.Level} {l.Sold}")))}.";
            yield break;
        }

        if (advice.Kind == AdviceKind.DoesNotPay || (advice.Kind == AdviceKind.Choose && advice.Recommended.Length == 1 && IsMoreThanReason))
            yield return advice.StandsOut ? $"Over all pieces: {Claims()}." : $"{Findings()}.";
        yield return Luck();
        if (!advice.NoLonger.IsEmpty)
            yield return $"Over all years {Some(advice.NoLonger)} stood out by days on sale, but no longer in the last year.";
        if (!told.DaysDiffer && report.Levels.Where(l => l.ChanceToShow is not null).MaxBy(l => l.ChanceToShow) is { } best)
        {
            yield return Invariant($"Only a large difference in days would show: {best.Level} would have to sell in {Percent(best.LeastShown)} % fewer days than the rest to be noticed in 8 of 10 such logs.");
        }

        if (told.TooFew.Length > 0)
            yield return $"Not enough sold to say (fewer than {told.LeastSales}): {Some(told.TooFew)}.";
    }

    /// <summary>Which differ two by two, for those who want to know more.</summary>
    public IEnumerable<string> Pairs()
    {
        if (told.DaysPairs.Length > 0)
            yield return "Two by two, by days: " + Listed(Shown(told.DaysPairs, p => $"{p.First} before {p.Second} ({Percent(-p.Share)} % fewer)")) + ".";
        if (told.PricePairs.Length > 0)
            yield return "Two by two, by price: " + Listed(Shown(told.PricePairs, p => $"{p.First} below {p.Second} ({Percent(-p.Share)} % less)")) + ".";
    }

    /// <summary>What the columns of the table mean.</summary>
    public IEnumerable<string> HowToRead()
    {
        yield return "Against the average: all else alike (type, size, condition, asking price, season); few sales are drawn towards the average. Fewer days (below 0) is faster. In brackets: holds in 8 of 10 cases.";
        yield return "Half sold in days: pieces still on sale count; \"not reached\": fewer than half would be sold by the longest wait so far; \"?\": no limit yet.";
        yield return $"Money a week: what is left of the sales after purchase, fees, supplies and hours at {MoneyText.Exact(report.TargetWage, report.Workshop)}, over all weeks on sale, unsold pieces' weeks too.";
    }

    /// <summary>The last year against before; null where no level is known.</summary>
    public string? Trends()
    {
        LevelRecord[] levels = [.. report.Levels.Where(l => l.Sold > 0 && l.Level != GroupWords.NotWrittenDown)];
        var known = levels.Where(l => l.Trend.Days is not null).ToArray();
        if (levels.Length == 0)
            return null;
        string few = Listed(levels.Except(known).Select(l => l.Level));
        if (known.Length == 0)
            return $"Last year against before: too few sales to say for any {one}.";
        return $"Listed in the last year against before, days on sale: "
            + string.Join("; ", known.Select(l => Invariant(
                $"{l.Level} {100 * l.Trend.Days!.Share:+0;-0;0} % ({100 * l.Trend.Days.Low:+0;-0;0} to {100 * l.Trend.Days.High:+0;-0;0})")))
            + (few.Length > 0 ? $"; too few to say: {few}." : ".");
    }

    /// <summary>What the table of the next piece says; null where nothing is compared.</summary>
    public string? Next() => report.Next is { } next && report.Choices.Length > 1
        ? $"The next {next.Type}: what is likely left for buying it once fees, supplies, hours at {MoneyText.Exact(report.TargetWage, report.Workshop)} and waiting are paid"
            + (told.PricesDiffer ? "." : "; the differences may be luck.")
        : null;

    /// <summary>What would make the choice surer; null where it is sure or there is none.</summary>
    public string? Surer() => report.Next is { MoreFlips: { } more } next
            && next.Choices.Where(choice => choice.IsCompared).ToArray() is [var first, var second, ..]
        ? Invariant($"{(more > ManyFlips ? $"Over {ManyFlips}" : $"About {more}")} more sales in {first.Level} and {second.Level} would make it 90 % sure which of the two leaves more, if the difference is what it seems.")
        : null;

    private bool IsChosen => report.By is GroupedBy.Color or GroupedBy.Finish;

    private bool IsMoreThanReason => advice.Faster.Concat(advice.Slower).Concat(advice.BringMore).Concat(advice.BringLess)
        .Any(level => !advice.Recommended.Contains(level));

    private string Reason()
    {
        if (advice.Recommended is not [var only])
            return Claims();
        string[] reasons =
        [
            .. advice.Faster.Contains(only) ? new[] { "sells faster" } : [],
            .. advice.BringMore.Contains(only) ? new[] { "brings more" } : [],
        ];
        return $"it {string.Join(" and ", reasons)} than your other {many}";
    }

    private string TooLittle() =>
        report.Sold == 0 ? $"Nothing is sold yet, so nothing can be said about which {many} sell well."
        : told.TooFew.IsEmpty ? $"No sold piece has its {one} written down, so {many} cannot be compared."
        : told.TooFew.Length == 1
            ? $"Every sale with a {one} written down is {told.TooFew[0]}, so there is nothing to compare it with."
            : $"Not enough sold to compare {many} yet: two of them need {told.LeastSales} sales each.";

    private string DoesNotPay()
    {
        NextPiece next = report.Next!;
        decimal least = -next.Choices.Max(choice => choice.Money);
        string which = next.Choices.Length == JointRanks.Most ? $"None of the {many} you sold most makes" : $"No {one} makes";
        return $"{which} a {next.Type} pay: even as a gift it falls {MoneyText.Whole(least, report.Workshop)} or more short of your {MoneyText.Exact(report.TargetWage, report.Workshop)} an hour.";
    }

    // Pure luck, as how many logs in which nothing differs would look like this.
    private string Luck()
    {
        string rarer = Invariant($"1 in {1 / (1 - told.Confidence):0}");
        if (told is { DaysDiffer: false, PricesDiffer: false })
            return $"Pure luck would make differences this big in {LuckWords.OneIn(told.DaysP)} by days on sale, in {LuckWords.OneIn(told.PriceP)} by price; only {rarer} or rarer would count.";
        string by = told switch
        {
            { DaysDiffer: true, PricesDiffer: true } => "",
            { DaysDiffer: true } => " By sale price they cannot be told apart.",
            _ => " By days on sale they cannot be told apart.",
        };
        double? p = told is { DaysDiffer: true, PricesDiffer: true } ? Math.Max(told.DaysP!.Value, told.PriceP!.Value)
            : told.DaysDiffer ? told.DaysP : told.PriceP;
        return $"Pure luck would make differences this big in {LuckWords.OneIn(p)}.{by}";
    }

    private string Claims() => string.Join("; ", new[] { Speed(), Prices() }.Where(c => c.Length > 0)) + $" than your other {many}";

    private string Speed() => Joined((advice.Faster, "sells", "sell", "faster"), (advice.Slower, "sells", "sell", "more slowly"));

    private string Prices() => Joined((advice.BringMore, "brings", "bring", "more"), (advice.BringLess, "brings", "bring", "less"));

    private static string Joined(params (ImmutableArray<string> Levels, string Verb, string Verbs, string How)[] claims) =>
        string.Join("; ", claims.Where(c => !c.Levels.IsEmpty)
            .Select(c => $"{Some(c.Levels)} {(c.Levels.Length == 1 ? c.Verb : c.Verbs)} {c.How}"));

    private static IEnumerable<string> Shown(ImmutableArray<PairDifference> pairs, Func<PairDifference, string> words) =>
        pairs.Length <= PairsShown + 1
            ? pairs.Select(words)
            : pairs.Take(PairsShown).Select(words).Append(Invariant($"{pairs.Length - PairsShown} more pairs"));

    private static string Some(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return Listed(all.Length <= NamesShown + 1 ? all : [.. all.Take(NamesShown), Invariant($"{all.Length - NamesShown} more")]);
    }

    private static string Listed(IEnumerable<string> words) => Series(words, "and");

    private static string Or(ImmutableArray<string> words) => Series(words, "or");

    private static string Series(IEnumerable<string> words, string last)
    {
        string[] all = [.. words];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} {last} {all[^1]}";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Percent(double? share) => share is { } value ? Invariant($"{100 * value:0}") : "-";

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
