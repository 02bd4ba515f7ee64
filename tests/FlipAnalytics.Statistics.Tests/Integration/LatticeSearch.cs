namespace FlipAnalytics.Statistics.Tests;

/// <summary>The search that found the generating vectors of <see cref="NormalNodes"/>, component by component. Each
/// component comes from the odd numbers whose shift-averaged worst-case error in the weighted Sobolev space,
/// e² = −1 + (1/N) Σᵢ Πⱼ (1 + γⱼ B₂({i zⱼ/N})) with γⱼ = 1/j, is within a tenth of the least (Sloan, Kuo and Joe 2002, Math.
/// Comp. 71, 1609–1640); among these it is the one whose normal coordinate correlates least with those before it.</summary>
internal static class LatticeSearch
{
    private const double Slack = 1.1;

    public static int[] ComponentByComponent(int count, int dimensions)
    {
        double[] bernoulli = [.. Enumerable.Range(0, count).Select(k => Bernoulli((double)k / count))];
        double[] normal = [.. Enumerable.Range(0, count).Select(k => MidpointNormal(k, count))];
        double[] product = new double[count];
        Array.Fill(product, 1);
        int[] vector = new int[dimensions];
        List<double[]> coordinates = [];
        for (int j = 0; j < dimensions; j++)
        {
            double weight = 1.0 / (j + 1);
            int[] candidates = [.. Enumerable.Range(0, j == 0 ? 1 : count / 2).Select(h => 2 * h + 1)];
            double[] errors = [.. candidates.Select(z => Error(z, weight))];
            double enough = errors.Min() * Slack, leastCorrelation = double.PositiveInfinity;
            foreach (var (at, candidate) in candidates.Index().Where(pair => errors[pair.Index] <= enough))
            {
                double[] coordinate = Coordinate(candidate);
                double correlation = coordinates.Sum(other => Square(other.Zip(coordinate, (a, b) => a * b).Sum() / count));
                if (correlation < leastCorrelation * (1 - 1e-9) || vector[j] == 0)
                    (leastCorrelation, vector[j]) = (correlation, candidate);
            }
            coordinates.Add(Coordinate(vector[j]));
            for (int i = 0, at = 0; i < count; i++, at = (at + vector[j]) % count)
                product[i] *= 1 + weight * bernoulli[at];
        }
        return vector;

        double Error(int z, double weight)
        {
            double sum = 0;
            for (int i = 0, at = 0; i < count; i++, at = (at + z) % count)
                sum += product[i] * (1 + weight * bernoulli[at]) - 1;
            return sum / count;
        }

        double[] Coordinate(int z) => [.. Enumerable.Range(0, count).Select(i => normal[(2L * i + 1) * z % (2 * count) / 2])];
    }

    public static double MidpointNormal(int k, int count) =>
        MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (k + 0.5) / count);

    private static double Bernoulli(double x) => x * x - x + 1 / 6.0;

    private static double Square(double x) => x * x;
}
