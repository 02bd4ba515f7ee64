using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>The plain fits of a log against R: see ReferenceData/plain-fits/README.md.</summary>
public class PlainFitsAgainstRTests
{
    private const double Relative = 1e-6;

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "ReferenceData", "plain-fits");

    private static readonly SalesLog Log =
        SalesLogReader.Read(Path.Combine(Folder, "log")).Log!.AsOf(DemoLog.LastDay);

    private static readonly JsonElement Answers =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "answers.json"))).RootElement;

    [Theory]
    [InlineData("price", ModelName.Price)]
    [InlineData("hours", ModelName.Hours)]
    [InlineData("supplies", ModelName.Supplies)]
    public void Mixed_models_agree_with_lme4(string name, ModelName model)
    {
        FitReport fit = ModelFitting.Fit(Log, model, Estimator.Mixed, plain: true);
        JsonElement expected = Answers.GetProperty(name);
        AssertDesign(name, fit.Design!);
        AssertTerms(expected, fit);
        AssertClose(expected.GetProperty("residual_variance").GetDouble(), fit.ResidualVariance!.Value, "residual variance");
        Assert.Equal("REML", fit.Criterion);
        foreach (FitGroup group in fit.Random)
        {
            double variance = expected.GetProperty("variances").GetProperty(group.Group).GetDouble();
            Assert.Equal(variance, group.Variance, Math.Max(Relative * variance, 1e-9));
            double small = Relative * Math.Sqrt(fit.ResidualVariance.Value);
            foreach (FitLevel level in group.Levels)
            {
                JsonElement both = expected.GetProperty("levels").GetProperty(group.Group).GetProperty(level.Level);
                Assert.Equal(both[0].GetDouble(), level.Effect, small);
                Assert.Equal(both[1].GetDouble(), level.StandardError, small);
            }
        }
    }

    [Theory]
    [InlineData("price-ols", ModelName.Price)]
    [InlineData("hours-ols", ModelName.Hours)]
    [InlineData("supplies-ols", ModelName.Supplies)]
    public void Least_squares_agrees_with_lm(string name, ModelName model)
    {
        FitReport fit = ModelFitting.Fit(Log, model, Estimator.Ols, plain: true);
        JsonElement expected = Answers.GetProperty(name);
        AssertDesign(name, fit.Design!);
        AssertTerms(expected, fit);
        AssertClose(expected.GetProperty("residual_variance").GetDouble(), fit.ResidualVariance!.Value, "residual variance");
        AssertClose(expected.GetProperty("aic").GetDouble(), fit.Diagnostics!.Aic, "AIC");
        AssertClose(expected.GetProperty("bic").GetDouble(), fit.Diagnostics.Bic, "BIC");
        AssertClose(
            expected.GetProperty("largest_cooks_distance").GetDouble(), fit.Diagnostics.MostInfluential[0].CooksDistance,
            "Cook's distance");
    }

    [Theory]
    [InlineData("days", false)]
    [InlineData("days-episodes", true)]
    public void Days_agree_with_survreg_and_with_the_likelihood_written_out(string name, bool withPriceChanges)
    {
        SalesLog log = withPriceChanges ? Log : Log with { AskingPrices = [] };
        FitReport fit = ModelFitting.Fit(log, ModelName.Days, Estimator.Mixed, plain: true);
        JsonElement expected = Answers.GetProperty(name);
        AssertDesign(name, fit.Design!);
        Assert.Equal(withPriceChanges, fit.Design!.Rows.Any(row => row[0] != "0"));
        AssertTerms(expected, fit);
        AssertClose(expected.GetProperty("scale").GetDouble(), fit.Scale!.Value, "scale");
        AssertClose(
            expected.GetProperty("log_scale_standard_error").GetDouble(), fit.LogScaleStandardError!.Value, "its standard error");
    }

    private static void AssertTerms(JsonElement expected, FitReport fit)
    {
        Assert.Equal(expected.GetProperty("n").GetInt32(), fit.N);
        Assert.Equal(
            expected.GetProperty("estimates").EnumerateObject().Select(term => term.Name), fit.Terms.Select(term => term.Name));
        foreach (FitTerm term in fit.Terms)
        {
            AssertClose(expected.GetProperty("estimates").GetProperty(term.Name).GetDouble(), term.Estimate, term.Name);
            AssertClose(
                expected.GetProperty("standard_errors").GetProperty(term.Name).GetDouble(), term.StandardError, term.Name);
        }

        AssertClose(expected.GetProperty("log_likelihood").GetDouble(), fit.LogLikelihood, "log-likelihood");
    }

    // The logarithm's last digit may differ from one machine to another.
    private static void AssertDesign(string name, DesignTable design)
    {
        ImmutableArray<string[]> lines =
            [.. File.ReadLines(Path.Combine(Folder, name + ".csv")).Select(line => line.Split(','))];
        Assert.Equal(lines[0], design.Columns);
        Assert.Equal(lines.Length - 1, design.Rows.Length);
        foreach (var (expected, row) in lines.Skip(1).Zip(design.Rows))
        {
            foreach (var (cell, value, column) in expected.Zip(row, design.Columns))
            {
                if (column.StartsWith("group:", StringComparison.Ordinal))
                    Assert.Equal(cell, value);
                else
                    Assert.Equal(Number(cell), Number(value), 1e-9);
            }
        }
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    private static void AssertClose(double expected, double actual, string what) =>
        Assert.True(Math.Abs(actual - expected) <= Relative * Math.Abs(expected), $"{what}: R {expected:R}, here {actual:R}");
}
