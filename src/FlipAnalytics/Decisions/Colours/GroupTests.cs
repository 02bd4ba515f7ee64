using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// Whether levels can be told apart. A piece's score in days is its sale (0 or 1) less the sales expected of it by a model
/// that knows all but its level, the asking price included, as in a log-rank test; its score in price is the log sale price less what is expected. Each
/// level is held against the rest by reshuffling the words among pieces of one type, which keeps the stated confidence with
/// few sales and where types and levels go together. Days and prices are two families of tests (Holm, 1979); within each the
/// furthest differences of a reshuffle decide (<see cref="GroupPermutation"/>).
/// </summary>
internal sealed class GroupTests
{
    public const double Confidence = 0.97;
    public const int LeastSales = 5;
    public const double FewerDays = 0.7;
    private const double UsualPower = 0.8;
    private const int Shuffles = 4000;
    private const int PairShuffles = 2000;
    private const double LeastPairP = 2.0 / (PairShuffles + 1);

    // Share of the scatter of ordinary sales below which days on sale are as good as alike.
    private const double LeastScatter = 0.05;

    private readonly GroupedBy by;
    private readonly GroupModels models;
    private readonly ImmutableArray<string> compared;
    private readonly Dictionary<string, int> places;
    private readonly TestFamily days;
    private readonly TestFamily prices;
    private readonly double daysFactor;
    private readonly double pricesFactor;

    public GroupTests(GroupModels models, GroupedBy by, ImmutableArray<string> compared)
    {
        this.by = by;
        this.models = models;
        this.compared = compared;
        places = compared.Select((level, index) => (level, index)).ToDictionary(p => p.level, p => p.index);
        // Each has random numbers of its own, so both are reshuffled at once.
        Task<TestFamily> ofDays = Task.Run(() => FamilyOf(models.Days.Select(d => (d.Piece, d.Sold - d.Expected, d.Sold))));
        prices = FamilyOf(models.Prices.Select(p => (p.Piece, p.Residual, 1)));
        days = ofDays.GetAwaiter().GetResult();

        // Holm over the two: the smaller p counts twice, the larger once but no less than that.
        bool daysFirst = days.P <= prices.P;
        bool both = days.Test is not null && prices.Test is not null;
        daysFactor = both && daysFirst ? 2 : 1;
        pricesFactor = both && !daysFirst ? 2 : 1;
        DaysP = days.Test is null ? null : Math.Min(1, daysFirst ? days.P * daysFactor : Math.Max(days.P, prices.P * pricesFactor));
        PriceP = prices.Test is null ? null : Math.Min(1, !daysFirst ? prices.P * pricesFactor : Math.Max(prices.P, days.P * daysFactor));
        Critical = days.Test?.CriticalZ((1 - Confidence) / (both ? 2 : 1));
    }

    public double? DaysP { get; }

    public double? PriceP { get; }

    /// <summary>How many standard errors a level's days must differ from the rest's.</summary>
    private double? Critical { get; }

    /// <summary>A level's p in days and in price, allowing for every test; null where it is not compared.</summary>
    public (double? Days, double? Price) Of(string level)
    {
        int index = Place(level);
        double? Adjusted(TestFamily family, double? familyP, double factor) => index < 0 || family.Test is null ? null
            : Math.Min(1, Math.Max(familyP!.Value, family.Test.AdjustedP[index] * factor));
        return (Adjusted(days, DaysP, daysFactor), Adjusted(prices, PriceP, pricesFactor));
    }

    /// <summary>
    /// The chance of showing that a level's days are 0.7 times the rest's, and the least share saved that is shown with a
    /// chance of 80 %.
    /// </summary>
    public (double ChanceToShow, double LeastShown)? Power(string level)
    {
        int index = Place(level);
        if (index < 0 || Critical is not { } critical || !(days.Test!.Variance[index] > 0))
            return null;
        (int Sales, double Share)[] strata = [.. days.Strata.Select(s => (s.Sales, (double)s.OfLevel.GetValueOrDefault(index) / s.Pieces))];
        // Fitting the terms has used up part of the scatter: what is left of it, against one sale a unit of variance, is left of
        // a difference too, and the scale is estimated too low by its root.
        double left = Math.Min(1, days.Test.Variance[index] / strata.Sum(s => s.Sales * s.Share * (1 - s.Share)));
        // Where all take the same days there is no scatter to hold a difference against.
        if (left < LeastScatter)
            return null;
        double scale = models.Scale / Math.Sqrt(left);
        double Chance(double daysFactor) =>
            Power(strata, Math.Pow(daysFactor, -1 / scale), days.Test.Variance[index], left, critical);

        // The chance rises as the days fall; bisection on the factor.
        double low = 0.01, high = 1;
        while (high - low > 1e-4)
        {
            double middle = (low + high) / 2;
            (low, high) = Chance(middle) >= UsualPower ? (middle, high) : (low, middle);
        }

        return (Chance(FewerDays), 1 - low);
    }

