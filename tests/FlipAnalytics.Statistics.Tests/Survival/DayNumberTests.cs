using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Columns far from zero for their spread, such as day numbers: against R's survreg (ReferenceData/aft/day-number.R),
/// and against the same model written so that nothing is far from zero.</summary>
public sealed class DayNumberTests
{
    private const double Origin = 738000;

    public static TheoryData<int, FailureDistribution> Cases()
    {
        var cases = new TheoryData<int, FailureDistribution>();
        foreach (FailureDistribution distribution in Enum.GetValues<FailureDistribution>())
        {
            cases.Add(5, distribution);
            cases.Add(30, distribution);
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void EstimatesAndTheirCovarianceAreThoseOfR(int days, FailureDistribution distribution)
    {
        JsonElement answer = Answer(days, distribution);
        AcceleratedFailureFit fit = Fit(Data(days), distribution);
        Assert.Empty(fit.DroppedColumns);
        double[] coefficients = answer.Numbers("coef");
        double[][] covariance = answer.Matrix("vcov");
        double[] errors = [.. covariance.Select((row, i) => Math.Sqrt(row[i]))];
        Assert.Equal(coefficients.Length, fit.Coefficients.Length);
        for (int j = 0; j < coefficients.Length; j++)
        {
            Assert.Equal(coefficients[j], fit.Coefficients[j].Estimate, 1e-8 * errors[j]);
            Assert.Equal(errors[j], fit.Coefficients[j].StandardError, 1e-8 * errors[j]);
        }

        Assert.Equal(Math.Log(answer.Number("scale")), fit.LogScale, 1e-8);
        Assert.Equal(answer.Number("loglik"), fit.LogLikelihood, 1e-9);
        Assert.Equal(covariance.Length, fit.CovarianceOrder.Length);
        for (int i = 0; i < covariance.Length; i++)
        {
            for (int j = 0; j < covariance.Length; j++)
                Assert.Equal(covariance[i][j], fit.Covariance[i][j], 1e-8 * errors[i] * errors[j]);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void PredictionsAreThoseOfR(int days, FailureDistribution distribution)
    {
        JsonElement answer = Answer(days, distribution);
        AcceleratedFailureFit fit = Fit(Data(days), distribution);
        FailurePrediction[] predictions =
            [.. new double[][] { [1, Origin, -1], [1, Origin + days, 0], [1, Origin + 2 * days, 2] }.Select(row => fit.Predict(row))];
        double[] locations = answer.Numbers("linear_predictor"), errors = answer.Numbers("linear_predictor_se");
        for (int row = 0; row < predictions.Length; row++)
        {
            Assert.Equal(locations[row], predictions[row].Location, 1e-8);
            Assert.Equal(errors[row], predictions[row].StandardError, 1e-8);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void TheFitIsThatOfTheDaysFromTheirOriginCarriedBackByAlgebra(int days, FailureDistribution distribution)
    {
        AcceleratedFailureFit numbers = Fit(Data(days), distribution), centred = Fit(From(Data(days), Origin), distribution);
        double intercept = centred.Coefficients[0].Estimate - Origin * centred.Coefficients[1].Estimate;
        Assert.Equal(intercept, numbers.Coefficients[0].Estimate, 1e-12 * Math.Abs(intercept));
        Assert.Equal(centred.Coefficients[1].Estimate, numbers.Coefficients[1].Estimate, 1e-12);
        Assert.Equal(centred.LogLikelihood, numbers.LogLikelihood, 1e-11);
        // Var(b₀ − 738000 b₁) and Cov(b₀ − 738000 b₁, b₁).
        double variance = centred.Covariance[0][0] - 2 * Origin * centred.Covariance[0][1] + Origin * Origin * centred.Covariance[1][1];
        Assert.Equal(variance, numbers.Covariance[0][0], 1e-11 * variance);
        double covariance = centred.Covariance[0][1] - Origin * centred.Covariance[1][1];
        Assert.Equal(covariance, numbers.Covariance[0][1], 1e-11 * Math.Abs(covariance));
    }

    /// <summary>A column of twos is none of ones, so nothing is centred beside it: its coefficient is half the intercept, and so
    /// are the mean and the standard deviation of its prior. The days are near enough to zero that both keep their digits.</summary>
    [Theory]
    [InlineData(FailureDistribution.Weibull)]
    [InlineData(FailureDistribution.Lognormal)]
    [InlineData(FailureDistribution.LogLogistic)]
    [InlineData(FailureDistribution.Exponential)]
    public void APriorOfTheInterceptSpeaksOfTheInterceptAsGiven(FailureDistribution distribution)
    {
        AcceleratedFailureData ones = From(Data(30), Origin - 3000) with
        {
            Groups = [new GroupColumn("colour", ["white", "navy", "sage"], [.. Enumerable.Range(0, 60).Select(row => row % 3)])],
        };
        AcceleratedFailureData twos = ones with { X = [.. ones.X.Select(row => new[] { 2, row[1], row[2] })] };
        var options = new AcceleratedFailureOptions
        {
            Distribution = distribution,
            CoefficientPriors = [new NormalPrior(-60, 5), new NormalPrior(0.1, 0.2), null],
            LogGroupVariancePriors = [new NormalPrior(Math.Log(0.1), 1)],
        };
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(ones, options);
        AcceleratedFailureFit halved = AcceleratedFailure.Fit(
            twos, options with { CoefficientPriors = [new NormalPrior(-30, 2.5), new NormalPrior(0.1, 0.2), null] });
        Assert.Equal(2 * halved.Coefficients[0].Estimate, fit.Coefficients[0].Estimate, 1e-7);
        Assert.Equal(2 * halved.Coefficients[0].StandardError, fit.Coefficients[0].StandardError, 1e-7);
        Assert.Equal(halved.Coefficients[1].Estimate, fit.Coefficients[1].Estimate, 1e-10);
        Assert.Equal(halved.LogScale, fit.LogScale, 1e-8);
        Assert.Equal(halved.Groups[0].Variance, fit.Groups[0].Variance, 1e-6);
        Assert.Equal(halved.Groups[0].Levels[1].Effect, fit.Groups[0].Levels[1].Effect, 1e-7);
        FailurePrediction expected = halved.Predict([2, 3010, 1], [GroupLevel.Known(2)]);
        FailurePrediction actual = fit.Predict([1, 3010, 1], [GroupLevel.Known(2)]);
        Assert.Equal(expected.Location, actual.Location, 1e-7);
        Assert.Equal(expected.VarianceOfLocation, actual.VarianceOfLocation, 1e-7);
        Assert.Equal(expected.Covariance, actual.Covariance, 1e-7);
    }

    [Fact]
    public void ADayNumberThatIsTheSameInEveryRowIsDropped()
    {
        AcceleratedFailureData data = Data(5);
        AcceleratedFailureFit fit = Fit(
            data with { X = [.. data.X.Select(row => new[] { 1, Origin, row[2] })] }, FailureDistribution.Weibull);
        Assert.Equal<string>(["day"], fit.DroppedColumns.ToArray());
    }

    /// <summary>Two dummies of all rows take up the intercept, which is dropped, so the days cannot be centred: the fit is that with
    /// the intercept and one dummy less.</summary>
    [Fact]
    public void WhereTheInterceptIsDroppedADayNumberIsFittedAsItIs()
    {
        AcceleratedFailureData data = From(Data(30), Origin - 3000);
        AcceleratedFailureFit dummies = Fit(
            data with
            {
                CoefficientNames = ["small", "large", "(Intercept)", "day"],
                X = [.. data.X.Select(row => new[] { row[2] < 0 ? 1 : 0, row[2] < 0 ? 0 : 1, 1, row[1] })],
            }, FailureDistribution.Lognormal);
        AcceleratedFailureFit plain = Fit(
            data with { X = [.. data.X.Select(row => new[] { 1, row[1], row[2] < 0 ? 0 : 1 })] }, FailureDistribution.Lognormal);
        Assert.Equal<string>(["(Intercept)"], dummies.DroppedColumns.ToArray());
        Assert.Equal(plain.Coefficients[1].Estimate, dummies.Coefficients[2].Estimate, 1e-9);
        Assert.Equal(plain.Coefficients[0].Estimate, dummies.Coefficients[0].Estimate, 1e-5);
        Assert.Equal(plain.LogLikelihood, dummies.LogLikelihood, 1e-9);
    }

    private static AcceleratedFailureData Data(int days) => AftReference.Episodes($"day-number-{days}");

    private static AcceleratedFailureData From(AcceleratedFailureData data, double origin) =>
        data with { X = [.. data.X.Select(row => new[] { row[0], row[1] - origin, row[2] })] };

    private static AcceleratedFailureFit Fit(AcceleratedFailureData data, FailureDistribution distribution) =>
        AcceleratedFailure.Fit(data, new AcceleratedFailureOptions { Distribution = distribution });

    private static JsonElement Answer(int days, FailureDistribution distribution) =>
        AftReference.Answers("day-number.json").GetProperty($"{days}-{distribution.ToString().ToLowerInvariant()}");
}
