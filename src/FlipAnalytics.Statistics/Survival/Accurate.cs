namespace FlipAnalytics.Statistics;

/// <summary>exp(x) − 1 and log(1 + x) without loss of digits near 0; the correction is Kahan's, as given by Higham,
/// Accuracy and Stability of Numerical Algorithms, section 1.14.1.</summary>
internal static class Accurate
{
    /// <summary>exp(x) − 1.</summary>
    internal static double ExpMinusOne(double x)
    {
        double power = Math.Exp(x);
        if (power == 1)
        {
            return x;
        }

        double difference = power - 1;
        return difference == -1 || double.IsInfinity(power) ? difference : difference * x / Math.Log(power);
    }

    /// <summary>log(1 + x), x above −1.</summary>
    internal static double LogOnePlus(double x)
    {
        double sum = 1 + x;
        return sum == 1 || double.IsInfinity(sum) ? x : Math.Log(sum) * x / (sum - 1);
    }
}