    // To first order Schoenfeld's formula (1983, Biometrics 39, 499–503, from memory): with d sales of which pieces share p are
    // of the level, the sum of scores is d p (1 − p) log R for a ratio R of the rates of sale. R is too far from 1 for that
    // here: where all sell, the expected sales of a piece are exponential with mean h = 1/(p + (1 − p) R) in the level and R h
    // in the rest, which gives the first three moments in full; Pearson's type III law (a shifted gamma) has them.
    private static double Power(
        (int Sales, double Share)[] strata, double ratio, double varianceOverReshuffles, double left, double critical)
    {
        double mean = 0, variance = 0, third = 0, nullVariance = 0;
        foreach (var (sales, p) in strata)
        {
            double h = 1 / (p + (1 - p) * ratio), rest = ratio * h, q = 1 - p;
            mean += sales * p * (1 - h);
            variance += sales * p * q * (q * h * h + p * rest * rest);
            third += 2 * sales * p * q * (Math.Pow(p, 2) * Math.Pow(rest, 3) - Math.Pow(q, 2) * Math.Pow(h, 3));
            nullVariance += sales * p * q;
        }

        if (nullVariance == 0)
            return 0;
        double distance = (critical - left * mean / Math.Sqrt(varianceOverReshuffles)) / Math.Sqrt(variance / nullVariance);
        double skewness = third / Math.Pow(variance, 1.5);
        if (Math.Abs(skewness) < 1e-3)
            return MathNet.Numerics.Distributions.Normal.CDF(0, 1, -distance);
        double shape = 4 / (skewness * skewness);
        double at = Math.Max(0, shape + Math.Sign(skewness) * distance * Math.Sqrt(shape));
        double below = MathNet.Numerics.Distributions.Gamma.CDF(shape, 1, at);
        return skewness < 0 ? below : 1 - below;
    }

    public ImmutableArray<PairDifference> DaysPairs() => DaysP > 1 - Confidence || DaysP is null ? [] : Pairs(
        days, daysFactor,
        (one, other) => models.Scale * (LogRate(other) - LogRate(one)));

    public ImmutableArray<PairDifference> PricePairs() => PriceP > 1 - Confidence || PriceP is null ? [] : Pairs(
        prices, pricesFactor,
        (one, other) => Mean(one) - Mean(other));

    private int Place(string level) => places.TryGetValue(level, out int index) ? index : -1;

    // Sales over those expected, halves added so that a level without a sale has a rate.
    private double LogRate(int level)
    {
        var own = models.Days.Where(d => by.LevelOf(d.Piece) == compared[level]).ToArray();
        return Math.Log((own.Sum(d => d.Sold) + 0.5) / (own.Sum(d => d.Expected) + 0.5));
    }

    private double Mean(int level) =>
        models.Prices.Where(p => by.LevelOf(p.Piece) == compared[level]).Average(p => p.Residual);

    private ImmutableArray<PairDifference> Pairs(TestFamily family, double factor, Func<int, int, double> difference)
    {
        var pairs = (from a in Enumerable.Range(0, compared.Length)
                     from b in Enumerable.Range(a + 1, compared.Length - a - 1)
                     select (A: a, B: b)).ToArray();
        // So many pairs that even the least chance which that many reshuffles can show is no claim.
        if (pairs.Length == 0 || pairs.Length * LeastPairP > 1 - Confidence)
            return [];
        var chances = new double[pairs.Length];
        Parallel.For(0, pairs.Length, k => chances[k] = PairP(family, pairs[k].A, pairs[k].B));
        return
        [
            .. pairs.Zip(MultipleTests.Holm(chances), (p, adjusted) => (p.A, p.B, P: Math.Min(1, adjusted * factor)))
                .Where(p => p.P <= 1 - Confidence)
                .Select(p => (p.A, p.B, p.P, By: difference(p.A, p.B)))
                .Select(p => new PairDifference(
                    compared[p.By <= 0 ? p.A : p.B], compared[p.By <= 0 ? p.B : p.A], Math.Exp(-Math.Abs(p.By)) - 1, p.P))
                .OrderBy(p => p.P).ThenBy(p => p.Share),
        ];
    }

    private static double PairP(TestFamily family, int a, int b)
    {
        ScoredPiece[] rows = [.. family.Rows.Where(r => r.Level == a || r.Level == b)];
        return GroupPermutation.ChanceOfTwo(
            [.. rows.Select(r => r.Score)], [.. rows.Select(r => r.Level == a ? 0 : 1)], [.. rows.Select(r => r.Stratum)],
            PairShuffles, 1 - Confidence);
    }

    // Types are compared among all pieces, everything else among pieces of one type.
    private TestFamily FamilyOf(IEnumerable<(Piece Piece, double Score, int Sold)> scores)
    {
        var strata = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        int Stratum(Piece piece)
        {
            string name = by == GroupedBy.Type ? "" : piece.Type;
            strata.TryAdd(name, strata.Count);
            return strata[name];
        }

        ScoredPiece[] rows = [.. scores.Select(s => new ScoredPiece(Place(by.LevelOf(s.Piece)), Stratum(s.Piece), s.Score, s.Sold))
            .Where(r => r.Level >= 0)];
        bool isTested = compared.Length >= 2 && rows.Length > 0;
        return new(rows, !isTested ? null : GroupPermutation.Of(
            [.. rows.Select(r => r.Score)], [.. rows.Select(r => r.Level)], [.. rows.Select(r => r.Stratum)],
            compared.Length, Shuffles));
    }

    private sealed record ScoredPiece(int Level, int Stratum, double Score, int Sold);

    private sealed record Stratum(int Sales, int Pieces, Dictionary<int, int> OfLevel);

    private sealed record TestFamily(ScoredPiece[] Rows, GroupPermutation? Test)
    {
        private readonly Lazy<ImmutableArray<Stratum>> strata = new(() =>
        [
            .. Rows.GroupBy(r => r.Stratum).Select(s => new Stratum(
                s.Sum(r => r.Sold), s.Count(), s.CountBy(r => r.Level).ToDictionary())),
        ]);

        public double P => Test?.P ?? 1;

        public ImmutableArray<Stratum> Strata => strata.Value;
    }
}
