using System.Collections.Immutable;
using FlipAnalytics.Statistics;
using MathNet.Numerics.Distributions;

namespace FlipAnalytics;

/// <summary>A logged amount beside what all the other rows predict of it.</summary>
/// <param name="PieceId">The piece.</param>
/// <param name="Actual">The amount.</param>
/// <param name="Predicted">The middle of what was predicted without it.</param>
/// <param name="Low">Lower end of the range predicted without it.</param>
/// <param name="High">Upper end of that range.</param>
/// <param name="Residual">Log of the amount less its prediction, in standard deviations of the prediction.</param>
/// <param name="NormalScore">Where a residual of its rank would stand if they were normal: Blom's (i − 3/8)/(n + 1/4).</param>
/// <param name="RootSize">Square root of the residual's size.</param>
public sealed record CheckedAmount(
    string PieceId, double Actual, double Predicted, double Low, double High, double Residual, double NormalScore,
    double RootSize);

/// <summary>How hard a piece pulls on the textbook least-squares fit with the same terms.</summary>
/// <param name="PieceId">The piece.</param>
/// <param name="Leverage">0 to 1.</param>
/// <param name="StandardizedResidual">Its residual in standard deviations.</param>
/// <param name="CooksDistance">Cook's distance.</param>
public sealed record PieceInfluence(string PieceId, double Leverage, double StandardizedResidual, double CooksDistance);

/// <summary>How often ranges of a level held the amount they were made without.</summary>
/// <param name="Level">What was promised, 0 to 1.</param>
/// <param name="Held">Ranges that held.</param>
/// <param name="Count">Ranges.</param>
/// <param name="Share">Held over count.</param>
/// <param name="Uncertainty">Where the true share may be: Wilson's 95 % interval.</param>
public sealed record LevelHeld(double Level, int Held, int Count, double Share, Limits Uncertainty);

/// <summary>
/// A model checked against the owner's own log: every row predicted from all the others. The shape of the error is also
/// taken from other rows, a tenth of the rows being left out at a time.
/// </summary>
public sealed record ModelCheck
{
    private const double RangeLevel = 0.8;
    private const int Folds = 10;

    private static readonly double[] Levels = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95];

    /// <summary>Which model.</summary>
    public required ModelName Model { get; init; }

    /// <summary>What it predicts, in words, such as sale price.</summary>
    public required string Response { get; init; }

    /// <summary>The unit of the amounts, such as USD or hours.</summary>
    public required string Unit { get; init; }

    /// <summary>The workshop, where the amounts are its money; null where they are hours.</summary>
    public Workshop? Workshop { get; init; }

    /// <summary>Chance that a range in <see cref="Rows"/> holds, 0 to 1.</summary>
    public double Level { get; init; } = RangeLevel;

    /// <summary>The logged amounts, in log order; those that the others cannot predict are left out.</summary>
    public ImmutableArray<CheckedAmount> Rows { get; init; } = [];

    /// <summary>Pull on the least-squares fit; empty where there are too few rows for one.</summary>
    public ImmutableArray<PieceInfluence> Influence { get; init; } = [];

    /// <summary>How often ranges held, by their level; empty without rows.</summary>
    public ImmutableArray<LevelHeld> Coverage { get; init; } = [];

    /// <summary>How many of <see cref="Rows"/> lie inside their ranges.</summary>
    public int Held => Rows.Count(row => row.Actual >= row.Low && row.Actual <= row.High);

    /// <summary>The piece that pulls hardest on the least-squares fit; null where there is none.</summary>
    public PieceInfluence? MostInfluential => Influence.MaxBy(piece => piece.CooksDistance);

    /// <summary>Checks the model of sale prices, hours or supplies.</summary>
    /// <param name="models">The fitted models.</param>
    /// <param name="model">Which of them.</param>
    /// <exception cref="ArgumentException">The model of days, which has no single residual for a piece.</exception>
    public static ModelCheck Of(FittedModels models, ModelName model)
    {
        ArgumentNullException.ThrowIfNull(models);
        if (model == ModelName.Days)
            throw new ArgumentException("Days on market are checked by their curves; name price, hours or supplies.", nameof(model));
        var plain = new ModelCheck
        {
            Model = model,
            Response = ModelFitting.Words(model),
            Unit = model == ModelName.Hours ? "hours" : models.Log.Workshop.Currency.Code,
            Workshop = model == ModelName.Hours ? null : models.Log.Workshop,
            Influence = LeastSquaresReport.Influence(ModelFitting.Specification(model), ModelFitting.Rows(models, model)),
        };
        if (models.Amount(model) is not { } fitted)
            return plain;
        var rows = fitted.Rows.Zip(fitted.LeaveOneOut)
            .Where(pair => pair.First.Origin == RowOrigin.Log && double.IsFinite(pair.Second.StandardizedResidual))
            .Select(pair => (Row: pair.First, Without: pair.Second)).ToArray();
        double[] residuals = [.. rows.Select(row => row.Without.StandardizedResidual)];
        ResidualShape[] shapes =
        [
            .. Enumerable.Range(0, Folds).Select(fold => ResidualShape.Of(residuals.Where((_, i) => i % Folds != fold))),
        ];
        double[] scores = NormalScores(residuals);
        double z = Z(RangeLevel);
        return plain with
        {
            Rows =
            [
                .. rows.Select((row, i) =>
                {
                    double mean = row.Without.Mean;
                    // The residual over its standardised self is the deviation, gaps in the row included.
                    double deviation = residuals[i] == 0
                        ? Math.Sqrt(row.Without.VarianceOfMean + row.Without.ResidualVariance)
                        : row.Without.Residual / residuals[i];
                    double half = shapes[i % Folds].At(z) * deviation;
                    return new CheckedAmount(
                        row.Row.PieceId!, Math.Exp(row.Row.Response), Math.Exp(mean), Math.Exp(mean - half), Math.Exp(mean + half),
                        residuals[i], scores[i], Math.Sqrt(Math.Abs(residuals[i])));
                }),
            ],
            Coverage = rows.Length == 0 ? [] :
            [
                .. from level in Levels
                   let held = residuals.Where((r, i) => Math.Abs(r) <= shapes[i % Folds].At(Z(level))).Count()
                   select new LevelHeld(level, held, rows.Length, (double)held / rows.Length, Proportion.Wilson(held, rows.Length)),
            ],
        };
    }

    private static double Z(double level) => Normal.InvCDF(0, 1, (1 + level) / 2);

    // Blom (1958), Statistical Estimates and Transformed Beta-Variables.
    private static double[] NormalScores(double[] residuals)
    {
        double[] scores = new double[residuals.Length];
        int[] order = [.. Enumerable.Range(0, residuals.Length).OrderBy(i => residuals[i])];
        for (int rank = 0; rank < order.Length; rank++)
            scores[order[rank]] = Normal.InvCDF(0, 1, (rank + 1 - 0.375) / (residuals.Length + 0.25));
        return scores;
    }
}
