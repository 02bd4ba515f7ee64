using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against R 4.2.2 (lm, lmtest, sandwich, car); the cases are described in ReferenceData/ols/README.md.</summary>
public class LeastSquaresAgainstRTests
{
    public static TheoryData<string, string> Cases => new()
    {
        { "01_mtcars", "mpg" },
        { "02_cars93_log_price", "log(price)" },
        { "03_boston", "log(medv)" },
        { "04_diamonds_price", "log(price)" },
        { "05_aliased_columns", "price" },
        { "06_weighted", "gas" },
    };

    [Theory, MemberData(nameof(Cases))]
    public void Coefficients_errors_and_tests_are_R_s(string name, string response)
    {
        var (reference, fit) = FitOf(name, response);
        Assert.Equal(Names(reference.At("aliased")), fit.DroppedColumns);
        AssertClose(reference.At("standard_errors"), fit.Coefficients.Select(c => c.StandardError), 1e-9, what: "se");
        AssertClose(reference.At("t"), fit.Coefficients.Select(c => c.T), 1e-9, what: "t");
        AssertClose(reference.At("p"), fit.Coefficients.Select(c => c.P), 1e-9, what: "p");
        foreach (var coefficient in fit.Coefficients)
            AssertClose(Number(reference.At("coefficients").GetProperty(coefficient.Name)), coefficient.Estimate, 1e-9);
        foreach (var (j, line) in reference.At("vcov").EnumerateArray().Index())
            AssertClose(line, fit.Covariance[j], 1e-9, 1e-12 * fit.Covariance[j].Max(Math.Abs), "vcov");
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_summary_is_R_s(string name, string response)
    {
        var (reference, fit) = FitOf(name, response);
        Assert.Equal(reference.At("n").GetInt32(), fit.RowCount);
        Assert.Equal(reference.At("df_residual").GetInt32(), fit.ResidualDegreesOfFreedom);
        AssertClose(Number(reference.At("sigma")), fit.Sigma, 1e-9, what: "sigma");
        AssertClose(Number(reference.At("r2")), fit.RSquared, 1e-9, what: "r2");
        AssertClose(Number(reference.At("adj_r2")), fit.AdjustedRSquared, 1e-9, what: "adjusted r2");
        AssertClose(Number(reference.At("rss")), fit.ResidualSumOfSquares, 1e-9, what: "rss");
        AssertClose(Number(reference.At("log_lik")), fit.LogLikelihood, 1e-9, what: "log-likelihood");
        AssertClose(Number(reference.At("aic")), fit.Aic, 1e-9, what: "aic");
        AssertClose(Number(reference.At("bic")), fit.Bic, 1e-9, what: "bic");
        AssertClose(
            reference.At("f"),
            [fit.Overall.F, fit.Overall.NumeratorDegreesOfFreedom, fit.Overall.DenominatorDegreesOfFreedom, fit.Overall.P],
            1e-9, what: "F");
    }

    [Theory, MemberData(nameof(Cases))]
    public void Every_row_s_diagnostics_are_R_s(string name, string response)
    {
        var (reference, fit) = FitOf(name, response);
        Assert.Equal(fit.Coefficients.Length, fit.ByRow.Leverage.Sum(), 1e-9);
        Check("fitted", fit.ByRow.Fitted);
        Check("residuals", fit.ByRow.Residuals);
        Check("leverage", fit.ByRow.Leverage);
        Check("cooks_distance", fit.ByRow.CooksDistance);
        Check("rstandard", fit.ByRow.StandardizedResiduals);
        Check("rstudent", fit.ByRow.StudentizedResiduals);
        Check("loo_residuals", fit.ByRow.LeaveOneOutResiduals);
        AssertClose(Number(reference.At("press")), fit.ByRow.Press, 1e-9, what: "press");

        // Tiny residuals are differences of large numbers, so they are held to the largest entry of the list.
        void Check(string quantity, IEnumerable<double> values) => AssertClose(
            reference.At(quantity), values, 1e-8, 1e-10 * values.Max(Math.Abs), quantity);
    }

    [Theory, MemberData(nameof(Cases))]
    public void Robust_errors_overlap_and_unequal_variance_are_R_s(string name, string response)
    {
        var (reference, fit) = FitOf(name, response);
        AssertClose(reference.At("hc1_se"), RobustCovariance.Hc1(fit).Select((line, j) => Math.Sqrt(line[j])), 1e-9, what: "HC1");
        AssertClose(reference.At("hc3_se"), RobustCovariance.Hc3(fit).Select((line, j) => Math.Sqrt(line[j])), 1e-9, what: "HC3");
        if (name == "06_weighted")
        {
            Assert.Throws<ArgumentException>(() => BreuschPagan.Studentized(fit));
            return;
        }
        AssertClose(reference.At("vif_per_design_column"), fit.VarianceInflation.Select(v => v.Factor), 1e-9, what: "VIF");
        BreuschPagan koenker = BreuschPagan.Studentized(fit), original = BreuschPagan.Original(fit);
        AssertClose(
            reference.At("breusch_pagan/koenker_studentized"),
            [koenker.Statistic, koenker.DegreesOfFreedom, koenker.P], 1e-9, what: "Koenker");
        AssertClose(
            reference.At("breusch_pagan/original"),
            [original.Statistic, original.DegreesOfFreedom, original.P], 1e-9, what: "Breusch-Pagan");
    }

    [Theory, MemberData(nameof(Cases))]
    public void Predictions_of_new_rows_and_their_intervals_are_R_s(string name, string response)
    {
        var (reference, fit) = FitOf(name, response);
        Regressor[] rows = ReferenceDesign.OfNewRows(reference);
        var at80 = LinearPrediction.Of(fit, rows, 0.80);
        var at95 = LinearPrediction.Of(fit, rows, 0.95);
        Check("fit", at95.Select(p => p.Fit));
        Check("se_fit", at95.Select(p => p.StandardError));
        Check("pi80_low", at80.Select(p => p.Range.Low));
        Check("pi80_high", at80.Select(p => p.Range.High));
        Check("pi95_low", at95.Select(p => p.Range.Low));
        Check("pi95_high", at95.Select(p => p.Range.High));
        Check("ci95_low", at95.Select(p => p.Confidence.Low));
        Check("ci95_high", at95.Select(p => p.Confidence.High));
        if (reference.Answer.TryGetProperty("duan_smearing_factor", out var smearing))
        {
            AssertClose(Number(smearing), Smearing.Factor(fit), 1e-9, what: "smearing");
            Check("price_smearing", at95.Select(p => Math.Exp(p.Fit) * Smearing.Factor(fit)));
        }

        void Check(string quantity, IEnumerable<double> values) =>
            AssertClose(reference.At("prediction").GetProperty(quantity), values, 1e-9, what: quantity);
    }

    [Theory, MemberData(nameof(Cases))]
    public void Without_refinement_the_QR_alone_gives_the_same(string name, string response)
    {
        var (_, refined) = FitOf(name, response);
        var (_, plain) = FitOf(name, response, new LeastSquaresOptions { Refine = false });
        Assert.Equal(refined.DroppedColumns.AsEnumerable(), plain.DroppedColumns);
        foreach (var (expected, actual) in refined.Coefficients.Zip(plain.Coefficients))
        {
            AssertClose(expected.Estimate, actual.Estimate, 1e-9);
            AssertClose(expected.StandardError, actual.StandardError, 1e-9);
        }
    }

    private static (ReferenceCase Reference, LinearFit Fit) FitOf(
        string name, string response, LeastSquaresOptions? options = null)
    {
        ReferenceCase reference = new($"ols/{name}");
        double[] y = ReferenceDesign
            .Build([response], reference.Numbers, reference.Text, [], reference.RowCount)[0].Values.ToArray();
        double[] weights = name == "06_weighted" ? reference.Numbers("w") : [];
        return (reference, LeastSquares.Fit(ReferenceDesign.OfInput(reference), y, weights, options));
    }
}
