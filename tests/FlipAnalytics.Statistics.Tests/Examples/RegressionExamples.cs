namespace FlipAnalytics.Statistics.Tests;

public sealed class RegressionExamples : ReadmeExample
{
    [Fact]
    public void Least_squares()
    {
        // Example: Least squares
        double[] size = [0.4, 0.9, 0.5, 1.4, 0.7, 1.1, 0.6, 1.8];
        double[] hours = [3, 6, 5, 8, 3, 9, 4, 10];
        double[] price = [120, 210, 150, 310, 160, 280, 140, 420];

        LinearFit fit = LeastSquares.Fit(
            [
                Regressor.Intercept(price.Length),
                new("log size", size.Select(x => Math.Log(x)).ToArray()),
                new("hours", hours),
            ],
            price.Select(x => Math.Log(x)).ToArray());
        foreach (Coefficient b in fit.Coefficients)
            Console.WriteLine($"{b.Name,-11} {b.Estimate,7:F4} ± {b.StandardError:F4}");
        Console.WriteLine($"R² {fit.RSquared:F3}, condition {fit.ConditionNumber:F1}");
        Console.WriteLine($"HC3 error of log size {Math.Sqrt(RobustCovariance.Hc3(fit)[1][1]):F4}");
        Console.WriteLine($"Equal scatter? p = {BreuschPagan.Studentized(fit).P:F2}");
        Console.WriteLine($"Largest Cook's distance {fit.ByRow.CooksDistance.Max():F2}");

        LinearPrediction next = LinearPrediction.Of(fit, [1, Math.Log(1.0), 7], level: 0.8);
        Console.WriteLine($"Mean {Math.Exp(next.Fit) * Smearing.Factor(fit):F0}");
        Console.WriteLine($"80 % range {Math.Exp(next.Range.Low):F0} to {Math.Exp(next.Range.High):F0}");
        // End of example
        ProveSection("Least squares", nameof(RegressionExamples));
    }

    [Fact]
    public void Polynomials_and_running_totals()
    {
        // Example: Polynomials and running totals
        double[] day = [1, 2, 3, 4, 5, 6, 7];
        double[] views = [52, 41, 33, 28, 24, 23, 23];
        LinearFit curve = Polynomial.Fit(day, views, degree: 2);
        Console.WriteLine(string.Join(", ", curve.Coefficients.Select(b => $"{b.Name} {b.Estimate:F3}")));

        CrossProducts totals = new(["day"]);
        totals.Add([day.AsMemory(0, 4)], views.AsMemory(0, 4));
        totals.Add([day.AsMemory(4)], views.AsMemory(4));
        LinearFit line = totals.Fit();
        Console.WriteLine($"{line.RowCount} rows, slope {line["day"].Estimate:F3}");
        // End of example
        ProveSection("Polynomials and running totals", nameof(RegressionExamples));
    }

    [Fact]
    public void Linear_mixed_models()
    {
        // Example: Linear mixed models
        RandomTerm color = RandomTerm.Exchangeable("color", ["navy", "sage", "white"]);
        int[] colorOf = [0, 0, 0, 0, 1, 2, 2, 2, 2, 2];
        double[] logSize = [0.1, -0.3, 0.4, 0.0, 0.2, -0.1, 0.3, -0.4, 0.1, 0.5];
        double[] logPrice = [5.4, 5.1, 5.6, 5.3, 5.0, 4.9, 5.2, 4.7, 5.1, 5.3];

        MixedModelData data = MixedModelData.From(
            ["(Intercept)", "log size"], [.. logSize.Select(x => new[] { 1, x })], [color], [colorOf], logPrice);
        MixedModelFit fit = MixedModel.Fit(data);
        foreach (MixedCoefficient b in fit.Coefficients)
            Console.WriteLine($"{b.Name,-11} {b.Estimate,6:F3} ± {b.StandardError:F3}");
        foreach (RandomLevelEstimate level in fit.Terms[0].Levels)
            Console.WriteLine($"{level.Level,-11} {level.Effect,6:F3}");
        Console.WriteLine($"Variance of colors {fit.Terms[0].Variance:F4}, of the rest {fit.ResidualVariance:F4}");

        MixedPrediction seen = fit.Predict([1, 0.2], [LevelRef.Known(1)]);
        MixedPrediction unseen = fit.Predict([1, 0.2], [LevelRef.Unseen]);
        Console.WriteLine($"Sage {seen.Mean:F3} ± {Math.Sqrt(seen.VarianceOfObservation):F3}");
        Console.WriteLine($"A new color {unseen.Mean:F3} ± {Math.Sqrt(unseen.VarianceOfObservation):F3}");
        // End of example
        ProveSection("Linear mixed models", nameof(RegressionExamples));
    }
}
