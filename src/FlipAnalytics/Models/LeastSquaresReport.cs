using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// Ordinary least squares with the terms of a model of a log amount, types, colours and finishes as treatment-coded
/// categories whose base is their first level.
/// </summary>
internal static class LeastSquaresReport
{
    private const int InfluentialShown = 5;

    // Logs of amounts are of the order of one; what is left of them here is rounding.
    private const double NoScatter = 1e-10;

    public static FitReport Of(
        FittedModels models, ModelName model, EffectsSpecification specification, ImmutableArray<EffectsRow> all)
    {
        var (rows, design, regressors, response, fit) = Fit(specification, all);
        if (fit.Sigma <= NoScatter)
            throw ModelFitting.NothingScatters(models, model);
        Regressor[] kept = [.. regressors.Where(r => !fit.DroppedColumns.Contains(r.Name))];
        return new()
        {
            Model = model,
            Estimator = Estimator.Ols,
            Plain = true,
            AsOf = models.Log.Date,
            N = rows.Length,
            Formula = ModelFitting.Formula(model, design.Columns.Names, design.Groups.Select(g => g.Name)),
            Terms = [.. fit.Coefficients.Select(c => new FitTerm(c.Name, c.Estimate, c.StandardError))],
            ResidualVariance = fit.Sigma * fit.Sigma,
            LogLikelihood = fit.LogLikelihood,
            Criterion = "ML",
            DroppedTerms = fit.DroppedColumns,
            Diagnostics = Diagnostics(fit, rows),
            Design = new(
                ["response", .. kept.Select(r => r.Name)],
                [
                    .. Enumerable.Range(0, rows.Length).Select(i => (ImmutableArray<string>)
                    [
                        ModelFitting.Cell(response[i]), .. kept.Select(r => ModelFitting.Cell(r.Values.Span[i])),
                    ]),
                ]),
        };
    }

    /// <summary>How hard each piece pulls on the fit; empty where there are too few rows for one.</summary>
    public static ImmutableArray<PieceInfluence> Influence(
        EffectsSpecification specification, ImmutableArray<EffectsRow> all)
    {
        try
        {
            var (rows, _, _, _, fit) = Fit(specification, all);
            RowDiagnostics byRow = fit.ByRow;
            return
            [
                .. Enumerable.Range(0, rows.Length)
                    .Where(i => double.IsFinite(byRow.CooksDistance[i]) && double.IsFinite(byRow.StandardizedResiduals[i]))
                    .Select(i => new PieceInfluence(
                        rows[i].PieceId!, byRow.Leverage[i], byRow.StandardizedResiduals[i], byRow.CooksDistance[i])),
            ];
        }
        catch (ArgumentException)
        {
            return [];
        }
    }

    private static (ImmutableArray<EffectsRow> Rows, EffectsDesign Design, List<Regressor> Regressors, double[] Response,
        LinearFit Fit) Fit(EffectsSpecification specification, ImmutableArray<EffectsRow> all)
    {
        ImmutableArray<EffectsRow> rows = [.. all.Where(r => r.Origin == RowOrigin.Log)];
        EffectsDesign design = EffectsDesign.Of(specification, rows, plain: true);
        double[][] x = [.. rows.Select(r => design.Columns.Row(r.Values))];
        List<Regressor> regressors =
            [.. design.Columns.Names.Select((name, j) => new Regressor(name, x.Select(row => row[j]).ToArray()))];
        foreach (Grouping group in design.Groups)
        {
            int[] levels = [.. rows.Select(r => group.IndexOf(r.Facts))];
            regressors.AddRange(group.Levels.Skip(1).Select((level, k) => new Regressor(
                $"{group.Name} {level}", levels.Select(l => l == k + 1 ? 1.0 : 0.0).ToArray())));
        }

        double[] response = [.. rows.Select(r => r.Response)];
        return (rows, design, regressors, response, LeastSquares.Fit(regressors, response));
    }

    // Where nothing varies but the amount there is nothing to test.
    private static double? Known(double figure) => double.IsFinite(figure) ? figure : null;

    private static FitDiagnostics Diagnostics(LinearFit fit, ImmutableArray<EffectsRow> rows) => new(
        fit.RSquared, fit.AdjustedRSquared, fit.Sigma, Known(fit.Overall.F), Known(fit.Overall.P), fit.Aic, fit.Bic,
        fit.Coefficients.Length < 2 ? null : Known(BreuschPagan.Studentized(fit).P), fit.ConditionNumber, Smearing.Factor(fit),
        [
            // A row that alone tells a coefficient is reproduced exactly, so neither figure exists for it.
            .. Enumerable.Range(0, rows.Length)
                .Where(i => double.IsFinite(fit.ByRow.CooksDistance[i])
                    && double.IsFinite(fit.ByRow.StudentizedResiduals[i]))
                .OrderByDescending(i => fit.ByRow.CooksDistance[i])
                .Take(InfluentialShown)
                .Select(i => new InfluentialPiece(
                    rows[i].PieceId!, fit.ByRow.CooksDistance[i], fit.ByRow.StudentizedResiduals[i])),
        ]);
}
