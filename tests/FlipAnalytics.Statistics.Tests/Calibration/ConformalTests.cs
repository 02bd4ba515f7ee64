using System.Globalization;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against refits in R without any shortcut, and ranks in integer arithmetic.</summary>
public class ConformalTests
{
    [Fact]
    public void Ranks_are_exact_where_doubles_are_not()
    {
        ReferenceCase reference = new("calib/03_conformal_ranks");
        double[] counts = reference.Numbers("n"), percents = reference.Numbers("alpha_percent");
        double[] ranks = Numbers(reference.At("rank"));
        bool[] infinite = [.. reference.At("infinite").EnumerateArray().Select(value => value.GetBoolean())];
        for (int i = 0; i < ranks.Length; i++)
        {
            int rank = ConformalRank.Upper((int)counts[i], 1 - percents[i] / 100);
            Assert.Equal((int)ranks[i], rank);
            Assert.Equal(infinite[i], rank > (int)counts[i]);
        }
    }

    [Fact]
    public void The_bound_of_the_scores_is_a_score_or_infinite()
    {
        ReferenceCase reference = new("calib/03_conformal_ranks");
        double[] scores = Numbers(reference.At("scores"));
        foreach (var expected in reference.At("quantile_of_scores").EnumerateObject())
        {
            double percent = double.Parse(expected.Name["alpha_".Length..], CultureInfo.InvariantCulture);
            Assert.Equal(Number(expected.Value), ConformalRank.Quantile(scores, 1 - percent / 100));
        }
    }

    [Fact]
    public void Jackknife_plus_gives_the_ranges_of_refits_without_each_row()
    {
        ReferenceCase reference = new("calib/01_jackknife_plus");
        double[][] columns = [reference.Numbers("wt"), reference.Numbers("hp")];
        double[][] newColumns = [Numbers(reference.At("new_rows/wt")), Numbers(reference.At("new_rows/hp"))];
        Check(reference, columns, newColumns, reference.Numbers("mpg"), [.. Enumerable.Range(0, reference.RowCount)]);
    }

    [Fact]
    public void Cross_validation_plus_gives_the_ranges_of_refits_without_each_fold()
    {
        ReferenceCase reference = new("calib/02_cv_plus");
        double[][] columns = [Log(reference.Numbers("power")), Log(reference.Numbers("weight"))];
        double[][] newColumns = [Log(Numbers(reference.At("new_rows/power"))), Log(Numbers(reference.At("new_rows/weight")))];
        Check(
            reference, columns, newColumns, Log(reference.Numbers("price")),
            [.. reference.Numbers("fold").Select(fold => (int)fold)]);
    }

    [Fact]
    public void Left_out_residuals_need_no_refit_for_least_squares()
    {
        ReferenceCase reference = new("calib/01_jackknife_plus");
        LinearFit fit = Fit([reference.Numbers("wt"), reference.Numbers("hp")], reference.Numbers("mpg"));
        AssertClose(reference.At("answer/left_out_abs_residuals"), fit.ByRow.LeaveOneOutResiduals.Select(Math.Abs), 1e-9);
    }

    [Fact]
    public void A_fold_without_a_prediction_is_refused()
    {
        Assert.Throws<ArgumentException>(() => JackknifePlus.CrossValidatedRange([1, 2], [0, 1, 2], [0.1, 0.2, 0.3], 0.5));
    }

    private static void Check(
        ReferenceCase reference, double[][] columns, double[][] newColumns, double[] y, int[] folds)
    {
        double[] residuals = new double[y.Length];
        double[][] predictions = new double[folds.Max() + 1][];
        foreach (int fold in folds.Distinct())
        {
            int[] inside = [.. Enumerable.Range(0, y.Length).Where(i => folds[i] == fold)];
            int[] outside = [.. Enumerable.Range(0, y.Length).Where(i => folds[i] != fold)];
            LinearFit fit = Fit([.. columns.Select(c => outside.Select(i => c[i]).ToArray())], [.. outside.Select(i => y[i])]);
            foreach (int i in inside)
                residuals[i] = Math.Abs(y[i] - Predict(fit, columns, i));
            predictions[fold] = [.. newColumns[0].Select((_, i) => Predict(fit, newColumns, i))];
        }
        AssertClose(reference.At("answer/left_out_abs_residuals"), residuals, 1e-9, 1e-12, "residuals");
        foreach (var level in reference.At("answer/levels").EnumerateObject())
        {
            double percent = double.Parse(level.Name["alpha_".Length..^"pct".Length], CultureInfo.InvariantCulture);
            double chance = 1 - percent / 100;
            Assert.Equal(level.Value.GetProperty("rank_low").GetInt32(), ConformalRank.Lower(y.Length, chance));
            Assert.Equal(level.Value.GetProperty("rank_high").GetInt32(), ConformalRank.Upper(y.Length, chance));
            Limits[] ranges =
            [
                .. newColumns[0].Select((_, k) => JackknifePlus.CrossValidatedRange(
                    [.. predictions.Select(of => of[k])], folds, residuals, chance)),
            ];
            double bound = ConformalRank.Quantile(residuals, chance);
            double[] full = Numbers(reference.At("answer/full_fit_prediction"));
            AssertClose(level.Value.GetProperty("plain_low"), full.Select(fit => fit - bound), 1e-9, what: "plain low");
            AssertClose(level.Value.GetProperty("plain_high"), full.Select(fit => fit + bound), 1e-9, what: "plain high");
            AssertClose(level.Value.GetProperty("plus_low"), ranges.Select(range => range.Low), 1e-9, what: "low");
            AssertClose(level.Value.GetProperty("plus_high"), ranges.Select(range => range.High), 1e-9, what: "high");
        }
    }

    private static LinearFit Fit(double[][] columns, double[] y) => LeastSquares.Fit(
        [Regressor.Intercept(y.Length), .. columns.Select((column, j) => new Regressor($"x{j}", column))], y);

    private static double Predict(LinearFit fit, double[][] columns, int row) =>
        LinearPrediction.Of(fit, [1, .. columns.Select(column => column[row])]).Fit;

    private static double[] Log(double[] values) => [.. values.Select(value => Math.Log(value))];
}
