namespace FlipAnalytics.Statistics.Tests;

public sealed class CalibrationExamples : ReadmeExample
{
    [Fact]
    public void Ranges_that_hold_what_they_say()
    {
        // Example: Ranges that hold what they say
        double[] leftOutPredictions = [208, 212, 205, 210, 209, 207, 211, 206, 213, 208, 210];
        double[] absoluteResiduals = [12, 25, 8, 31, 4, 17, 22, 9, 40, 14, 19];
        Limits range = JackknifePlus.Range(leftOutPredictions, absoluteResiduals, level: 0.8);
        Console.WriteLine($"{range.Low} to {range.High}, from the rank {ConformalRank.Upper(11, 0.8)} of 11");

        Limits[] ranges = [new(90, 140), new(100, 180), new(60, 95), new(200, 260)];
        double[] came = [120, 185, 80, 230];
        Coverage coverage = Coverage.Of(ranges, came);
        Limits truth = coverage.Uncertainty();
        Console.WriteLine($"{coverage.Share:P0} held; the true share may be {truth.Low:F2} to {truth.High:F2}");
        Console.WriteLine($"Interval score {ranges.Zip(came, (r, y) => ScoringRules.Interval(r, 0.8, y)).Average():F2}");
        Console.WriteLine($"Pinball loss of a 90 % quantile of 140 {ScoringRules.Pinball(140, 0.9, 120):F2}");
        Console.WriteLine($"CRPS of N(110, 20²) {ScoringRules.NormalContinuousRanked(110, 20, 120):F3}");
        Console.WriteLine($"120 fell at {ProbabilityIntegralTransform.Normal(110, 20, 120):F3} of that forecast");
        // End of example
        ProveSection("Ranges that hold what they say", nameof(CalibrationExamples));
    }

    [Fact]
    public void Shares_rates_and_many_tests()
    {
        // Example: Shares, rates and many tests
        Limits share = Proportion.Wilson(7, 9), exact = Proportion.Exact(7, 9);
        Console.WriteLine($"7 of 9: {share.Low:F3} to {share.High:F3} (Wilson), {exact.Low:F3} to {exact.High:F3} (exact)");
        Limits rate = Rate.Exact(12, exposure: 26);
        Console.WriteLine($"12 sales in 26 weeks: {rate.Low:F3} to {rate.High:F3} a week");
        RateComparison two = Rate.Compare(12, 26, 5, 26);
        Console.WriteLine($"against 5 in 26: {two.Ratio:F1} times, p = {two.P:F3}");
        double[] p = [0.01, 0.04, 0.03];
        Console.WriteLine($"Holm {string.Join(" ", MultipleTests.Holm(p).Select(value => $"{value:F2}"))}");
        Console.WriteLine($"Benjamini-Hochberg {string.Join(" ", MultipleTests.BenjaminiHochberg(p).Select(value => $"{value:F2}"))}");
        // End of example
        ProveSection("Shares, rates and many tests", nameof(CalibrationExamples));
    }

    [Fact]
    public void Normal_nodes()
    {
        // Example: Normal nodes
        NormalNodes nodes = NormalNodes.Create(dimensions: 2, count: 1024);
        double mean = nodes.Mean(z => Math.Exp(5 + 0.2 * z[0] + 0.1 * z[1]));
        Console.WriteLine($"Mean of a lognormal price {mean:F2}, in closed form {Math.Exp(5 + (0.04 + 0.01) / 2):F2}");
        // End of example
        ProveSection("Normal nodes", nameof(CalibrationExamples));
    }

    [Fact]
    public void Bootstrap_limits()
    {
        // Example: Bootstrap
        double[] days = [3, 5, 6, 8, 9, 11, 12, 14, 17, 21, 24, 30, 38, 51, 77, 120];
        static double Median(ReadOnlySpan<double> values)
        {
            double[] sorted = values.ToArray();
            Array.Sort(sorted);
            return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
        }

        BootstrapSample median = Bootstrap.Resample(days, Median, new() { Replicates = 1999, Seed = 1 });
        Limits limits = median.Percentile();
        Console.WriteLine($"Median {median.Estimate} ± {median.StandardError:F2}, 95 % limits {limits.Low} to {limits.High}");

        BootstrapSample mean = Bootstrap.Resample(days, values => values.ToArray().Average());
        Limits bca = mean.Bca();
        Console.WriteLine($"Mean {mean.Estimate}, BCa limits {bca.Low:F1} to {bca.High:F1}");
        // End of example
        ProveSection("Bootstrap", nameof(CalibrationExamples));
    }

    [Fact]
    public void Color()
    {
        // Example: Color
        LabColour sage = LabColour.FromHex("#9CAF88"), navy = LabColour.FromHex("#1F3A5F");
        Console.WriteLine($"L* {sage.Lightness:F2}, chroma {sage.Chroma:F2}, hue {sage.Hue:F1}°");
        Console.WriteLine($"Difference to navy {ColourDifference.Ciede2000(sage, navy):F2}");
        Console.WriteLine($"Mean of the hues 350° and 30°: {MeanHue.Of([350, 30]).Degrees:F1}°");
        // End of example
        ProveSection("Color", nameof(CalibrationExamples));
    }
}
