using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>Smallest extreme value: P(e &gt; z) = exp(−exp(z)); durations are Weibull, or exponential at scale 1.</summary>
internal readonly struct ExtremeValueError : IErrorDistribution
{
    // Beyond this z the survival is zero to any precision, while exp(z) is still finite.
    private const double Certain = 300;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ErrorTerm LogDensity(double z)
    {
        double hazard = Math.Exp(z);
        return new(z - hazard, 1 - hazard, -hazard);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ErrorTerm LogSurvival(double z)
    {
        double hazard = Math.Exp(z);
        return new(-hazard, -hazard, -hazard);
    }

    public static ErrorTerm LogDistribution(double z)
    {
        double hazard = Math.Exp(Math.Min(z, Certain));
        if (hazard < 1e-15)
        {
            // 1 − exp(−h) = h (1 − h/2 + …): the logarithm is z itself to the last digit.
            return new(z, 1, -hazard / 2);
        }

        double ratio = hazard / Accurate.ExpMinusOne(hazard);
        return new(Math.Log(-Accurate.ExpMinusOne(-hazard)), ratio, ratio * (1 - hazard - ratio));
    }

    public static IntervalTerm LogBetween(double lower, double upper)
    {
        double hazardLower = Math.Exp(lower), hazardUpper = Math.Exp(Math.Min(upper, Certain));
        double gap = hazardUpper - hazardLower;
        double inside = -Accurate.ExpMinusOne(-gap);
        return IntervalTerm.From(
            Math.Log(inside) - hazardLower,
            hazardLower / inside, hazardUpper / Accurate.ExpMinusOne(gap),
            1 - hazardLower, 1 - hazardUpper);
    }

    public static double Quantile(double p) => Math.Log(-Accurate.LogOnePlus(-p));
}
