using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// A model of the log of an amount (sale price, hours or supplies) with fixed slopes, random effects of type, colour and
/// finish, and a level that may drift from month to month: restricted maximum likelihood, with mild expectations of
/// slopes and spreads that a few sales lean on and many overrule. Slope expectations enter as prior observations of the
/// slope alone (Theil and Goldberger, 1961, International Economic Review 2, 65–78, "mixed estimation", from memory).
/// </summary>
internal sealed class EffectsModel
{
    // A few wild amounts make the spread so wide that the mean of its exponential is beyond all sense.
    private static readonly double FurthestOut = Math.Log(10);

    private readonly EffectsSpecification specification;
    private readonly ImmutableArray<EffectsRow> rows;
    private readonly Dictionary<string, double> predictedWithout;
    private readonly (double Low, double High) limits;

    private EffectsModel(
        EffectsSpecification specification, ImmutableArray<EffectsRow> rows, EffectsDesign design, MixedModelFit fit)
    {
        this.specification = specification;
        this.rows = rows;
        limits = (rows.Min(row => row.Response) - FurthestOut, rows.Max(row => row.Response) + FurthestOut);
        Design = design;
        Fit = fit;
        LeaveOneOut = fit.LeaveOneOut();
        Shape = ResidualShape.Of(rows.Zip(LeaveOneOut)
            .Where(pair => pair.First.Origin == RowOrigin.Log)
            .Select(pair => pair.Second.StandardizedResidual));
        predictedWithout = rows.Zip(LeaveOneOut)
            .Where(pair => pair.First.PieceId is not null && pair.Second.IsDefined)
            .ToDictionary(pair => pair.First.PieceId!, pair => pair.Second.Mean, StringComparer.OrdinalIgnoreCase);
    }

    public EffectsDesign Design { get; }

    public MixedModelFit Fit { get; }

    /// <summary>Each row predicted from the others, in the order of the rows.</summary>
    public ImmutableArray<LeaveOneOutPrediction> LeaveOneOut { get; }

    public ResidualShape Shape { get; }

    public ImmutableArray<EffectsRow> Rows => rows;

    /// <summary>The slope of a fixed term, 0 where the model does not have it.</summary>
    public double Slope(string name) => Fit.Coefficients.FirstOrDefault(c => c.Name == name)?.Estimate ?? 0;

    /// <summary>What all the other rows expect of a logged piece; null where they cannot tell or it is not in the model.</summary>
    public double? PredictedWithout(string pieceId) =>
        predictedWithout.TryGetValue(pieceId, out double mean) ? mean : null;

    /// <summary>Fits the model; null where there is no row.</summary>
    public static EffectsModel? TryFit(EffectsSpecification specification, ImmutableArray<EffectsRow> rows)
    {
        if (rows.IsEmpty)
            return null;
        EffectsDesign design = EffectsDesign.Of(specification, rows, plain: false);
        EffectsModel first = FitOnce(specification, rows, design, [.. rows.Select(r => r.Weight)]);

        // A row with gaps says less: its residual carries the spread of what was not recorded.
        double residual = first.Fit.ResidualVariance;
        double[] gaps = [.. rows.Select(first.GapVariance)];
        if (gaps.All(g => g == 0))
            return first;
        return FitOnce(specification, rows, design,
            [.. rows.Zip(gaps, (row, gap) => row.Weight * residual / (residual + row.Weight * gap))]);
    }

    /// <summary>Fits what outside software can fit: no expectations, no guesses, no drift, all rows of weight 1.</summary>
    /// <exception cref="MixedModelException">The rows do not determine the model.</exception>
    public static (EffectsDesign Design, MixedModelFit Fit, ImmutableArray<EffectsRow> Rows) FitPlain(
        EffectsSpecification specification, ImmutableArray<EffectsRow> rows)
    {
        ImmutableArray<EffectsRow> logged = [.. rows.Where(r => r.Origin == RowOrigin.Log)];
        EffectsDesign design = EffectsDesign.Of(specification, logged, plain: true);
        var data = MixedModelData.From(
            design.Columns.Names, [.. logged.Select(r => design.Columns.Row(r.Values))], design.RandomTerms(), ByTerm(logged, design, 0),
            [.. logged.Select(r => r.Response)], null);
        return (design, MixedModel.Fit(data, new()), logged);
    }

    /// <summary>What the model expects of a piece.</summary>
    /// <param name="values">The piece, at a date.</param>
    /// <param name="sizeVariance">Variance that unrecorded dimensions leave in its size.</param>
    public LogPrediction Predict(DesignValues values, double sizeVariance)
    {
        MixedPrediction prediction = Fit.Predict(Design.Columns.Row(values), Design.NewLevels(values));
        double fromSize = Square(Slope(TermNames.Size)) * sizeVariance;
        double fromCondition =
            Design.Columns.ConditionVariance(values.Facts, Slope(TermNames.Worn), Slope(TermNames.Damaged));
        // Where the log has pieces without a colour, their level tells their mean but not this piece's colour; where it
        // has none, the level is unseen and its whole variance is in the prediction already.
        double fromColour = values.Facts.Colour is not null ? 0
            : Design.Groups.Zip(Fit.Terms)
                .Where(pair => pair.First.Name is TermNames.Colour or TermNames.Family
                    && pair.First.IndexOf(values.Facts) >= 0)
                .Sum(pair => pair.Second.Variance);
        return new(
            prediction.Mean,
            prediction.VarianceOfMean + prediction.ResidualVariance + fromSize + fromCondition + fromColour,
            fromSize,
            Slope(TermNames.Hours),
            Shape,
            limits);
    }

