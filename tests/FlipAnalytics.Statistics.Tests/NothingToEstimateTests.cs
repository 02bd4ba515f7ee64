using System.Collections.Immutable;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>
/// Empty, constant and collinear input to every entry point: what cannot be estimated is refused by name, what can be is
/// estimated from the rest, and nothing turns into NaN.
/// </summary>
public sealed class NothingToEstimateTests
{
    private static readonly double[] Rising = [1, 2, 3, 4, 5, 6];
    private static readonly double[] Response = [1.1, 1.9, 3.2, 3.9, 5.2, 5.8];
    private static readonly double[] Seven = [7, 7, 7, 7, 7, 7];
    private static readonly double[] Zero = new double[6];
    private static readonly RandomTerm Types = RandomTerm.Exchangeable("type", ["desk", "hutch"]);
    private static readonly Spell[] Ended = [.. Response.Select(time => Spell.Ended(time))];
    private static readonly SurvivalTime[] Times = [.. Response.Select(time => new SurvivalTime(time, true))];

    public static TheoryData<string, Action, string> Refused => new()
    {
        { "least squares, no columns", () => LeastSquares.Fit([], Response), "The design has no columns" },
        { "least squares, no rows", () => LeastSquares.Fit([new("x", default)], []), "The response has no rows" },
        { "least squares, constant response", () => LeastSquares.Fit([Ones(), new("x", Rising)], Seven), "The response is 7 in all 6 rows" },
        { "least squares, response 0 without an intercept", () => LeastSquares.Fit([new("x", Rising)], Zero), "The response is 0 in all 6 rows" },
        { "least squares, only a column of 0", () => LeastSquares.Fit([new("x", Zero)], Response), "Every column of the design is 0" },
        { "least squares, as many columns as rows", () => LeastSquares.Fit([Regressor.Intercept(2), new("x", new[] { 1.0, 2 })], [1, 3]), "2 rows cannot fit 2 coefficients" },
        { "polynomial, no rows", () => Polynomial.Fit([], [], 2), "The response has no rows" },
        { "polynomial, constant response", () => Polynomial.Fit(Rising, Seven, 1), "The response is 7 in all 6 rows" },
        { "cross-products, no names", () => _ = new CrossProducts([]), "There are no columns" },
        { "cross-products, no rows", () => new CrossProducts(["x"]).Fit(), "No rows have been added" },
        { "cross-products, constant response", () => Totals(true, Seven, Rising).Fit(), "The response is 7 in all 6 rows" },
        { "cross-products, response 0 without an intercept", () => Totals(false, Zero, Rising).Fit(), "The response is 0 in all 6 rows" },
        { "cross-products, only a column of 0", () => Totals(false, Response, Zero).Fit(), "Every column of the design is 0" },
        { "prediction, a gap", () => LinearPrediction.Of(Line(), [1, double.NaN]), "'x' is NaN" },
        { "prediction, no columns", () => LinearPrediction.Of(Line(), Array.Empty<Regressor>()), "The new rows have no column '(Intercept)'" },
        { "unequal variance, intercept alone", () => BreuschPagan.Studentized(LeastSquares.Fit([Ones()], Response)), "at least one more column" },
        { "HC3, a row that alone determines a coefficient", () => RobustCovariance.Hc3(LeastSquares.Fit([Ones(), new("last", new double[] { 0, 0, 0, 0, 0, 1 })], Response)), "Row 5 (counting from 0) alone determines a coefficient" },
        { "smearing, no residuals", () => Smearing.Factor([]), "at least one residual" },
        { "mixed model, no rows", () => MixedModel.Fit(Mixed([], [])), "0 rows cannot estimate" },
        { "mixed model, constant response", () => MixedModel.Fit(Mixed(Seven, Rising)), "reproduce all 6 responses exactly" },
        { "mixed model, as many columns as rows", () => MixedModel.Fit(Mixed([1, 2], [1, 2])), "2 rows cannot estimate 2 coefficients" },
        { "random term, no levels", () => RandomTerm.Exchangeable("type", []), "'type' has no levels" },
        { "durations, no rows", () => AcceleratedFailure.Fit(Durations([], []), new()), "There are no rows" },
        { "durations, none ended", () => AcceleratedFailure.Fit(Durations([.. Response.Select(time => Spell.Running(time))], Rising), new()), "ended" },
        { "durations, all equal", () => AcceleratedFailure.Fit(Durations([.. Seven.Select(time => Spell.Ended(time))], Rising), new()), "scale" },
        { "durations, every row counts 0 times", () => AcceleratedFailure.Fit(Durations(Ended, Rising) with { Weights = Zero }, new()), "weight" },
        { "survival curve, no spells", () => KaplanMeier.Estimate([]), "There are no spells" },
        { "cumulative hazard, no spells", () => NelsonAalen.Estimate([]), "There are no spells" },
        { "log-rank, no spells", () => LogRank.Test([], []), "There are no spells" },
        { "log-rank, one group", () => LogRank.Test(Times, [.. Times.Select(_ => "white")]), "All spells are in group 'white'" },
        { "coverage, no ranges", () => Coverage.Of([], []), "There are 0 ranges" },
        { "distance to uniform, no values", () => ProbabilityIntegralTransform.DistanceToUniform([]), "at least one value" },
        { "share of no trials", () => Proportion.Wilson(0, 0), "trials" },
        { "rate without exposure", () => Rate.Exact(0, 0), "An exposure must be above 0" },
        { "two rates without events", () => Rate.Compare(0, 1, 0, 1), "count" },
        { "nodes in no dimension", () => NormalNodes.Create(0, 64), "1 to 8 dimensions" },
        { "description, no rows", () => Described().FitLeastSquares(DataColumns.Empty.With("y", Array.Empty<double>()).With("x", Array.Empty<double>())), "The data have no rows" },
        { "description, constant response", () => Described().FitMixed(DataColumns.Empty.With("y", Seven).With("x", Rising)), "reproduce all 6 responses exactly" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_cannot_be_estimated_is_refused_by_name(string what, Action estimate, string message)
    {
        Exception? refusal = Record.Exception(estimate);
        Assert.True(refusal is ArgumentException or MixedModelException or NoEstimateException, $"{what}: {refusal?.ToString() ?? "no error"}");
        Assert.Contains(message, refusal!.Message, StringComparison.Ordinal);
    }

    public static TheoryData<string, Func<(string[] Dropped, double[] Numbers)>, string[]> EstimatedFromTheRest => new()
    {
        { "least squares, a constant and a copy", () => Of(LeastSquares.Fit([Ones(), new("x", Rising), new("seven", Seven), new("copy", Doubled())], Response)), ["seven", "copy"] },
        { "least squares, a column of 0", () => Of(LeastSquares.Fit([Ones(), new("nothing", Zero), new("x", Rising)], Response)), ["nothing"] },
        { "polynomial of a constant", () => Of(Polynomial.Fit(Seven, Response, 2)), ["x^1", "x^2"] },
        { "cross-products, a constant and a copy", () => Of(Totals(true, Response, Rising, Seven, Doubled()).Fit()), ["c1", "c2"] },
        { "cross-products, a column of 0", () => Of(Totals(true, Response, Zero, Rising).Fit()), ["c0"] },
        { "mixed model, a constant and a copy", () => Of(MixedModel.Fit(Mixed(Response, Rising, Seven, Doubled()))), ["c1", "c2"] },
        { "mixed model, a column of 0", () => Of(MixedModel.Fit(Mixed(Response, Zero, Rising))), ["c0"] },
        { "mixed model, one level for all rows", () => Of(MixedModel.Fit(MixedModelData.From(["(Intercept)"], [.. Response.Select(_ => new[] { 1.0 })], [Types], [new int[6]], Response))), [] },
        { "mixed model, no row in any level", () => Of(MixedModel.Fit(MixedModelData.From(["(Intercept)"], [.. Response.Select(_ => new[] { 1.0 })], [Types], [[-1, -1, -1, -1, -1, -1]], Response))), [] },
        { "durations, a constant and a copy", () => Of(AcceleratedFailure.Fit(Durations(Ended, Rising, Seven, Doubled()), new())), ["c1", "c2"] },
        { "durations, a column of 0", () => Of(AcceleratedFailure.Fit(Durations(Ended, Zero, Rising), new())), ["c0"] },
        { "survival curve, all end at once", () => ([], [.. KaplanMeier.Estimate([.. Seven.Select(t => new SurvivalTime(t, true))]).Steps.Select(step => step.Survival)]), [] },
        { "survival curve, none ended", () => ([], [.. KaplanMeier.Estimate([.. Seven.Select(t => new SurvivalTime(t, false))]).Steps.SelectMany(step => new[] { step.Survival, step.StandardError!.Value })]), [] },
        { "cumulative hazard, none ended", () => ([], [.. NelsonAalen.Estimate([.. Seven.Select(t => new SurvivalTime(t, false))]).SelectMany(step => new[] { step.CumulativeHazard, step.StandardError })]), [] },
        { "smearing, residuals of 0", () => ([], [Smearing.Factor(Zero)]), [] },
        { "description, a copy", () => Of(new ModelDescription(new("y"), new Term.Intercept(), new Term.Number("x"), new Term.Number("copy")).FitLeastSquares(DataColumns.Empty.With("y", Response).With("x", Rising).With("copy", Doubled())).Fit), ["copy"] },
    };

    [Theory]
    [MemberData(nameof(EstimatedFromTheRest))]
    public void What_depends_on_the_rest_is_dropped_by_name_and_no_number_is_lost(
        string what, Func<(string[] Dropped, double[] Numbers)> estimate, string[] dropped)
    {
        (string[] found, double[] numbers) = estimate();
        Assert.Equal(dropped, found);
        Assert.All(numbers, number => Assert.True(double.IsFinite(number), $"{what}: {string.Join(", ", numbers)}"));
    }

    private static Regressor Ones() => Regressor.Intercept(6);

    private static double[] Doubled() => [.. Rising.Select(x => 2 * x)];

    private static LinearFit Line() => LeastSquares.Fit([Ones(), new("x", Rising)], Response);

    private static ModelDescription Described() => new(new("y"), new Term.Intercept(), new Term.Number("x"));

    private static CrossProducts Totals(bool intercept, double[] response, params double[][] columns)
    {
        var totals = new CrossProducts([.. columns.Select((_, j) => $"c{j}")], intercept);
        totals.Add([.. columns.Select(column => (ReadOnlyMemory<double>)column)], response);
        return totals;
    }

    private static ImmutableArray<string> NamesOf(double[][] columns) => ["(Intercept)", .. columns.Select((_, j) => $"c{j}")];

    private static double[][] RowsOf(int count, double[][] columns) =>
        [.. Enumerable.Range(0, count).Select(i => columns.Select(column => column[i]).Prepend(1).ToArray())];

    private static MixedModelData Mixed(double[] response, params double[][] columns) => MixedModelData.From(
        NamesOf(columns), RowsOf(response.Length, columns), [Types], [[.. response.Select((_, i) => i % 2)]], response);

    private static AcceleratedFailureData Durations(Spell[] spells, params double[][] columns) =>
        new(NamesOf(columns), RowsOf(spells.Length, columns), [.. spells], [], null);

    private static (string[] Dropped, double[] Numbers) Of(LinearFit fit) => (
        [.. fit.DroppedColumns],
        [
            .. fit.Coefficients.SelectMany(c => new[] { c.Estimate, c.StandardError, c.T, c.P }),
            fit.Sigma, fit.RSquared, fit.AdjustedRSquared, fit.LogLikelihood, fit.Aic, fit.Bic, fit.ConditionNumber,
        ]);

    private static (string[] Dropped, double[] Numbers) Of(MixedModelFit fit) => (
        [.. fit.DroppedColumns],
        [
            .. fit.Coefficients.SelectMany(c => new[] { c.Estimate, c.StandardError }),
            .. fit.Terms.SelectMany(term => term.Levels).SelectMany(l => new[] { l.Effect, l.PredictionErrorVariance }),
            fit.ResidualVariance, fit.MinusTwoLogLikelihood,
        ]);

    private static (string[] Dropped, double[] Numbers) Of(AcceleratedFailureFit fit) => (
        [.. fit.DroppedColumns],
        [
            .. fit.Coefficients.SelectMany(c => new[] { c.Estimate, c.StandardError }),
            fit.LogScale, fit.VarianceOfLogScale, fit.LogLikelihood,
        ]);
}
