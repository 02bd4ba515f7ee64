using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>The owner's question at home: which colors (types, finishes, sources, channels) sell fast and well?</summary>
public static class GroupComparison
{
    internal const double RangeLevel = 0.8;
    private static readonly double RangeQuantile = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (1 + RangeLevel) / 2);

    /// <summary>Answers from a log.</summary>
    /// <param name="log">The log as known at its date.</param>
    /// <param name="by">How pieces are grouped.</param>
    /// <param name="nextType">Type of the next piece; null takes the type sold most.</param>
    /// <param name="newWords">Whether a type that is not in the log, but like one that is, is a new one and no slip.</param>
    /// <exception cref="UnclearWordException">The type is not in the log, but so like one that it may be a slip.</exception>
    public static GroupComparisonReport Of(SalesLog log, GroupedBy by, string? nextType = null, bool newWords = false)
    {
        ArgumentNullException.ThrowIfNull(log);
        var words = new SettledWords(LogWords.Of(log), newWords);
        nextType = words.Settle(WordKind.Type, nextType);
        if (!words.Unclear.IsEmpty)
            throw new UnclearWordException(words.Unclear);
        if (!Enum.IsDefined(by))
            throw new ArgumentOutOfRangeException(nameof(by), by, "Group by color, type, finish, source or channel.");
        // The books are written while the models are fitted.
        var books = Task.Run(() => new LevelMoney(log, by, new PurchaseTerms().WageFor(log.Workshop)));
        var models = FittedModels.Of(log);
        var group = new GroupModels(models, by);
        var market = MarketCurves.Of(log, by, RangeLevel);
        var byLevel = log.Pieces.ToLookup(p => by.LevelOf(p));
        (string Level, int Sold)[] sold =
        [
            .. byLevel.Where(g => g.Key != GroupWords.NotWrittenDown).Select(g => (g.Key, g.Count(p => p.IsSold)))
                .OrderByDescending(l => l.Item2).ThenBy(l => l.Key, StringComparer.OrdinalIgnoreCase),
        ];
        ImmutableArray<string> enough = [.. sold.Where(l => l.Sold >= GroupTests.LeastSales).Select(l => l.Level)];
        ImmutableArray<string> compared = enough.Length >= 2 ? enough : [];
        var tests = new GroupTests(group, by, compared);
        var classical = new ClassicalTests(group, by, compared);
        var recent = new RecentDays(group.Days, by, log.Date, group.Scale, group.DaysVariance);
        LevelMoney money = books.GetAwaiter().GetResult();
        var levels = byLevel.Where(g => g.Any(p => p.State != PieceState.InTheWorkshop)).Select(g => Level(g.Key, [.. g])).ToArray();
        string? type = nextType ?? log.Pieces.Where(p => p.IsSold).GroupBy(p => p.Type, StringComparer.OrdinalIgnoreCase)
            .OrderByDescending(g => g.Count()).FirstOrDefault()?.Key;
        return WithChances(
            new()
            {
                AsOf = log.Date,
                Workshop = log.Workshop,
                By = by,
                Market = market,
                TargetWage = new PurchaseTerms().WageFor(log.Workshop),
                Sold = log.Pieces.Count(p => p.IsSold),
                ToldApart = new()
                {
                    Confidence = GroupTests.Confidence,
                    LeastSales = GroupTests.LeastSales,
                    Compared = compared,
                    TooFew = [.. sold.Where(l => l.Sold > 0 && !compared.Contains(l.Level)).Select(l => l.Level)],
                    DaysP = tests.DaysP,
                    PriceP = tests.PriceP,
                    LogRank = classical.LogRank(),
                    Hazards = classical.Hazards(),
                    DaysPairs = tests.DaysPairs(),
                    PricePairs = tests.PricePairs(),
                },
                Levels =
                [
                    .. levels.OrderBy(l => l.Level == GroupWords.NotWrittenDown).ThenBy(l => !l.IsCompared)
                        .ThenBy(l => (l.DaysLately ?? l.Days)?.Share ?? double.MaxValue).ThenBy(l => l.Level, StringComparer.OrdinalIgnoreCase),
                ],
                Next = by is GroupedBy.Color or GroupedBy.Finish && type is not null
                    ? NextPieceChoice.Of(models, group, by, type, compared, [.. sold.Where(l => l.Sold > 0).Take(JointRanks.Most)])
                    : null,
                Notes = [.. GroupNotes.Of(log, by, levels)],
                WordNotes = words.Notes,
            },
            group);

        LevelRecord Level(string name, Piece[] pieces)
        {
            KaplanMeier? curve = market.Named(name == GroupWords.NotWrittenDown ? null : name);
            var (daysP, priceP) = tests.Of(name);
            var power = tests.Power(name);
            return new()
            {
                Level = name,
                Family = by == GroupedBy.Color && name != GroupWords.NotWrittenDown ? ColourFamily.Of(name, log.Colours) : null,
                Sold = pieces.Count(p => p.IsSold),
                OnSale = pieces.Count(p => p.State == PieceState.OnSale),
                IsCompared = compared.Contains(name),
                Curve = curve?.Steps ?? [],
                MedianDays = curve?.Median(),
                Days = group.DaysEffect(name) is { } days ? Range(days.Effect, days.Variance) : null,
                DaysLately = recent.Of(name) is { } lately ? Range(lately.Effect, lately.Variance) : null,
                Price = group.PriceEffect(name) is { } price ? Range(price.Effect, price.Variance) : null,
                DaysP = daysP,
                PriceP = priceP,
                ChanceToShow = power?.ChanceToShow,
                LeastShown = power?.LeastShown,
                Money = money.Of(name),
                Trend = Trend(recent.Trend(name)),
            };
        }
    }

    /// <summary>The chances of being fastest, among the compared levels that sold most.</summary>
    private static GroupComparisonReport WithChances(GroupComparisonReport report, GroupModels group)
    {
        string[] ranked = [.. report.ToldApart.Compared.Where(l => group.DaysEffect(l) is not null).Take(JointRanks.Most)];
        if (ranked.Length < 2)
            return report;
        var covariance = new double[ranked.Length, ranked.Length];
        for (int i = 0; i < ranked.Length; i++)
        {
            for (int j = 0; j < ranked.Length; j++)
                covariance[i, j] = group.DaysCovariance(ranked[i], ranked[j]);
        }

        var chances = JointRanks.Highest([.. ranked.Select(l => -group.DaysEffect(l)!.Value.Effect)], covariance);
        return report with
        {
            Levels =
            [
                .. report.Levels.Select(level => Array.IndexOf(ranked, level.Level) is >= 0 and var at
                    ? level with { ChanceFastest = chances[at].First, ChanceTopThree = chances[at].TopThree }
                    : level),
            ],
        };
    }

    private static DaysTrend Trend((int Before, int Lately, double LogRatio, double Variance)? seen) => seen is not { } known
        ? new(null, 0, 0)
        : new(
            Math.Min(known.Before, known.Lately) < GroupTests.LeastSales ? null : Range(known.LogRatio, known.Variance),
            known.Lately, known.Before);

    private static RelativeDifference Range(double effect, double variance)
    {
        double half = RangeQuantile * Math.Sqrt(variance);
        return new(Math.Exp(effect) - 1, Math.Exp(effect - half) - 1, Math.Exp(effect + half) - 1, RangeLevel);
    }
}
