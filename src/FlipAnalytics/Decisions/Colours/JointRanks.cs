using FlipAnalytics.Statistics;
using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics;

/// <summary>Chances of ranks among jointly normal values, over fixed nodes.</summary>
internal static class JointRanks
{
    /// <summary>The most values that can be ranked together: the dimensions there are nodes for.</summary>
    public const int Most = 8;

    private const int Nodes = 4096;

    /// <summary>For each value the chance that it is the highest, and that it is among the three highest.</summary>
    /// <param name="means">Means, at most <see cref="Most"/>.</param>
    /// <param name="covariance">Their covariance.</param>
    public static (double First, double TopThree)[] Highest(double[] means, double[,] covariance)
    {
        int count = means.Length;
        double[,] root = Root(covariance);
        NormalNodes nodes = NormalNodes.Create(count, Nodes);
        var chances = new (double First, double TopThree)[count];
        double[] values = new double[count];
        for (int node = 0; node < Nodes; node++)
        {
            for (int i = 0; i < count; i++)
            {
                values[i] = means[i];
                for (int j = 0; j < count; j++)
                    values[i] += root[i, j] * nodes.Normal(j)[node];
            }

            for (int i = 0; i < count; i++)
            {
                int above = 0;
                for (int j = 0; j < count; j++)
                    above += values[j] > values[i] ? 1 : 0;
                chances[i].First += above == 0 ? 1.0 / Nodes : 0;
                chances[i].TopThree += above < 3 ? 1.0 / Nodes : 0;
            }
        }

        return chances;
    }

    // The symmetric root exists where covariances are singular too, as when a spread is estimated as next to none.
    private static double[,] Root(double[,] covariance)
    {
        var eigen = Matrix<double>.Build.DenseOfArray(covariance).Evd(Symmetricity.Symmetric);
        var scale = Matrix<double>.Build.DenseOfDiagonalVector(eigen.EigenValues.Map(v => Math.Sqrt(Math.Max(0, v.Real))));
        return (eigen.EigenVectors * scale).ToArray();
    }
}
