using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// A model of the log of an amount (sale price, hours or supplies) with fixed slopes, random effects of type, colour and
/// finish, and a level that may drift from month to month: restricted maximum likelihood, with mild expectations of
/// slopes and spreads that a few sales lean on and many overrule. Slope expectations enter as prior observations of the
/// slope alone (Theil and Goldberger, 1961, International Economic Review 2, 65–78, "mixed estimation", from memory).
/// A wild row counts for less (<see cref="RowCounts"/>), or as what was likely meant where one slip of the pen explains it,
/// so that a slip moves no other piece's answer by much.
/// </summary>
internal sealed class EffectsModel
{
    // A few wild amounts make the spread so wide that the mean of its exponential is beyond all sense.
    private static readonly double FurthestOut = Math.Log(10);

    // A wild row is explained by a slip where without it the row lies this many spreads off at most.
    private const double Explained = 2;

    // With fewer logged rows nothing tells which of them is wild.
    private const int FewestToJudge = 5;

    private readonly EffectsSpecification specification;
    private readonly ImmutableArray<EffectsRow> rows;
    private readonly RowWeights weights;
    private readonly EffectsObservations observed;

    // Of the fits that end in another one, nobody asks these.
    private readonly Lazy<Dictionary<string, double>> predictedWithout;
    private readonly Lazy<HashSet<string>> wild;
    private readonly Lazy<(double Low, double High)> limits;
    private readonly Lazy<ResidualShape> shape;
    private readonly Lazy<Dictionary<string, double>> typeEffects;

    private EffectsModel(
        EffectsSpecification specification, ImmutableArray<EffectsRow> rows, EffectsObservations observed, MixedModelFit fit,
        RowWeights weights)
    {
        this.specification = specification;
        this.rows = rows;
        this.weights = weights;
        this.observed = observed;
        limits = new(() =>
        {
            double[] told = [.. rows.Where((_, i) => weights.Counts[i] >= WeighedRow.HardlyCounts).Select(row => row.Response)];
            return (told.Min() - FurthestOut, told.Max() + FurthestOut);
        });
        Fit = fit;
        // Prior observations of slopes follow the rows in the fit.
        LeaveOneOut = [.. fit.LeaveOneOut().Take(rows.Length).Select(weights.AsIfCountedInFull)];
        shape = new(() => ResidualShape.Of(Logged.Where(i => weights.Counts[i] >= WeighedRow.HardlyCounts)
            .Select(i => LeaveOneOut[i].StandardizedResidual)));
        wild = new(() => Logged.Where(i => weights.Counts[i] < 1).Select(i => rows[i].PieceId!)
            .ToHashSet(StringComparer.OrdinalIgnoreCase));
        predictedWithout = new(() => Logged.Where(i => LeaveOneOut[i].IsDefined)
            .ToDictionary(i => rows[i].PieceId!, i => LeaveOneOut[i].Mean, StringComparer.OrdinalIgnoreCase));
        typeEffects = new(() => fit.Terms.First(t => t.Name == TermNames.Type).Levels
            .ToDictionary(l => l.Level, l => l.Effect, StringComparer.OrdinalIgnoreCase));
    }

    public EffectsDesign Design => observed.Design;

    public MixedModelFit Fit { get; }

    /// <summary>Each row predicted from the others, in the order of the rows.</summary>
    public ImmutableArray<LeaveOneOutPrediction> LeaveOneOut { get; }

    public ResidualShape Shape => shape.Value;

    public ImmutableArray<EffectsRow> Rows => rows;

    /// <summary>
    /// Three spreads of what the terms leave unexplained: what lies further off tells of a slip or of work of another kind.
    /// </summary>
    public double FurthestOff => 3 * Math.Sqrt(Fit.ResidualVariance);

    private IEnumerable<int> Logged => Enumerable.Range(0, rows.Length).Where(i => rows[i].Origin == RowOrigin.Log);

    /// <summary>The rows that count less than one, least first.</summary>
    public IEnumerable<WeighedRow> Weighed(ModelName model) =>
        from i in Logged
        where weights.Counts[i] < 1
        orderby weights.Counts[i]
        select new WeighedRow(
            rows[i].PieceId!, model, Math.Exp(rows[i].Response), Math.Exp(LeaveOneOut[i].Mean), weights.Counts[i],
            rows[i].Slip == 0 ? null : Math.Exp(rows[i].AsRead));

