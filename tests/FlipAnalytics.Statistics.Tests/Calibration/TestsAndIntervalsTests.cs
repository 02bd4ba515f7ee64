using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against R's p.adjust, prop.test, binom.test and poisson.test.</summary>
public class TestsAndIntervalsTests
{
    private readonly ReferenceCase reference = new("testing/01_multiple_and_intervals");

    [Theory]
    [InlineData("a")]
    [InlineData("ties")]
    [InlineData("tiny")]
    [InlineData("one")]
    public void Adjusted_p_values_are_R_s(string list)
    {
        double[] p = Numbers(reference.At($"p_values/{list}"));
        AssertClose(reference.At($"holm/{list}"), MultipleTests.Holm(p), 1e-9, what: "Holm");
        AssertClose(reference.At($"bonferroni/{list}"), MultipleTests.Bonferroni(p), 1e-9, what: "Bonferroni");
        AssertClose(reference.At($"benjamini_hochberg/{list}"), MultipleTests.BenjaminiHochberg(p), 1e-9, what: "BH");
    }

    [Fact]
    public void Intervals_of_a_proportion_are_R_s()
    {
        double[] successes = Numbers(reference.At("binomial/x")), trials = Numbers(reference.At("binomial/n"));
        (int, int)[] seen = [.. successes.Zip(trials, (x, n) => ((int)x, (int)n))];
        Check("wilson95", seen.Select(of => Proportion.Wilson(of.Item1, of.Item2)));
        Check("wilson80", seen.Select(of => Proportion.Wilson(of.Item1, of.Item2, 0.8)));
        Check("clopper95", seen.Select(of => Proportion.Exact(of.Item1, of.Item2)));

        void Check(string name, IEnumerable<Limits> limits)
        {
            AssertClose(reference.At($"binomial/{name}_low"), limits.Select(of => of.Low), 1e-9, 1e-12, name);
            AssertClose(reference.At($"binomial/{name}_high"), limits.Select(of => of.High), 1e-9, 1e-12, name);
        }
    }

    [Fact]
    public void Exact_intervals_of_a_rate_are_R_s()
    {
        double[] counts = Numbers(reference.At("poisson/count")), exposures = Numbers(reference.At("poisson/exposure"));
        Limits[] limits = [.. counts.Zip(exposures, (count, exposure) => Rate.Exact((int)count, exposure))];
        AssertClose(reference.At("poisson/exact95_low"), limits.Select(of => of.Low), 1e-9, what: "low");
        AssertClose(reference.At("poisson/exact95_high"), limits.Select(of => of.High), 1e-9, what: "high");
    }

    [Fact]
    public void Two_rates_compare_as_in_R()
    {
        double[] x1 = Given("x1"), t1 = Given("t1"), x2 = Given("x2"), t2 = Given("t2");
        foreach (var (i, expected) in reference.At("two_rates/exact_conditional").EnumerateArray().Index())
        {
            RateComparison found = Rate.Compare((int)x1[i], t1[i], (int)x2[i], t2[i]);
            AssertClose(expected, [found.Ratio, found.Limits.Low, found.Limits.High, found.P], 1e-9, what: $"pair {i}");
        }

        double[] Given(string name) => Numbers(reference.At($"two_rates/given/{name}"));
    }

    [Fact]
    public void More_successes_than_trials_are_refused()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Proportion.Wilson(11, 10));
        Assert.Contains("from 0 to the 10 trials", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => MultipleTests.Holm([0.1, 1.2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rate.Exact(3, 0));
    }
}
