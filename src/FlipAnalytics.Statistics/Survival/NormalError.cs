using System.Runtime.CompilerServices;
using MathNet.Numerics;

namespace FlipAnalytics.Statistics;

/// <summary>Standard normal error; durations are lognormal.</summary>
internal readonly struct NormalError : IErrorDistribution
{
    private const double HalfLogTwoPi = 0.91893853320467274178;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ErrorTerm LogDensity(double z) => new(-z * z / 2 - HalfLogTwoPi, -z, -1);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ErrorTerm LogSurvival(double z)
    {
        (double logTail, double hazard) = Tail(z);
        return new(logTail, -hazard, -hazard * (hazard - z));
    }

    public static ErrorTerm LogDistribution(double z)
    {
        (double logTail, double hazard) = Tail(-z);
        return new(logTail, hazard, -hazard * (hazard + z));
    }

    public static IntervalTerm LogBetween(double lower, double upper)
    {
        double log;
        if (lower > 0)
        {
            log = LogDifference(Tail(lower).LogTail, Tail(upper).LogTail);
        }
        else if (upper < 0)
        {
            log = LogDifference(Tail(-upper).LogTail, Tail(-lower).LogTail);
        }
        else
        {
            log = Math.Log((SpecialFunctions.Erf(upper / Constants.Sqrt2) - SpecialFunctions.Erf(lower / Constants.Sqrt2)) / 2);
        }

        return IntervalTerm.From(
            log,
            Math.Exp(-lower * lower / 2 - HalfLogTwoPi - log), Math.Exp(-upper * upper / 2 - HalfLogTwoPi - log),
            -lower, -upper);
    }

    public static double Quantile(double p) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, p);

    private static double LogDifference(double larger, double smaller) =>
        larger + Math.Log(-Accurate.ExpMinusOne(smaller - larger));

    /// <summary>log Q(z) and the hazard φ(z)/Q(z), Q the upper tail. Beyond 5 by the continued fraction of
    /// Abramowitz and Stegun 26.2.14, where erfc would lose the hazard's digits and then underflow.</summary>
    private static (double LogTail, double Hazard) Tail(double z)
    {
        double logDensity = -z * z / 2 - HalfLogTwoPi;
        if (z <= 5)
        {
            double tail = SpecialFunctions.Erfc(z / Constants.Sqrt2) / 2;
            return (Math.Log(tail), Math.Exp(logDensity) / tail);
        }

        double hazard = z;
        for (int k = 50; k >= 1; k--)
        {
            hazard = z + k / hazard;
        }

        return (logDensity - Math.Log(hazard), hazard);
    }
}
