using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// Days on market: a Weibull accelerated-failure-time model with pieces still on sale as right-censored spells, price
/// changes as episodes, shrunk effects of type and colour, and mild expectations that a few sales lean on.
/// </summary>
internal sealed class DaysModel
{
    private readonly double askingMean;
    private readonly double askingVariance;

    private DaysModel(
        ImmutableArray<DaysRow> rows, double askingMean, double askingVariance, bool plain,
        Func<PieceFacts, string>? further = null, string? without = null)
    {
        Rows = rows;
        (this.askingMean, this.askingVariance) = (askingMean, askingVariance);
        PieceFacts[] facts = [.. rows.Select(r => r.Facts)];
        var all = DesignColumns.Of(
            [
                TermNames.Intercept, TermNames.Count, TermNames.Size, TermNames.Worn, TermNames.Damaged,
                TermNames.SeasonSine, TermNames.SeasonCosine, TermNames.Asking,
            ],
            facts);
        Columns = plain ? all.WithoutConstant(rows.Select(r => r.Values)) : all;
        Groups = plain ? [] :
        [
            Grouping.Of(TermNames.Type, facts, f => f.Type),
            Grouping.Of(TermNames.Colour, facts, f => f.Colour ?? TermNames.NotRecorded),
            .. further is null ? [] : new[] { Grouping.Of(TermNames.Further, facts, further) },
        ];
        Groups = [.. Groups.Where(g => g.Name != without)];
        if (!rows.IsEmpty)
            Fit = plain ? AcceleratedFailure.Fit(Data(), new()) : FitOrNone();
    }

    public ImmutableArray<DaysRow> Rows { get; }

    public DesignColumns Columns { get; }

    public ImmutableArray<Grouping> Groups { get; }

    /// <summary>Null where no piece was ever listed and no guess of days was made, or where nothing could be fitted.</summary>
    public AcceleratedFailureFit? Fit { get; }

    /// <summary>Whether there are days to fit and no fit came of them; a general guess then stands in for it.</summary>
    public bool HasFailed => Fit is null && !Rows.IsEmpty;

    public static DaysModel Of(FittedModels models)
    {
        var (rows, mean, variance) = DaysRow.All(models, models.Price);
        return new(rows, mean, variance, plain: false);
    }

    /// <summary>The same with shrunk effects of one more group.</summary>
    public DaysModel With(Func<PieceFacts, string> further) => new(Rows, askingMean, askingVariance, plain: false, further);

    /// <summary>Fits without the effects of one group, asking prices held against what another price model expects.</summary>
    public static DaysModel Without(string? group, FittedModels models, EffectsModel? price)
    {
        var (rows, mean, variance) = DaysRow.All(models, price);
        return new(rows, mean, variance, plain: false, without: group);
    }

    /// <summary>Fits what outside software can fit: no expectations, no guesses, no shrunk effects.</summary>
    /// <exception cref="NoEstimateException">The spells do not determine the model.</exception>
    public static DaysModel Plain(FittedModels models)
    {
        // Asking prices are held against what sale prices without effects of materials expect, as plain fits have none.
        var price = EffectsModel.TryFit(Expectations.SalePrice with { Material = null }, models.PriceRows());
        var (rows, mean, variance) = DaysRow.All(models, price);
        return new([.. rows.Where(r => r.Origin == RowOrigin.Log)], mean, variance, plain: true);
    }

    /// <summary>The law of a piece's days if it is listed at a date and asked for as this person usually does.</summary>
    public DaysPrediction Predict(PieceFacts facts, (double Value, double Variance) size, DateOnly listed)
    {
        if (Fit is null)
        {
            return new(Expectations.LogDays.Mean, Square(Expectations.LogDays.StandardDeviation),
                Expectations.LogScale.Mean, Square(Expectations.LogScale.StandardDeviation), 0);
        }

        GroupLevel[] levels =
            [.. Groups.Select(g => g.IndexOf(facts) is var i and >= 0 ? GroupLevel.Known(i) : GroupLevel.Unseen)];
        FailurePrediction location = Fit.Predict(
            Columns.Row(new(facts, size.Value, listed, Asking: askingMean)), levels);
        double variance = location.VarianceOfLocation
            + Square(Slope(TermNames.Asking)) * askingVariance
            + Square(Slope(TermNames.Size)) * size.Variance
            + Columns.ConditionVariance(facts, Slope(TermNames.Worn), Slope(TermNames.Damaged));
        return new(location.Location, variance, Fit.LogScale, location.VarianceOfLogScale, location.Covariance);
    }

    /// <summary>Share of the evidence that is guess, 0 to 1.</summary>
    public double GuessShare
    {
        get
        {
            if (Fit is null)
                return 1;
            int sales = Rows.Count(r => r.Origin == RowOrigin.Log && r.Spell.Kind == SpellKind.Ended);
            double guesses = Rows.Where(r => r.Origin != RowOrigin.Log).Sum(r => r.Weight);
            return sales == 0 ? 1 : guesses / (guesses + sales);
        }
    }

    public double Slope(string name) => Fit?.Coefficients.FirstOrDefault(c => c.Name == name)?.Estimate ?? 0;

    // Days are one part of an answer: where they have no fit the others stand.
    private AcceleratedFailureFit? FitOrNone()
    {
        try
        {
            return AcceleratedFailure.Fit(Data(), Options());
        }
        catch (NoEstimateException)
        {
            return null;
        }
    }

    private AcceleratedFailureData Data() => new(
        Columns.Names,
        [.. Rows.Select(r => Columns.Row(r.Values))],
        [.. Rows.Select(r => r.Spell)],
        [.. Groups.Select(g => new GroupColumn(g.Name, g.Levels, [.. Rows.Select(r => g.IndexOf(r.Facts))]))],
        Rows.All(r => r.Weight == 1) ? null : [.. Rows.Select(r => r.Weight)]);

    private AcceleratedFailureOptions Options()
    {
        static NormalPrior Normal(SlopePrior prior) => new(prior.Mean, prior.StandardDeviation);
        double logVariance = 2 * Math.Log(Expectations.DaysEffects.StandardDeviation);
        return new()
        {
            CoefficientPriors =
            [
                .. Columns.Names.Select(name => Normal(name switch
                {
                    TermNames.Intercept => Expectations.LogDays,
                    TermNames.Asking => Expectations.Asking,
                    _ => Expectations.DaysSlope,
                })),
            ],
            LogScalePrior = Normal(Expectations.LogScale),
            ScaleFloor = Expectations.LeastScale,
            LogGroupVariancePriors =
                [.. Groups.Select(_ => new NormalPrior(logVariance, Expectations.DaysEffectsUncertainty))],
        };
    }

    private static double Square(double x) => x * x;
}

/// <summary>The law of days on market of one piece: log days = location + scale × a standard extreme value.</summary>
/// <param name="Location">Expected location.</param>
/// <param name="VarianceOfLocation">Its variance.</param>
/// <param name="LogScale">Log of the scale.</param>
/// <param name="VarianceOfLogScale">Its variance.</param>
/// <param name="Covariance">Covariance of location and log scale.</param>
internal sealed record DaysPrediction(
    double Location, double VarianceOfLocation, double LogScale, double VarianceOfLogScale, double Covariance);
