namespace FlipAnalytics;

internal sealed class NormalNodes
{
    private readonly double[][] u;
    private NormalNodes(double[][] u) => this.u = u;
    public static NormalNodes Create(int d, int n)
    {
        var u = new double[d][];
        long g = 1;
        for (int k = 0; k < d; k++)
        {
            u[k] = new double[n];
            for (int i = 0; i < n; i++) u[k][i] = ((i * g) % n + 0.5) / n;
            g = g * 1571 % n;
        }
        return new(u);
    }
    public double[] Normal(int k) => [.. u[k].Select(x => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, x))];
    public double[] Uniform(int k) => u[k];
}
