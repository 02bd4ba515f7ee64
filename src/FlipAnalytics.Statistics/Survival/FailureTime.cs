namespace FlipAnalytics.Statistics;

/// <summary>Quantile, survival and hazard of a duration T with log T = location + scale · e.</summary>
public static class FailureTime
{
    /// <summary>The time by which the share <paramref name="p"/> has ended: exp(location + scale · w(p)).</summary>
    /// <exception cref="ArgumentOutOfRangeException">p outside 0 to 1.</exception>
    public static double Quantile(FailureDistribution distribution, double p, double location, double scale) =>
        Math.Exp(location + scale * StandardQuantile(distribution, p));

    /// <summary>P(T &gt; t), t 0 or more.</summary>
    public static double Survival(FailureDistribution distribution, double t, double location, double scale) =>
        Math.Exp(-CumulativeHazard(distribution, t, location, scale));

    /// <summary>H(t) = −log P(T &gt; t), t 0 or more.</summary>
    public static double CumulativeHazard(FailureDistribution distribution, double t, double location, double scale)
    {
        RefuseNegative(t);
        return t == 0 ? 0 : -LogSurvival(distribution, (Math.Log(t) - location) / scale).Value;
    }

    /// <summary>Rate of ending at t among those still running, per unit of time, t above 0.</summary>
    public static double Hazard(FailureDistribution distribution, double t, double location, double scale)
    {
        RefuseNegative(t);
        return -LogSurvival(distribution, (Math.Log(t) - location) / scale).First / (scale * t);
    }

    /// <summary>w(p), the quantile of the standardised error e.</summary>
    internal static double StandardQuantile(FailureDistribution distribution, double p)
    {
        if (!(p >= 0 && p <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "A share that has ended lies between 0 and 1.");
        }

        return distribution switch
        {
            FailureDistribution.Lognormal => NormalError.Quantile(p),
            FailureDistribution.LogLogistic => LogisticError.Quantile(p),
            _ => ExtremeValueError.Quantile(p),
        };
    }

    private static ErrorTerm LogSurvival(FailureDistribution distribution, double z) => distribution switch
    {
        FailureDistribution.Lognormal => NormalError.LogSurvival(z),
        FailureDistribution.LogLogistic => LogisticError.LogSurvival(z),
        _ => ExtremeValueError.LogSurvival(z),
    };

    private static void RefuseNegative(double t)
    {
        if (!(t >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(t), t, "A duration is 0 or more.");
        }
    }
}
