using System.Collections.Immutable;
using System.Globalization;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>Fits one model to a log and tells about it.</summary>
public static class ModelFitting
{
    /// <summary>Fits a model.</summary>
    /// <param name="log">The log as known at its date.</param>
    /// <param name="model">Which model.</param>
    /// <param name="estimator">How to fit it.</param>
    /// <param name="plain">Whether to leave out what outside software cannot fit; least squares always does.</param>
    /// <exception cref="NotEnoughDataException">The log does not determine the model; the message says what is missing.</exception>
    public static FitReport Fit(SalesLog log, ModelName model, Estimator estimator, bool plain) =>
        Fit(FittedModels.Of(log), model, estimator, plain);

    /// <summary>The same for a log whose models are at hand.</summary>
    /// <param name="models">The models of the log.</param>
    /// <param name="model">Which model.</param>
    /// <param name="estimator">How to fit it.</param>
    /// <param name="plain">Whether to leave out what outside software cannot fit; least squares always does.</param>
    /// <exception cref="NotEnoughDataException">The log does not determine the model; the message says what is missing.</exception>
    public static FitReport Fit(FittedModels models, ModelName model, Estimator estimator, bool plain)
    {
        ArgumentNullException.ThrowIfNull(models);
        if (model != ModelName.Days && plain | estimator == Estimator.Ols
            && Rows(models, model).All(r => r.Origin != RowOrigin.Log))
        {
            throw NothingToFit(model);
        }

        try
        {
            return (model, estimator) switch
            {
                (ModelName.Days, Estimator.Mixed) => Days(models, plain),
                (ModelName.Days, _) => throw new NotEnoughDataException(
                    "Least squares cannot take pieces that are still on sale into account; fit days with --estimator mixed."),
                (_, Estimator.Ols) => LeastSquaresReport.Of(models, model, Specification(model), Rows(models, model)),
                _ => plain
                    ? PlainAmount(models, model)
                    : Amount(models, model),
            };
        }
        catch (Exception e) when (e is ExactFitException or NoEstimateException { IsWithoutSpread: true }
            || (e is MixedModelException or ArgumentException && AreAlike(Amounts(models, model))))
        {
            throw NothingScatters(models, model, e);
        }
        catch (Exception e) when (e is MixedModelException or NoEstimateException or ArgumentException)
        {
            throw new NotEnoughDataException(
                $"Your log alone does not yet tell what the {Words(model)} depend{(model == ModelName.Price ? "s" : "")} on. {Why(e)} "
                + "Log more pieces, or leave out --plain and --estimator ols: common practice then fills the gaps.",
                e);
        }
    }

    private static NotEnoughDataException NothingToFit(ModelName model) => new(
        $"The log has nothing to fit the {Words(model)} model to: it needs pieces with "
        + (model switch
        {
            ModelName.Price => "a sold_price.",
            ModelName.Hours => "hours whose work is done.",
            _ => "a supplies_cost whose work is done.",
        }));