    /// <summary>The slope of a fixed term, 0 where the model does not have it.</summary>
    public double Slope(string name) => Fit.Coefficients.FirstOrDefault(c => c.Name == name)?.Estimate ?? 0;

    /// <summary>What all the other rows expect of a logged piece; null where they cannot tell or it is not in the model.</summary>
    public double? PredictedWithout(string pieceId) =>
        predictedWithout.Value.TryGetValue(pieceId, out double mean) ? mean : null;

    /// <summary>Whether a piece's own amount is so far out of line that it counts less.</summary>
    public bool IsWild(string pieceId) => wild.Value.Contains(pieceId);

    /// <summary>Fits the model; null where there is no row.</summary>
    public static EffectsModel? TryFit(EffectsSpecification specification, ImmutableArray<EffectsRow> rows)
    {
        if (rows.IsEmpty)
            return null;
        var observed = EffectsObservations.Of(specification, rows);
        EffectsModel fitted = FitOnce(specification, rows, observed, RowWeights.Of(rows), []);
        RowWeights gaps = fitted.weights.WithGaps(rows, fitted.Fit.ResidualVariance, fitted.GapVariance);
        if (gaps != fitted.weights)
            fitted = FitOnce(specification, rows, observed, gaps, []);
        for (int pass = 0; pass < Passes.Length; pass++)
        {
            RowWeights counted = fitted.weights.WithCounts(Passes[pass], fitted.StandardizedByMedian());
            if (counted == fitted.weights)
                break;
            // The variances are those of the first pass in which wild rows hardly counted.
            fitted = FitOnce(specification, rows, observed, counted, pass < Passes.Length - 1 ? [] : fitted.Fit.Terms);
        }

        ImmutableArray<EffectsRow> read = fitted.Read();
        return read == rows ? fitted : FitOnce(specification, read, observed, fitted.weights, fitted.Fit.Terms);
    }

    // A wild row that one slip of the pen explains is read as what was likely meant: in a rare type even the loss of a row
    // moves the answers. The same array where no row is. A mixture of slips and true amounts by the likelier of the two
    // (Little and Rubin, 2002, Statistical Analysis with Missing Data, ch. 10, from memory).
    private ImmutableArray<EffectsRow> Read()
    {
        double[] standardized = StandardizedByMedian();
        ImmutableArray<EffectsRow>.Builder? read = null;
        foreach (int i in Logged.Where(i => weights.Counts[i] < 1 && LeaveOneOut[i].IsDefined))
        {
            double spread = LeaveOneOut[i].Residual / standardized[i];
            double slip = specification.Slips.Select(s => Math.Log(s.Factor))
                .MinBy(factor => Math.Abs(LeaveOneOut[i].Residual - factor));
            if (!(Math.Abs(LeaveOneOut[i].Residual - slip) <= Explained * spread))
                continue;
            read ??= rows.ToBuilder();
            read[i] = rows[i] with { Slip = slip };
        }

        return read?.ToImmutable() ?? rows;
    }

    private static readonly ImmutableArray<Func<double, double>> Passes =
        [RowCounts.Monotone, RowCounts.Descending, RowCounts.Descending, RowCounts.Descending];

    // Leave-one-out residuals over a spread that wild rows cannot widen; 0 for what is no logged row or too few to judge.
    private double[] StandardizedByMedian()
    {
        var standardized = new double[rows.Length];
        int[] judged = [.. Logged.Where(i => LeaveOneOut[i].IsDefined && LeaveOneOut[i].ResidualVariance > 0)];
        if (judged.Length < FewestToJudge)
            return standardized;
        foreach (int i in judged)
        {
            LeaveOneOutPrediction left = LeaveOneOut[i];
            standardized[i] = left.Residual / Math.Sqrt(left.VarianceOfMean / left.ResidualVariance + 1 / weights.Ordinary[i]);
        }

        double scale = MedianScale.Deviation(
            [.. judged.Select(i => standardized[i])], 0, specification.Residual, specification.ResidualWeight);
        foreach (int i in judged)
            standardized[i] /= scale;
        return standardized;
    }

    /// <summary>Fits what outside software can fit: no expectations, no guesses, no drift, all rows of weight 1.</summary>
    /// <exception cref="MixedModelException">The rows do not determine the model.</exception>
    public static (EffectsDesign Design, MixedModelFit Fit, ImmutableArray<EffectsRow> Rows) FitPlain(
        EffectsSpecification specification, ImmutableArray<EffectsRow> rows)
    {
        ImmutableArray<EffectsRow> logged = [.. rows.Where(r => r.Origin == RowOrigin.Log)];
        EffectsDesign design = EffectsDesign.Of(specification, logged, plain: true);
        var data = MixedModelData.From(
            design.Columns.Names, [.. logged.Select(r => design.Columns.Row(r.Values))], design.RandomTerms(), EffectsObservations.LevelsOf(logged, design, 0),
            [.. logged.Select(r => r.Response)], null);
        return (design, MixedModel.Fit(data, new()), logged);
    }

