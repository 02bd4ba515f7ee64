using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>A piece's days beside what the model expects of it without its level.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Sold">1 if sold, else 0.</param>
/// <param name="Expected">Sales expected over its days on market: the cumulative hazard.</param>
/// <param name="Days">Its days on market so far.</param>
internal sealed record DaysScore(Piece Piece, int Sold, double Expected, double Days)
{
    public SurvivalTime Time => new(Days, Sold == 1);
}

/// <summary>
/// The models of days and sale price with shrunk effects of one grouping, and what each piece is beyond all that is known of
/// it but its level.
/// </summary>
internal sealed class GroupModels
{
    private readonly GroupedBy by;
    private readonly DaysModel days;
    private readonly EffectsModel? price;
    private readonly DaysModel daysWithout;
    private readonly EffectsModel? priceWithout;
    private readonly int daysGroup;
    private readonly Lazy<Dictionary<string, EffectsRow>> priceRows;

    public GroupModels(FittedModels models, GroupedBy by)
    {
        this.by = by;
        string LevelOf(PieceFacts facts) => by.LevelOf(facts);
        bool isNew = by is GroupedBy.Source or GroupedBy.Channel;
        days = isNew || by == GroupedBy.Finish ? models.Days.With(LevelOf) : models.Days;
        price = isNew
            ? EffectsModel.TryFit(Expectations.SalePrice with { Further = LevelOf }, models.PriceRows())
            : models.Price;
        priceRows = new(() => price!.Rows.DistinctBy(r => by.LevelOf(r.Facts), StringComparer.OrdinalIgnoreCase)
            .ToDictionary(r => by.LevelOf(r.Facts), StringComparer.OrdinalIgnoreCase));
        daysGroup = by switch
        {
            GroupedBy.Type => 0,
            GroupedBy.Color => 1,
            _ => 2,
        };
        // Scores come from models that do not know the level at all: only then are they exchangeable where levels do not matter.
        priceWithout = by switch
        {
            GroupedBy.Type => Without(Expectations.SalePrice with { TypeHours = null, LeftOut = [TermNames.Type] }),
            GroupedBy.Color => Without(Expectations.SalePrice with { LeftOut = [TermNames.Colour, TermNames.Family] }),
            GroupedBy.Finish => Without(Expectations.SalePrice with { LeftOut = [TermNames.Finish] }),
            _ => models.Price,
        };
        // A color that brings more by luck must not look slow for its price, so days too are held against prices that know
        // nothing of it. A type without its price would be lost.
        daysWithout = by switch
        {
            GroupedBy.Type => DaysModel.Without(TermNames.Type, models, models.Price),
            GroupedBy.Color => DaysModel.Without(TermNames.Colour, models, priceWithout),
            GroupedBy.Finish => DaysModel.Without(null, models, priceWithout),
            _ => models.Days,
        };
        EffectsModel? Without(EffectsSpecification specification) => EffectsModel.TryFit(specification, models.PriceRows());
        var pieces = models.Log.Pieces.ToDictionary(p => p.Id, StringComparer.OrdinalIgnoreCase);
        Days = [.. DaysScores(pieces)];
        Prices = [.. PriceScores(pieces)];
    }

    /// <summary>Each listed piece of the log.</summary>
    public ImmutableArray<DaysScore> Days { get; }

    /// <summary>Each sold piece of the price model: its log sale price less what is expected without its level.</summary>
    public ImmutableArray<(Piece Piece, double Residual)> Prices { get; }

    /// <summary>σ of log days.</summary>
    public double Scale => daysWithout.Fit?.Scale ?? 1;

    /// <summary>τ², the variance between levels in log days; 0 where nothing is fitted.</summary>
    public double DaysVariance => days.Fit?.Groups[daysGroup].Variance ?? 0;

    /// <summary>Shrunk effect of a level on log days, with its variance; null where the model does not have it.</summary>
    public (double Effect, double Variance)? DaysEffect(string level)
    {
        if (days.Fit is not { } fit || Index(days.Groups[daysGroup], level) is not (>= 0 and var index))
            return null;
        FailureTimeLevel found = fit.Groups[daysGroup].Levels[index];
        return (found.Effect, found.StandardError * found.StandardError);
    }