    /// <summary>The refusal where the pieces' facts reproduce every amount, as where all are the same.</summary>
    internal static NotEnoughDataException NothingScatters(FittedModels models, ModelName model, Exception? e = null)
    {
        double[] amounts = Amounts(models, model);
        string why = AreAlike(amounts)
            ? $"All {amounts.Length} pieces {(model switch
            {
                ModelName.Price => "sold for the same price",
                ModelName.Days => "sold after the same number of days",
                ModelName.Hours => "took the same hours",
                _ => "took supplies of the same cost",
            })}, so there is nothing in your log that it could depend on."
            : $"What your log says of the pieces already gives the {Words(model)} of each of them, so nothing shows how far single ones scatter.";
        string sentence = $"{why} Leave out --plain and --estimator ols: common practice then says how far.";
        return e is null ? new(sentence) : new(sentence, e);
    }

    private static double[] Amounts(FittedModels models, ModelName model) => model == ModelName.Days
        ? [.. models.Days.Rows.Where(r => r.Origin == RowOrigin.Log && r.Spell.Kind == SpellKind.Ended).Select(r => r.Spell.Stop)]
        : [.. Rows(models, model).Where(r => r.Origin == RowOrigin.Log).Select(r => r.Response)];

    private static bool AreAlike(double[] amounts) => amounts.Length > 1 && amounts.Max() == amounts.Min();

    // What the arithmetic says, in words for someone who has never heard of it where those differ.
    private static string Why(Exception e) => e switch
    {
        TooFewRowsException few =>
            $"It holds {TextLines.Counted(few.Rows, "such piece")}; to tell {few.Coefficients} things apart takes at least {few.Coefficients + 1}.",
        NoEstimateException => "Too few listed pieces have sold to tell apart all that their days may depend on.",
        // What least squares was given are the log's own columns: only their number can be wrong.
        _ => "It holds too few such pieces to tell apart all that they may depend on.",
    };

    internal static string Words(ModelName model) => model switch
    {
        ModelName.Price => "sale price",
        ModelName.Days => "days on market",
        ModelName.Hours => "hours",
        _ => "supplies",
    };

    internal static EffectsSpecification Specification(ModelName model) => model switch
    {
        ModelName.Price => Expectations.SalePrice,
        ModelName.Hours => Expectations.Hours,
        _ => Expectations.Supplies,
    };

    internal static ImmutableArray<EffectsRow> Rows(FittedModels models, ModelName model) => model switch
    {
        ModelName.Price => models.PriceRows(),
        ModelName.Hours => models.Rows.HoursRows(),
        _ => models.SuppliesRows(),
    };

    private static FitReport Amount(FittedModels models, ModelName model)
    {
        EffectsModel effects = models.Amount(model) ?? throw NothingToFit(model);
        return Report(models, model, effects.Fit, plain: false, effects.Rows.Count(r => r.Origin == RowOrigin.Log));
    }

    private static FitReport PlainAmount(FittedModels models, ModelName model)
    {
        var (design, fit, rows) = EffectsModel.FitPlain(Specification(model), Rows(models, model));
        var kept = Kept(design.Columns.Names, fit.DroppedColumns);
        return Report(models, model, fit, plain: true, rows.Length) with
        {
            Design = new(
                ["response", .. kept.Select(j => design.Columns.Names[j]), .. design.Groups.Select(g => $"group:{g.Name}")],
                [
                    .. rows.Select(row =>
                    {
                        double[] x = design.Columns.Row(row.Values);
                        return (ImmutableArray<string>)
                        [
                            Cell(row.Response), .. kept.Select(j => Cell(x[j])),
                            .. design.Groups.Select(g => g.Levels[g.IndexOf(row.Facts)]),
                        ];
                    }),
                ]),
        };
    }

    private static FitReport Report(FittedModels models, ModelName model, MixedModelFit fit, bool plain, int n) => new()
    {
        Model = model,
        Estimator = Estimator.Mixed,
        Plain = plain,
        AsOf = models.Log.Date,
        N = n,
        Formula = Formula(model, fit.Coefficients.Select(c => c.Name), fit.Terms.Select(t => t.Name)),
        Terms = [.. fit.Coefficients.Select(c => new FitTerm(c.Name, c.Estimate, c.StandardError))],
        Random =
        [
            .. fit.Terms.Select(t => new FitGroup(t.Name, t.Variance,
                [.. t.Levels.Select(l => new FitLevel(l.Level, l.Effect, Math.Sqrt(l.ConditionalVariance)))])),
        ],
        ResidualVariance = fit.ResidualVariance,
        LogLikelihood = fit.LogLikelihood,
        Criterion = fit.Criterion == LikelihoodCriterion.Reml ? "REML" : "ML",
        DroppedTerms = fit.DroppedColumns,
        Converged = fit.Converged,
    };

    private static FitReport Days(FittedModels models, bool plain)
    {
        DaysModel days = plain ? DaysModel.Plain(models) : models.Days;
        if (days.Fit is not { } fit)
        {
            throw new NotEnoughDataException(days.HasFailed
                ? "What your log says of days on market could not be put into one picture; flip check may show a date or an amount that is out of line."
                : "No piece has a listing date, so there are no days on market to fit.");
        }

        var kept = Kept(days.Columns.Names, fit.DroppedColumns);
        return new()
        {
            Model = ModelName.Days,
            Estimator = Estimator.Mixed,
            Plain = plain,
            AsOf = models.Log.Date,
            N = days.Rows.Count(r => r.Origin == RowOrigin.Log),
            Formula = Formula(ModelName.Days, fit.Coefficients.Select(c => c.Name), fit.Groups.Select(g => g.Name)),
            Terms = [.. fit.Coefficients.Select(c => new FitTerm(c.Name, c.Estimate, c.StandardError))],
            Random =
            [
                .. fit.Groups.Select(g => new FitGroup(g.Name, g.Variance,
                    [.. g.Levels.Select(l => new FitLevel(l.Level, l.Effect, l.StandardError))])),
            ],
            LogLikelihood = fit.LogLikelihood,
            Criterion = "ML",
            Distribution = "weibull",
            Scale = fit.Scale,
            LogScaleStandardError = Math.Sqrt(fit.VarianceOfLogScale),
            DroppedTerms = fit.DroppedColumns,
            Converged = fit.Converged,
            Design = !plain ? null : new(
                ["start", "stop", "event", .. kept.Select(j => days.Columns.Names[j])],
                [
                    .. days.Rows.Select(row =>
                    {
                        double[] x = days.Columns.Row(row.Values);
                        return (ImmutableArray<string>)
                        [
                            Cell(row.Spell.Start), Cell(row.Spell.Stop), row.Spell.Kind == SpellKind.Ended ? "1" : "0",
                            .. kept.Select(j => Cell(x[j])),
                        ];
                    }),
                ]),
        };
    }

    internal static string Formula(ModelName model, IEnumerable<string> terms, IEnumerable<string> groups)
    {
        string fixedPart = string.Join(" + ", terms);
        string randomPart = string.Concat(groups.Select(g => $" + effect of {g}"));
        return $"log {Words(model)} = {fixedPart}{randomPart}";
    }

    internal static string Cell(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static int[] Kept(ImmutableArray<string> names, ImmutableArray<string> dropped) =>
        [.. Enumerable.Range(0, names.Length).Where(j => !dropped.Contains(names[j]))];
}

/// <summary>A log does not hold what a model needs; the message says what is missing and what helps.</summary>
public sealed class NotEnoughDataException : Exception
{
    /// <summary>Not enough data, for no stated reason.</summary>
    public NotEnoughDataException()
        : this("The log does not hold enough for this.")
    {
    }

    /// <summary>Not enough data.</summary>
    /// <param name="message">What is missing and what helps.</param>
    public NotEnoughDataException(string message)
        : base(message)
    {
    }

    /// <summary>Not enough data, found while computing.</summary>
    /// <param name="message">What is missing and what helps.</param>
    /// <param name="innerException">What the computation said.</param>
    public NotEnoughDataException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
