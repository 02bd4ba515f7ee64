using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>The sentences of a comparison, for a page that lays them out in its own way.</summary>
public sealed class GroupComparisonSentences
{
    private const int PairsShown = 5;
    private const int ManyFlips = 1000;

    private readonly GroupComparisonReport report;
    private readonly ToldApart told;
    private readonly string one;
    private readonly string many;

    /// <summary>The sentences of a report.</summary>
    /// <param name="report">The comparison.</param>
    public GroupComparisonSentences(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        this.report = report;
        told = report.ToldApart;
        one = report.By.Singular();
        many = report.By.Plural();
    }

    /// <summary>Whether levels can be told apart, and which stand out.</summary>
    public string Headline()
    {
        if (report.Sold == 0)
            return $"Nothing is sold yet, so nothing can be said about which {many} sell well.";
        if (told.Compared.Length < 2)
        {
            return told.TooFew.IsEmpty
                ? $"No sold piece has its {one} written down, so {many} cannot be compared."
                : told.TooFew.Length == 1
                    ? $"Every sale with a {one} written down is {told.TooFew[0]}, so there is nothing to compare it with."
                    : $"Not enough sold to compare {many} yet: two of them need {told.LeastSales} sales each.";
        }

        if (!told.DaysDiffer && !told.PricesDiffer)
            return $"Your sales cannot tell your {many} apart, neither by days on sale nor by sale price.";
        string[] claims =
        [
            .. Standing(l => l.DaysP, l => l.Days, told.DaysDiffer, "faster", "more slowly", "sells", "sell"),
            .. Standing(l => l.PriceP, l => l.Price, told.PricesDiffer, "less", "more", "brings", "bring"),
        ];
        string claim = string.Join("; ", claims);
        return $"{char.ToUpperInvariant(claim[0])}{claim[1..]} than your other {many}.";
    }

    /// <summary>How sure that is, which pairs differ, what is too few, and how large a difference could be seen.</summary>
    public IEnumerable<string> Evidence()
    {
        if (told.Compared.Length < 2)
        {
            if (told.TooFew.Length > 0)
                yield return $"Sold so far: {Listed(report.Levels.Where(l => l.Sold > 0).Select(l => Invariant($"{l.Level} {l.Sold}")))}.";
            yield break;
        }

        yield return told is { DaysDiffer: false, PricesDiffer: false }
            ? Invariant($"Differences as large as those below come about by luck alone: in {Percent(told.DaysP)} of 100 such logs by days, {Percent(told.PriceP)} by price. ")
                + Invariant($"Only a chance of {100 * (1 - told.Confidence):0} or less would count.")
            : Invariant($"Sure to {100 * told.Confidence:0} %, with all {told.Compared.Length} {many} and both questions allowed for")
                + Unsaid() + ".";
        if (told.DaysPairs.Length > 0)
            yield return "Two by two, by days: " + Listed(Shown(told.DaysPairs, p => $"{p.First} before {p.Second} ({Percent(-p.Share)} % fewer)")) + ".";
        if (told.PricePairs.Length > 0)
            yield return "Two by two, by price: " + Listed(Shown(told.PricePairs, p => $"{p.First} below {p.Second} ({Percent(-p.Share)} % less)")) + ".";
        if (report.Levels.Where(l => l.ChanceToShow is not null).MaxBy(l => l.ChanceToShow) is { } best)
        {
            yield return Invariant($"If {best.Level} truly sold in 30 % fewer days than the rest, sales like yours would show it ")
                + Invariant($"in {Percent(best.ChanceToShow)} of 100 such logs; to be seen in 80, it would have to be {Percent(best.LeastShown)} % fewer.");
        }

        if (told.TooFew.Length > 0)
            yield return $"Not enough sold to be compared yet (fewer than {told.LeastSales}): {Listed(told.TooFew)}.";
    }

    /// <summary>What the columns of the table mean.</summary>
    public IEnumerable<string> HowToRead()
    {
        yield return "In brackets: holds in 8 of 10 cases. Half sold in days: pieces still on sale count; \"not reached\": fewer "
            + "than half would be sold by the longest wait so far; \"?\": no limit yet.";
        yield return "Against the average: all else alike (type, size, condition, asking price, season), and drawn towards the average where few are sold. Fewer days (below 0) is faster.";
        yield return Invariant($"Money a week: what is left of the sales after purchase, fees, supplies and hours at {report.TargetWage:0.##}, over all weeks on sale, unsold pieces' weeks too.");
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

    /// <summary>What to give the next piece, how sure, and what would make it surer.</summary>
    /// <param name="next">The choices.</param>
    public string Next(NextPiece next)
    {
        ArgumentNullException.ThrowIfNull(next);
        NextChoice best = next.Choices[0];
        if (next.Choices.Length == 1)
            return Invariant($"Next {next.Type}: {best.Level} is the only {one} sold so far.");
        string surer = next.MoreFlips is { } more
            ? Invariant($" {(more > ManyFlips ? $"Over {ManyFlips}" : $"About {more}")} more sales in {best.Level} and {next.Choices[1].Level} would make the choice between them 90 % sure, if the difference is what it seems.")
            : "";
        return Invariant($"Next {next.Type}: {best.Level} likely leaves most for buying the piece once fees, supplies, hours at {report.TargetWage:0.##} and waiting are paid; {Percent(best.ChanceBest)} % sure that it is the best {one}.")
            + surer;
    }

    private string Unsaid() => told switch
    {
        { DaysDiffer: true, PricesDiffer: true } => "",
        { DaysDiffer: true } => "; by sale price they cannot be told apart",
        _ => "; by days on sale they cannot be told apart",
    };

    private IEnumerable<string> Standing(
        Func<LevelRecord, double?> p, Func<LevelRecord, RelativeDifference?> effect, bool differ,
        string below, string above, string verb, string verbs)
    {
        if (!differ)
            yield break;
        LevelRecord[] clear = [.. report.Levels.Where(l => p(l) <= 1 - told.Confidence && effect(l) is not null)];
        foreach (var side in clear.GroupBy(l => effect(l)!.Share < 0))
            yield return $"{Listed(side.Select(l => l.Level))} {(side.Count() == 1 ? verb : verbs)} {(side.Key ? below : above)}";
    }

    private static IEnumerable<string> Shown(ImmutableArray<PairDifference> pairs, Func<PairDifference, string> words) =>
        pairs.Length <= PairsShown + 1
            ? pairs.Select(words)
            : pairs.Take(PairsShown).Select(words).Append(Invariant($"{pairs.Length - PairsShown} more pairs"));

    private static string Listed(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private static string Percent(double? share) => share is { } value ? Invariant($"{100 * value:0}") : "-";

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