    /// <summary>Covariance of the effects of two levels on log days.</summary>
    public double DaysCovariance(string level, string other)
    {
        Grouping group = days.Groups[daysGroup];
        return days.Fit!.CovarianceOfEffects(daysGroup, Index(group, level), Index(group, other));
    }

    /// <summary>Shrunk effect of a level on the log sale price (for a color that of its family too), with its variance.</summary>
    public (double Effect, double Variance)? PriceEffect(string level)
    {
        if (price is null || PriceRow(level) is not { } row)
            return null;
        MixedPrediction effect = price.Fit.Predict(row.X, row.Levels);
        return (effect.Mean, effect.VarianceOfMean);
    }

    /// <summary>Covariance of the effects of two levels on the log sale price.</summary>
    public double PriceCovariance(string level, string other) =>
        price is not null && PriceRow(level) is { } one && PriceRow(other) is { } two
            ? price.Fit.CovarianceOfMeans(one.X, one.Levels, two.X, two.Levels) : 0;

    // A type's effect is partly in the hours it takes, a predictor of its own.
    private (double[] X, LevelRef[] Levels)? PriceRow(string level)
    {
        if (!priceRows.Value.TryGetValue(ModelWord(level), out EffectsRow? member))
            return null;
        double[] x = [.. price!.Design.Columns.Row(member.Values).Zip(price.Design.Columns.Names,
            (value, name) => by == GroupedBy.Type && name == TermNames.TypeHours ? value : 0)];
        int[] levels = price.Design.Levels(member);
        return (x, [.. levels.Select((index, k) => IsOfGroup(k) ? LevelRef.Known(index) : LevelRef.None)]);
    }

    private bool IsOfGroup(int term) => term < price!.Design.Groups.Length && price.Design.Groups[term].Name switch
    {
        TermNames.Type => by == GroupedBy.Type,
        TermNames.Family or TermNames.Colour => by == GroupedBy.Color,
        TermNames.Finish => by == GroupedBy.Finish,
        TermNames.Material => false,
        _ => true,
    };

    private IEnumerable<DaysScore> DaysScores(Dictionary<string, Piece> pieces)
    {
        if (daysWithout.Fit is not { } fit)
            yield break;
        foreach (var episodes in daysWithout.Rows.Where(r => r.PieceId is not null).GroupBy(r => r.PieceId!))
        {
            int sold = 0;
            double expected = 0, last = 0;
            foreach (DaysRow row in episodes)
            {
                GroupLevel[] levels = [.. daysWithout.Groups.Select(g => GroupLevel.Known(g.IndexOf(row.Facts)))];
                double location = fit.Location(daysWithout.Columns.Row(row.Values), levels);
                expected += FailureTime.CumulativeHazard(fit.Distribution, row.Spell.Stop, location, fit.Scale)
                    - FailureTime.CumulativeHazard(fit.Distribution, row.Spell.Start, location, fit.Scale);
                last = row.Spell.Stop;
                sold += row.Spell.Kind == SpellKind.Ended ? 1 : 0;
            }

            yield return new(pieces[episodes.Key], sold, expected, last);
        }
    }

    private IEnumerable<(Piece, double)> PriceScores(Dictionary<string, Piece> pieces)
    {
        if (priceWithout is null)
            yield break;
        ImmutableArray<double> residuals = priceWithout.Fit.Residuals();
        foreach (var (row, residual) in priceWithout.Rows.Zip(residuals))
        {
            if (row.Origin == RowOrigin.Log && row.PieceId is not null)
                yield return (pieces[row.PieceId], residual);
        }
    }

    private static int Index(Grouping group, string level) => group.IndexOf(ModelWord(level));

    private static string ModelWord(string level) => level == GroupWords.NotWrittenDown ? TermNames.NotRecorded : level;
}