    /// <summary>What the model expects of a piece.</summary>
    /// <param name="values">The piece, at a date.</param>
    /// <param name="sizeVariance">Variance that unrecorded dimensions leave in its size.</param>
    /// <param name="unstated">What is made of a condition, colour, finish or material that is not stated.</param>
    public LogPrediction Predict(DesignValues values, double sizeVariance, Unstated unstated = Unstated.AsRecorded)
    {
        LevelRef[] levels = Design.NewLevels(values);
        UnstatedTraits? traits = unstated == Unstated.AsRecorded ? null
            : UnstatedTraits.Of(Design, Fit, rows, values.Facts, (Slope(TermNames.Worn), Slope(TermNames.Damaged)));
        foreach (int k in traits?.Groups ?? [])
            levels[k] = LevelRef.Unseen;
        MixedPrediction prediction = Fit.Predict(Design.Columns.Row(values), levels);
        double fromSize = Square(Slope(TermNames.Size)) * sizeVariance;
        double fromCondition =
            Design.Columns.ConditionVariance(values.Facts, Slope(TermNames.Worn), Slope(TermNames.Damaged));
        // Where the log has pieces without a colour, their level tells their mean but not this piece's colour; where it
        // has none, the level is unseen and its whole variance is in the prediction already.
        double fromColour = values.Facts.Colour is not null || traits is not null ? 0
            : Design.Groups.Zip(Fit.Terms)
                .Where(pair => pair.First.Name is TermNames.Colour or TermNames.Family
                    && pair.First.IndexOf(values.Facts) >= 0)
                .Sum(pair => pair.Second.Variance);
        return new(
            prediction.Mean + (traits?.Shift(unstated, fromCondition) ?? 0),
            prediction.VarianceOfMean + prediction.ResidualVariance + fromSize + fromCondition + fromColour,
            // What is open of this one piece is nothing that more sales would tell.
            Math.Max(0, prediction.VarianceOfMean - (traits?.Variance ?? 0)),
            fromSize,
            Slope(TermNames.Hours),
            Shape,
            limits.Value,
            FurthestOff);
    }

    /// <summary>Whether an observation has a word of a trait.</summary>
    public bool Knows(string trait, string word) =>
        Design.Groups.FirstOrDefault(g => g.Name == trait)?.Levels.Contains(word, StringComparer.OrdinalIgnoreCase) == true;

    /// <summary>The shrunk effect of a type; 0 for one that the model has not seen.</summary>
    public double TypeEffect(string type) => typeEffects.Value.GetValueOrDefault(type);

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
        EffectsSpecification specification, ImmutableArray<EffectsRow> rows, EffectsObservations observed, RowWeights weights,
        ImmutableArray<RandomTermEstimate> held)
    {
        EffectsDesign design = observed.Design;
        double expectedVariance = Square(specification.Residual);
        SlopePrior[] priors = [.. specification.FixedTerms.Select(term => term.Prior).OfType<SlopePrior>()];
        double[] y = [.. rows.Select(r => r.AsRead), .. priors.Select(p => p.Mean)];
        double[] w =
        [
            .. weights.InFit(rows),
            .. priors.Select(p => expectedVariance / Square(p.StandardDeviation)),
        ];
        var data = MixedModelData.From(
            design.Columns.Names, observed.X, design.RandomTerms(), observed.ByTerm, y, w);
        var options = new MixedModelOptions
        {
            HeldRatios = [.. held.Select(term => (double?)term.VarianceRatio)],
            RatioPriors = [.. RatioPriors(specification, design)],
            ResidualVariancePrior = new(specification.ResidualWeight, expectedVariance),
        };
        return new(specification, rows, observed, MixedModel.Fit(data, options), weights);
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
                TermNames.Material => specification.Material!.Value,
                TermNames.Family => specification.Family!.Value,
                _ => specification.Colour!.Value,
            });
        }

        if (!design.Months.IsEmpty)
            yield return Prior(specification.MonthlyDrift!.Value);
    }

    private static double Square(double x) => x * x;
}
