using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Fits without groups and priors against R's survreg and a written-out likelihood (ReferenceData/aft).</summary>
public sealed class AcceleratedFailureReferenceTests
{
    private static readonly double[] Shares = [0.1, 0.5, 0.9];

    public static TheoryData<string, string> Cases()
    {
        var cases = new TheoryData<string, string>();
        foreach (JsonProperty data in AftReference.Answers("answers.json").EnumerateObject().Skip(1))
        {
            foreach (JsonProperty distribution in data.Value.EnumerateObject())
            {
                cases.Add(data.Name, distribution.Name);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void EstimatesVariancesAndLikelihoodAreThoseOfR(string name, string distribution)
    {
        JsonElement answer = AftReference.Answers("answers.json").GetProperty(name).GetProperty(distribution);
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(AftReference.Episodes(name), Options(distribution));
        CheckEstimates(answer, fit, answer.Number("log_scale"));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void PredictedLocationsAndQuantilesOfNewRowsAreThoseOfR(string name, string distribution)
    {
        JsonElement answer = AftReference.Answers("answers.json").GetProperty(name).GetProperty(distribution);
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(AftReference.Episodes(name), Options(distribution));
        double[][] rows = AftReference.NewRows(name);
        CheckQuantiles(answer, fit, rows);
        if (answer.TryGetProperty("linear_predictor", out _))
        {
            FailurePrediction[] predictions = [.. rows.Select(row => fit.Predict(row))];
            AssertClose(answer.Numbers("linear_predictor"), [.. predictions.Select(p => p.Location)], 1e-6);
            AssertClose(answer.Numbers("linear_predictor_se"), [.. predictions.Select(p => p.StandardError)], 1e-6);
        }
    }

    [Theory]
    [InlineData("weibull", false)]
    [InlineData("weibull", true)]
    [InlineData("lognormal", false)]
    [InlineData("lognormal", true)]
    [InlineData("loglogistic", false)]
    [InlineData("loglogistic", true)]
    [InlineData("exponential", false)]
    [InlineData("exponential", true)]
    public void LeftRightAndIntervalCensoredSpellsGiveTheAnswersOfR(string distribution, bool weighted)
    {
        JsonElement answer = AftReference.Answers("interval.json").GetProperty(weighted ? distribution + "_weighted" : distribution);
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(AftReference.Intervals(weighted), Options(distribution));
        CheckEstimates(answer, fit, Math.Log(answer.Number("scale")));
        CheckQuantiles(answer, fit, [[1, -1, 1], [1, 0, 0], [1, 2, 1]]);
    }

    private static void CheckEstimates(JsonElement answer, AcceleratedFailureFit fit, double logScale)
    {
        double[] coefficients = answer.Numbers("coef");
        double[][] covariance = answer.Matrix("vcov");
        for (int j = 0; j < coefficients.Length; j++)
        {
            Assert.Equal(coefficients[j], fit.Coefficients[j].Estimate, 1e-6);
            Assert.Equal(Math.Sqrt(covariance[j][j]), fit.Coefficients[j].StandardError, 1e-6 * Math.Sqrt(covariance[j][j]));
        }

        Assert.Equal(logScale, fit.LogScale, 1e-6);
        Assert.Equal(answer.Number("loglik"), fit.LogLikelihood, 1e-7);
        Assert.Equal(covariance.Length, fit.CovarianceOrder.Length);
        for (int i = 0; i < covariance.Length; i++)
        {
            // A covariance that is zero but for rounding has no relative error: measured against its variances.
            for (int j = 0; j < covariance.Length; j++)
            {
                Assert.Equal(covariance[i][j], fit.Covariance[i][j], 1e-6 * Math.Sqrt(covariance[i][i] * covariance[j][j]));
            }
        }
    }

    private static void CheckQuantiles(JsonElement answer, AcceleratedFailureFit fit, double[][] rows)
    {
        double[][] quantiles = answer.Matrix("quantiles");
        for (int row = 0; row < rows.Length; row++)
        {
            FailurePrediction prediction = fit.Predict(rows[row]);
            QuantileEstimate[] estimates = [.. Shares.Select(p => fit.Quantile(p, prediction))];
            AssertClose(quantiles[row], [.. estimates.Select(q => q.Value)], 1e-6);
            if (answer.TryGetProperty("quantile_se", out _))
            {
                AssertClose(answer.Matrix("quantile_se")[row], [.. estimates.Select(q => q.StandardError)], 1e-6);
            }
        }
    }

    private static void AssertClose(double[] expected, double[] actual, double relative)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], actual[i], relative * Math.Abs(expected[i]));
        }
    }

    private static AcceleratedFailureOptions Options(string distribution) =>
        new() { Distribution = Enum.Parse<FailureDistribution>(distribution, ignoreCase: true) };
}