    /// <summary>The shrunk effect of a type; 0 for one that the model has not seen.</summary>
    public double TypeEffect(string type) =>
        Fit.Terms.First(t => t.Name == TermNames.Type).Levels
            .FirstOrDefault(l => string.Equals(l.Level, type, StringComparison.OrdinalIgnoreCase))?.Effect ?? 0;

    /// <summary>Share of the answer for a piece that rests on guesses and common practice instead of the log, 0 to 1.</summary>
    public double GuessShare(DesignValues values)
    {
        if (rows.All(r => r.Origin == RowOrigin.Log))
            return 0;
        double[] weights = Fit.RowWeights(Design.Columns.Row(values), Design.NewLevels(values));
        double guessed = 0;
        double total = 0;
        for (int i = 0; i < rows.Length; i++)
        {
            total += Math.Abs(weights[i]);
            guessed += rows[i].Origin == RowOrigin.Log ? 0 : Math.Abs(weights[i]);
        }

        return total == 0 ? 1 : guessed / total;
    }

    private double GapVariance(EffectsRow row) => row.Origin != RowOrigin.Log ? 0
        : Square(Slope(TermNames.Size)) * row.Size.Variance
            + Square(Slope(TermNames.Hours)) * row.RelativeHours.Variance
            + Design.Columns.ConditionVariance(row.Facts, Slope(TermNames.Worn), Slope(TermNames.Damaged));

    private static EffectsModel FitOnce(
        EffectsSpecification specification, ImmutableArray<EffectsRow> rows, EffectsDesign design, double[] weights)
    {
        double expectedVariance = Square(specification.Residual);
        var priors = specification.FixedTerms
            .Select((term, column) => (term.Prior, Column: column)).Where(p => p.Prior is not null).ToArray();
        double[][] x =
        [
            .. rows.Select(r => design.Columns.Row(r.Values)),
            .. priors.Select(p => design.Columns.Names.Select((_, j) => j == p.Column ? 1.0 : 0.0).ToArray()),
        ];
        double[] y = [.. rows.Select(r => r.Response), .. priors.Select(p => p.Prior!.Value.Mean)];
        double[] w =
        [
            .. weights,
            .. priors.Select(p => expectedVariance / Square(p.Prior!.Value.StandardDeviation)),
        ];
        var data = MixedModelData.From(
            design.Columns.Names, x, design.RandomTerms(), ByTerm(rows, design, priors.Length), y, w);
        var options = new MixedModelOptions
        {
            RatioPriors = [.. RatioPriors(specification, design)],
            ResidualVariancePrior = new(specification.ResidualWeight, expectedVariance),
        };
        return new(specification, rows, design, MixedModel.Fit(data, options));
    }

    private static IEnumerable<VarianceRatioPrior?> RatioPriors(EffectsSpecification specification, EffectsDesign design)
    {
        VarianceRatioPrior Prior(SpreadPrior spread) => new(
            2 * Math.Log(spread.StandardDeviation / specification.Residual), specification.SpreadUncertainty);

        foreach (Grouping group in design.Groups)
        {
            yield return Prior(group.Name switch
            {
                TermNames.Type => specification.Type,
                TermNames.Finish or TermNames.Further => specification.Finish,
                TermNames.Family => specification.Family!.Value,
                _ => specification.Colour!.Value,
            });
        }

        if (!design.Months.IsEmpty)
            yield return Prior(specification.MonthlyDrift!.Value);
    }

    private static int[][] ByTerm(ImmutableArray<EffectsRow> rows, EffectsDesign design, int priorRows)
    {
        int[][] byRow = [.. rows.Select(design.Levels)];
        return
        [
            .. Enumerable.Range(0, design.TermCount)
                .Select(k => byRow.Select(levels => levels[k]).Concat(Enumerable.Repeat(-1, priorRows)).ToArray()),
        ];
    }

    private static double Square(double x) => x * x;
}

/// <summary>What a model expects of the log of an amount.</summary>
/// <param name="Mean">Mean of the log, at usual hours where hours are a term and were not stated.</param>
/// <param name="Variance">Variance of the log with every source of uncertainty but that of the hours.</param>
/// <param name="SizeVariance">The part of it that knowing all dimensions would remove.</param>
/// <param name="HoursSlope">Change of the log per unit of log hours over usual; 0 where hours are no term.</param>
/// <param name="Shape">Shape of the error.</param>
/// <param name="Limits">Logs between which the amount is held: ten times beyond any on record or guessed.</param>
internal sealed record LogPrediction(
    double Mean, double Variance, double SizeVariance, double HoursSlope, ResidualShape Shape,
    (double Low, double High) Limits);
