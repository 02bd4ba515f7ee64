using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>Standard logistic: P(e &gt; z) = 1 / (1 + exp(z)); durations are log-logistic.</summary>
internal readonly struct LogisticError : IErrorDistribution
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ErrorTerm LogDensity(double z)
    {
        (double logSurvival, double below) = Tail(z);
        return new(z + 2 * logSurvival, 1 - 2 * below, -2 * below * (1 - below));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ErrorTerm LogSurvival(double z)
    {
        (double logSurvival, double below) = Tail(z);
        return new(logSurvival, -below, -below * (1 - below));
    }

    public static ErrorTerm LogDistribution(double z)
    {
        (double logSurvival, double below) = Tail(z);
        return new(z + logSurvival, 1 - below, -below * (1 - below));
    }

    /// <summary>P = F(upper) S(lower) (1 − exp(lower − upper)), which never subtracts two near numbers.</summary>
    public static IntervalTerm LogBetween(double lower, double upper)
    {
        (double logSurvivalLower, double belowLower) = Tail(lower);
        (double logSurvivalUpper, double belowUpper) = Tail(upper);
        double inside = -Accurate.ExpMinusOne(lower - upper);
        return IntervalTerm.From(
            upper + logSurvivalUpper + logSurvivalLower + Math.Log(inside),
            belowLower / (belowUpper * inside),
            Math.Exp(logSurvivalUpper - logSurvivalLower) / inside,
            1 - 2 * belowLower, 1 - 2 * belowUpper);
    }

    public static double Quantile(double p) => Math.Log(p) - Accurate.LogOnePlus(-p);

    private static (double LogSurvival, double Below) Tail(double z)
    {
        double small = Math.Exp(-Math.Abs(z));
        double log = Math.Log(1 + small);
        return z > 0 ? (-z - log, 1 / (1 + small)) : (-log, small / (1 + small));
    }
}
