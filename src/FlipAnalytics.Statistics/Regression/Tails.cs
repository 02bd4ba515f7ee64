using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace FlipAnalytics.Statistics;

/// <summary>Tail probabilities computed as such (never as one minus the rest, which loses small ones), and quantiles
/// solved from them to full precision.</summary>
internal static class Tails
{
    /// <summary>P(|T| ≥ |t|) for Student's t: Iₓ(ν/2, ½) with x = ν/(ν + t²); DLMF 8.17.</summary>
    public static double TwoSidedStudent(double t, double degreesOfFreedom) => t switch
    {
        double.NaN => double.NaN,
        double.PositiveInfinity or double.NegativeInfinity => 0,
        _ => SpecialFunctions.BetaRegularized(
            degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t)),
    };

    /// <summary>P(F ≥ f): Iₓ(d₂/2, d₁/2) with x = d₂/(d₂ + d₁f).</summary>
    public static double UpperF(double f, double numerator, double denominator) => f switch
    {
        double.NaN => double.NaN,
        double.PositiveInfinity => 0,
        _ => SpecialFunctions.BetaRegularized(
            denominator / 2, numerator / 2, denominator / (denominator + numerator * f)),
    };

    /// <summary>P(χ² ≥ x) = Q(k/2, x/2).</summary>
    public static double UpperChiSquared(double x, double degreesOfFreedom) =>
        x <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2, x / 2);

    /// <summary>The standard normal distribution function.</summary>
    public static double Normal(double z) => 0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2));

    /// <summary>The z with Φ(z) = probability.</summary>
    public static double NormalQuantile(double probability) =>
        probability < 0.5
            ? -Math.Sqrt(2) * SpecialFunctions.ErfcInv(2 * probability)
            : Math.Sqrt(2) * SpecialFunctions.ErfcInv(2 * (1 - probability));

    /// <summary>The t with P(|T| ≤ t) = level.</summary>
    public static double StudentForLevel(double level, double degreesOfFreedom)
    {
        double above = 1 - level;
        double upper = Math.Max(1, NormalQuantile(1 - above / 2));
        while (TwoSidedStudent(upper, degreesOfFreedom) > above)
            upper *= 2;
        return Falling(t => TwoSidedStudent(t, degreesOfFreedom) - above,
            t => -2 * StudentT.PDF(0, 1, degreesOfFreedom, t), 0, upper);
    }

    /// <summary>The x in 0..1 with Iₓ(a, b) = probability.</summary>
    public static double BetaQuantile(double probability, double a, double b) =>
        Falling(x => probability - SpecialFunctions.BetaRegularized(a, b, x), x => -Beta.PDF(a, b, x), 0, 1);

    /// <summary>The x with P(shape, x) = probability, for a gamma variable of scale 1.</summary>
    public static double GammaQuantile(double probability, double shape)
    {
        double upper = shape + 1;
        while (SpecialFunctions.GammaLowerRegularized(shape, upper) < probability)
            upper *= 2;
        return Falling(x => probability - SpecialFunctions.GammaLowerRegularized(shape, x),
            x => -Gamma.PDF(shape, 1, x), 0, upper);
    }

    /// <summary>The zero of a falling function: Newton's step while it stays inside the bracket, else halving.</summary>
    private static double Falling(Func<double, double> function, Func<double, double> slope, double low, double high)
    {
        double x = (low + high) / 2;
        for (int step = 0; step < 200; step++)
        {
            double value = function(x);
            if (value > 0)
                low = x;
            else
                high = x;
            double next = x - value / slope(x);
            if (!(next > low && next < high))
                next = (low + high) / 2;
            if (Math.Abs(next - x) <= 1e-15 * Math.Abs(x) || high - low <= 1e-15 * high)
                return next;
            x = next;
        }
        return x;
    }
}
