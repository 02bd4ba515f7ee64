namespace FlipAnalytics.Statistics;

/// <summary>Gradient of the restricted Laplace criterion in the log variances s of the groups. With M the penalised
/// information and P the effects' precisions, the mode moves by x′ = M⁻¹ P u as s grows, and
/// dQ/ds = ½ u'Pu − ½ L + ½ tr(M⁻¹ P) − ½ tr(M⁻¹ dM/dx · x′), L the number of levels. The last term, a third
/// derivative of the likelihood, is a central difference of the information along x′.</summary>
internal sealed class LaplaceGradient
{
    // Length of the difference in standard errors: its error is the square of this, its rounding 1e-16 over it.
    private const double DifferenceLength = 1e-4;

    private readonly PenalisedMode mode;
    private readonly double[] point;
    private readonly double[] slope;
    private readonly double[] ahead;
    private readonly double[] behind;

    internal LaplaceGradient(PenalisedMode mode)
    {
        this.mode = mode;
        int size = mode.Likelihood.Size;
        point = new double[size];
        slope = new double[size];
        ahead = new double[size * size];
        behind = new double[size * size];
    }

    internal double[] At(ReadOnlySpan<double> logVariances)
    {
        FailureLikelihood likelihood = mode.Likelihood;
        double[][] inverse = mode.Factor.Inverse();
        var result = new double[logVariances.Length];
        for (int k = 0; k < result.Length; k++)
        {
            double precision = Math.Exp(-logVariances[k]);
            int start = likelihood.GroupStarts[k], end = likelihood.GroupStarts[k + 1];
            double trace = 0;
            for (int i = start; i < end; i++)
            {
                trace += inverse[i][i];
            }

            result[k] = (precision * (LaplaceCriterion.SumOfSquares(mode, k) + trace) - (end - start)
                - TraceOfChange(inverse, precision, start, end)) / 2;
        }

        return result;
    }

    private double TraceOfChange(double[][] inverse, double precision, int start, int end)
    {
        var direction = new double[inverse.Length];
        double length = 0;
        for (int i = 0; i < direction.Length; i++)
        {
            for (int j = start; j < end; j++)
            {
                direction[i] += inverse[i][j] * precision * mode.Parameters[j];
            }
        }

        for (int j = start; j < end; j++)
        {
            length += direction[j] * precision * mode.Parameters[j];
        }

        if (!(length > 0))
        {
            return 0;
        }

        double unit = DifferenceLength / Math.Sqrt(length);
        EvaluateAt(direction, unit, ahead);
        EvaluateAt(direction, -unit, behind);
        double sum = 0;
        int size = mode.Likelihood.Size;
        for (int i = 0; i < inverse.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                sum += 2 * inverse[i][j] * (ahead[i * size + j] - behind[i * size + j]);
            }

            sum += inverse[i][i] * (ahead[i * size + i] - behind[i * size + i]);
        }

        return sum / (2 * unit);
    }

    private void EvaluateAt(double[] direction, double length, double[] information)
    {
        mode.Parameters.CopyTo(point.AsSpan());
        for (int i = 0; i < direction.Length; i++)
        {
            point[i] += length * direction[i];
        }

        mode.Likelihood.Evaluate(point, slope, information);
        mode.AddFloor(point[mode.Likelihood.LogScaleIndex], information);
    }
}
