namespace FlipAnalytics.Statistics.Tests;

public sealed class SurvivalExamples : ReadmeExample
{
    [Fact]
    public void Survival_curves()
    {
        // Example: Survival curves
        SurvivalTime[] pieces =
        [
            new(5, true), new(8, true), new(8, false), new(12, true), new(12, true),
            new(20, false), new(25, true), new(40, true), new(60, false), new(75, true),
        ];
        KaplanMeier curve = KaplanMeier.Estimate(pieces);
        foreach (SurvivalStep step in curve.Steps.Where(step => step.Ended > 0))
            Console.WriteLine($"day {step.Time,2}: {step.AtRisk,2} at risk, {step.Survival:F3} still for sale");
        SurvivalQuantile median = curve.Median();
        Console.WriteLine($"Median {median.Time} days, 95 % limits {median.Low} to {median.High?.ToString() ?? "not yet known"}");
        Console.WriteLine($"Mean of the first 60 days {curve.RestrictedMean(60).Mean:F2}");
        Console.WriteLine($"Cumulative hazard at day 12 {NelsonAalen.Estimate(pieces)[2].CumulativeHazard:F4}");

        string[] colors = ["sage", "sage", "navy", "sage", "navy", "sage", "navy", "sage", "navy", "navy"];
        LogRank test = LogRank.Test(pieces, colors);
        Console.WriteLine($"Same curve for both colors? χ² {test.ChiSquared:F3}, p = {test.P:F2}");
        // End of example
        ProveSection("Survival curves", nameof(SurvivalExamples));
    }

    [Fact]
    public void Accelerated_failure_times()
    {
        // Example: Accelerated failure times
        double[] logRatio = [0.1, -0.1, 0.3, 0.0, 0.2, -0.2, 0.1, 0.4, 0.0, 0.2];
        double[] days = [14, 6, 60, 9, 31, 4, 20, 75, 12, 25];
        bool[] sold = [true, true, false, true, true, true, true, false, true, true];

        AcceleratedFailureData data = new(
            ["(Intercept)", "log of asking over expected price"],
            [.. logRatio.Select(x => new[] { 1, x })],
            [.. days.Select((day, i) => sold[i] ? Spell.Ended(day) : Spell.Running(day))],
            Groups: [], Weights: null);
        FailureDistributionComparison laws = FailureDistributionComparison.Of(data);
        foreach (RankedFailureDistribution law in laws.Ranked)
            Console.WriteLine($"{law.Fit.Distribution,-11} AIC +{law.AicDifference:F2}, weight {law.Weight:F2}");

        AcceleratedFailureFit fit = laws.Best;
        FailureTimeCoefficient ratio = fit.Coefficients[1];
        Console.WriteLine($"Asking 10 % more multiplies days by {Math.Exp(ratio.Estimate * Math.Log(1.1)):F2}");
        QuantileEstimate half = fit.Quantile(0.5, fit.Predict([1, 0.1]));
        Console.WriteLine($"Half are sold within {half.Value:F1} ± {half.StandardError:F1} days");
        // End of example
        ProveSection("Accelerated failure times", nameof(SurvivalExamples));
    }

    [Fact]
    public void Cox_regression()
    {
        // Example: Cox regression
        SurvivalTime[] times =
        [
            new(5, true), new(8, true), new(8, false), new(12, true), new(12, true),
            new(20, false), new(25, true), new(40, true), new(60, false), new(75, true),
        ];
        Regressor painted = new("painted", new double[] { 1, 1, 0, 1, 0, 1, 0, 1, 0, 0 });

        CoxFit fit = CoxRegression.Fit([painted], times);
        CoxCoefficient b = fit["painted"];
        Limits limits = b.HazardRatioLimits();
        Console.WriteLine($"Painted pieces sell at {b.HazardRatio:F2} times the rate, {limits.Low:F2} to {limits.High:F2}");
        Console.WriteLine($"log L {fit.LogLikelihoodNull:F4} -> {fit.LogLikelihood:F4}, p = {fit.LikelihoodRatio.P:F3}");
        Console.WriteLine($"Concordance {fit.Concordance.Value:F3} ± {fit.Concordance.StandardError:F3}");
        Console.WriteLine($"Still for sale after 30 days: {fit.Survival([1], 30):F2} painted, {fit.Survival([0], 30):F2} plain");
        Console.WriteLine($"Does the ratio change with time? p = {ProportionalHazardsTest.Of(fit).Global.P:F2}");
        // End of example
        ProveSection("Cox regression", nameof(SurvivalExamples));
    }
}
