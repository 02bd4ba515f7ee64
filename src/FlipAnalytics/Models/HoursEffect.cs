namespace FlipAnalytics;

/// <summary>
/// What hours stated by the owner do to the sale price, as a factor of the price at usual hours. Longer work sells for
/// more: (h/usual)^slope, held within three spreads of the hours. But no hour is taken to add more to the price than it
/// costs at the owner's wage, so fewer hours never lower the most to pay: the slope of the factor is held at
/// wage · usual / ((1 − fees) · price at usual hours).
/// </summary>
internal static class HoursEffect
{
    // A power from 1 on would rise ever faster.
    private const double SteepestPower = 0.9;

    /// <summary>The factor.</summary>
    /// <param name="logOverUsual">Log of stated over usual hours.</param>
    /// <param name="power">Change of log price per unit of it.</param>
    /// <param name="furthest">How far it may be from 0 and still tell of better work.</param>
    /// <param name="hourCost">Wage · usual hours / ((1 − fees) · price at usual hours).</param>
    public static double Factor(double logOverUsual, double power, double furthest, double hourCost)
    {
        double ratio = Math.Exp(Math.Clamp(logOverUsual, -furthest, furthest));
        if (power <= 0)
            return Math.Pow(ratio, power);
        double b = Math.Min(power, SteepestPower);
        // d/dx x^b = b·x^(b−1) falls with x and equals the cost of the hours here.
        double steep = hourCost <= 0 ? double.PositiveInfinity : Math.Pow(b / hourCost, 1 / (1 - b));
        return 1 + Rise(ratio, b, steep, hourCost) - Rise(1, b, steep, hourCost);
    }

    // ∫₀ˣ min(b·t^(b−1), cost) dt.
    private static double Rise(double x, double b, double steep, double hourCost) => x <= steep
        ? Math.Max(0, hourCost) * x
        : hourCost * steep + Math.Pow(x, b) - Math.Pow(steep, b);
}
