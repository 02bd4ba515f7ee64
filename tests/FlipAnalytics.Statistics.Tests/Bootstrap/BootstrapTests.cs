using System.Globalization;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against R's package boot (ReferenceData/bootstrap), against formulas, and by its laws.</summary>
public sealed class BootstrapTests
{
    private static readonly double[] Days = [.. Lines("days.csv").Select(cells => cells[0])];

    [Fact]
    public void Percentile_and_bca_limits_are_those_of_R_s_boot()
    {
        BootstrapSample sample = Bootstrap.Resample(Days, Mean, new() { Replicates = 999, Seed = 7 });
        double[] replicates = [.. Lines("replicates.csv").Select(cells => cells[0])];
        Assert.Equal(replicates, sample.Replicates);
        foreach (double[] limits in Lines("limits.csv"))
        {
            (double level, Limits percentile, Limits bca) = (limits[0], sample.Percentile(limits[0]), sample.Bca(limits[0]));
            ReferenceCase.AssertClose(limits[1], percentile.Low, 1e-9, what: $"{level} low");
            ReferenceCase.AssertClose(limits[2], percentile.High, 1e-9, what: $"{level} high");
            ReferenceCase.AssertClose(limits[3], bca.Low, 1e-9, what: $"{level} BCa low");
            ReferenceCase.AssertClose(limits[4], bca.High, 1e-9, what: $"{level} BCa high");
        }
    }

    [Fact]
    public void One_thread_and_eight_give_the_same_answer()
    {
        BootstrapSample one = Bootstrap.Resample(Days, Mean, new() { DegreeOfParallelism = 1, Replicates = 500 });
        BootstrapSample eight = Bootstrap.Resample(Days, Mean, new() { DegreeOfParallelism = 8, Replicates = 500 });
        Assert.Equal<double>(one.Replicates, eight.Replicates);
        Assert.Equal((one.Percentile(), one.Bca()), (eight.Percentile(), eight.Bca()));
    }

    [Fact]
    public void More_replicates_keep_the_first_ones_and_another_seed_does_not()
    {
        BootstrapSample few = Bootstrap.Resample(Days, Mean, new() { Replicates = 50 });
        Assert.Equal<double>(few.Replicates, Bootstrap.Resample(Days, Mean, new() { Replicates = 80 }).Replicates.Take(50));
        Assert.NotEqual<double>(few.Replicates, Bootstrap.Resample(Days, Mean, new() { Replicates = 50, Seed = 2 }).Replicates);
    }

    /// <summary>The variance of a resampled mean is (n − 1)/n times the usual one, exactly; 20,000 replicates tell it to
    /// about half a percent.</summary>
    [Fact]
    public void The_error_of_a_mean_is_the_textbook_s()
    {
        double mean = Days.Average();
        double expected = Math.Sqrt(Days.Sum(day => (day - mean) * (day - mean))) / Days.Length;
        BootstrapSample sample = Bootstrap.Resample(Days, Mean, new() { Replicates = 20_000 });
        ReferenceCase.AssertClose(expected, sample.StandardError, 0.015);
        Assert.InRange(sample.Bias, -0.2, 0.2);
    }

    /// <summary>BCa limits go along with any rising transformation; percentiles do too.</summary>
    [Fact]
    public void Limits_of_the_log_are_the_logs_of_the_limits()
    {
        // A whole rank, (1999 + 1) × 0.025 = 50, so that no interpolation comes between.
        BootstrapOptions options = new() { Replicates = 1999 };
        Limits days = Bootstrap.Resample(Days, Mean, options).Percentile();
        Limits logs = Bootstrap.Resample(Days, drawn => Math.Log(Mean(drawn)), options).Percentile();
        Assert.Equal(Math.Log(days.Low), logs.Low, 1e-12);
        Assert.Equal(Math.Log(days.High), logs.High, 1e-12);
    }

    /// <summary>Eight rows in four clusters of twins: the clusters drawn whole are four values drawn alone.</summary>
    [Fact]
    public void Clusters_are_drawn_whole()
    {
        double[] four = [3, 8, 20, 51], twins = [3, 3, 8, 8, 20, 20, 51, 51];
        BootstrapSample rows = Bootstrap.Resample(four, Mean, new() { Replicates = 300 });
        BootstrapSample clusters = Bootstrap.Resample(
            twins, Mean, new() { Replicates = 300, Clusters = [5, 5, 9, 9, 2, 2, 7, 7] });
        for (int r = 0; r < 300; r++)
            Assert.Equal(rows.Replicates[r], clusters.Replicates[r], 1e-12);
        Assert.Equal(rows.Bca(0.8).Low, clusters.Bca(0.8).Low, 1e-9);
        Assert.True(clusters.StandardError > 1.2 * Bootstrap.Resample(twins, Mean, new() { Replicates = 300 }).StandardError);
    }

    [Fact]
    public void A_number_that_never_varies_is_its_own_limits() =>
        Assert.Equal(new Limits(4, 4), Bootstrap.Resample(new double[] { 4, 4, 4 }, Mean).Bca());

    [Fact]
    public void What_cannot_be_done_is_refused_in_words()
    {
        static void Refused<T>(string said, Action attempt)
            where T : Exception => Assert.Contains(said, Assert.ThrowsAny<T>(attempt).Message, StringComparison.Ordinal);
        Refused<ArgumentException>("rowCount", () => Bootstrap.Resample(0, rows => rows.Length));
        Refused<ArgumentException>("3 clusters", () => Bootstrap.Resample(Days, Mean, new() { Clusters = [1, 2, 3] }));
        Refused<ArgumentException>("in replicate", () => Bootstrap.Resample(Days, drawn => 1 / (drawn[0] - 3)));
        Refused<ArgumentException>("2000 is usual", () => Bootstrap.Resample(Days, Mean, new() { Replicates = 0 }));
        Refused<ArgumentException>("1 thread", () => Bootstrap.Resample(Days, Mean, new() { DegreeOfParallelism = 0 }));
        Refused<InvalidOperationException>(
            "lies below", () => Bootstrap.Resample(Days.Length, rows => Days[rows.ToArray().Min()], new() { Replicates = 40 }).Bca());
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double value in values)
            sum += value;
        return sum / values.Length;
    }

    private static double[][] Lines(string file) =>
    [
        .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "ReferenceData", "bootstrap", file)).Skip(1)
            .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()),
    ];
}
