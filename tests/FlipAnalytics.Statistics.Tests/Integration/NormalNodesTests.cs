using MathNet.Numerics.Distributions;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Closed forms: the mean of exp(s z) is exp(s²/2) a coordinate; the sum of d coordinates has variance d.</summary>
public class NormalNodesTests
{
    public static TheoryData<int> Counts => [.. NormalNodes.Counts];

    [Theory]
    [InlineData(256)]
    [InlineData(512)]
    [InlineData(1024)]
    public void The_generating_vector_is_what_the_search_finds(int count)
    {
        int[] vector = LatticeSearch.ComponentByComponent(count, 8);
        NormalNodes nodes = NormalNodes.Create(8, count);
        for (int j = 0; j < 8; j++)
            Assert.Equal(vector[j] / (2.0 * count), nodes.Uniform(j)[0], 1e-15);
    }

    [Theory, MemberData(nameof(Counts))]
    public void Each_coordinate_runs_once_through_the_midpoints(int count)
    {
        NormalNodes nodes = NormalNodes.Create(8, count);
        double[] midpoints = [.. Enumerable.Range(0, count).Select(k => (k + 0.5) / count)];
        for (int j = 0; j < 8; j++)
            Assert.Equal(midpoints, nodes.Uniform(j).ToArray().Order());
    }

    [Theory, MemberData(nameof(Counts))]
    public void Each_coordinate_has_mean_zero_and_variance_one(int count)
    {
        NormalNodes nodes = NormalNodes.Create(8, count);
        for (int j = 0; j < 8; j++)
        {
            Assert.Equal(0, nodes.Normal(j).ToArray().Average(), 1e-15);
            Assert.Equal(1, nodes.Normal(j).ToArray().Average(z => z * z), 1e-14);
        }
    }

    [Theory, MemberData(nameof(Counts))]
    public void The_mirror_image_of_a_node_is_the_node_as_far_from_the_end(int count)
    {
        NormalNodes nodes = NormalNodes.Create(8, count);
        for (int j = 0; j < 8; j++)
            Assert.Equal(nodes.Normal(j).ToArray().Select(z => -z), nodes.Normal(j).ToArray().Reverse());
    }

    [Theory]
    [InlineData(256, 2.5e-4, 1.1e-3, 4.5e-3, 1.5e-3)]
    [InlineData(1024, 8e-5, 4e-4, 1.5e-3, 4e-3)]
    [InlineData(4096, 3e-5, 4e-5, 4e-4, 1e-3)]
    [InlineData(16384, 8e-6, 4e-5, 7e-5, 9e-4)]
    public void Means_of_products_of_lognormals_err_by_no_more_than_documented(
        int count, double one, double two, double five, double eight)
    {
        Assert.InRange(Error(1, 0.5), 0, one);
        Assert.InRange(Error(2, 0.5), 0, two);
        Assert.InRange(Error(5, 0.25), 0, five);
        Assert.InRange(Error(8, 0.25), 0, eight);

        double Error(int dimensions, double s) => Math.Abs(
            NormalNodes.Create(dimensions, count).Mean(z => Math.Exp(s * Sum(z))) / Math.Exp(dimensions * s * s / 2) - 1);
    }

    [Theory]
    [InlineData(256, 7.5e-3, 1.1e-2, 3.2e-2)]
    [InlineData(1024, 2.6e-3, 9e-3, 8.5e-3)]
    [InlineData(4096, 4e-4, 2e-3, 2.6e-3)]
    [InlineData(16384, 2e-4, 5e-4, 1.4e-3)]
    public void Chances_of_a_sum_err_by_no_more_than_documented(int count, double two, double five, double eight)
    {
        Assert.InRange(WorstError(2), 0, two);
        Assert.InRange(WorstError(5), 0, five);
        Assert.InRange(WorstError(8), 0, eight);

        double WorstError(int dimensions)
        {
            NormalNodes nodes = NormalNodes.Create(dimensions, count);
            double[] limits = [-1.5, -1, -0.5, 0, 0.5, 1, 1.5];
            return limits.Max(c => Math.Abs(
                nodes.Mean(z => Sum(z) > c * Math.Sqrt(dimensions) ? 1 : 0) - (1 - Normal.CDF(0, 1, c))));
        }
    }

    [Theory]
    [InlineData(256, 7.1e-2)]
    [InlineData(1024, 1.7e-2)]
    [InlineData(4096, 4.2e-3)]
    [InlineData(16384, 2.2e-3)]
    public void No_two_coordinates_correlate_by_more_than_documented(int count, double most)
    {
        double[][] z = [.. Enumerable.Range(0, 8).Select(j => NormalNodes.Create(8, count).Normal(j).ToArray())];
        for (int j = 0; j < 8; j++)
        {
            for (int k = 0; k < j; k++)
                Assert.InRange(Math.Abs(z[j].Zip(z[k], (a, b) => a * b).Average()), 0, most);
        }
    }

    /// <summary>Sums with 256 different sets of weights, each of variance 1, at five limits each.</summary>
    [Theory]
    [InlineData(256, 1e-2, 5e-2)]
    [InlineData(1024, 4e-3, 2e-2)]
    [InlineData(4096, 2e-3, 9e-3)]
    public void Chances_of_five_normals_weighted_anyhow_err_by_no_more_than_documented(
        int count, double typical, double worst)
    {
        NormalNodes nodes = NormalNodes.Create(5, count), weights = NormalNodes.Create(5, 256);
        double[] limits = [-1.5, -0.6745, 0, 0.6745, 1.5];
        List<double> errors = [];
        for (int k = 0; k < weights.Count; k++)
        {
            double[] weight = [.. Enumerable.Range(0, 5).Select(j => weights.Normal(j)[k])];
            double length = Math.Sqrt(weight.Sum(w => w * w));
            double[] sums = new double[count];
            for (int i = 0; i < count; i++)
            {
                for (int j = 0; j < 5; j++)
                    sums[i] += weight[j] / length * nodes.Normal(j)[i];
            }
            errors.AddRange(limits.Select(c => sums.Count(sum => sum > c) / (double)count - (1 - Normal.CDF(0, 1, c))));
        }
        Assert.InRange(Math.Sqrt(errors.Average(error => error * error)), 0, typical);
        Assert.InRange(errors.Max(Math.Abs), 0, worst);
    }

    [Theory, MemberData(nameof(Counts))]
    public void The_chance_that_two_correlated_normals_sum_past_a_limit_is_right_to_a_thousandth(int count)
    {
        // Correlation 0.6, so the sum has variance 3.2.
        double chance = NormalNodes.Create(2, count).Mean(z => z[0] + (0.6 * z[0] + 0.8 * z[1]) > 1 ? 1 : 0);
        Assert.Equal(1 - Normal.CDF(0, Math.Sqrt(3.2), 1), chance, 1e-3);
    }

    [Fact]
    public void The_same_table_is_made_once()
    {
        Assert.Same(NormalNodes.Create(3, 512), NormalNodes.Create(3, 512));
    }

    [Theory]
    [InlineData(0, 1024)]
    [InlineData(9, 1024)]
    [InlineData(2, 1000)]
    public void A_table_that_does_not_exist_is_refused(int dimensions, int count)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalNodes.Create(dimensions, count));
    }

    private static double Sum(ReadOnlySpan<double> z)
    {
        double sum = 0;
        foreach (double value in z)
            sum += value;
        return sum;
    }
}
