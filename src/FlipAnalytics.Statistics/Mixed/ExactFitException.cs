namespace FlipAnalytics.Statistics;

/// <summary>The coefficients alone reproduce the response, so the residual variance would be zero.</summary>
public sealed class ExactFitException : MixedModelException
{
    internal ExactFitException(int rows)
        : base($"The coefficients reproduce all {rows} responses exactly, so no variance is left to share out; "
            + "check that the response varies and is not itself a column, or give a ResidualVariancePrior.")
    {
    }
}
