using MathNet.Numerics;

namespace FlipAnalytics.Statistics;

/// <summary>Exact intervals for events that come at a constant rate over an exposure (weeks, pieces, miles).</summary>
public static class Rate
{
    /// <summary>Events per unit of exposure: Garwood (1936), Biometrika 28, 437–442; covers at least the level.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A negative count, an exposure not above 0 or not finite, or a level not between 0
    /// and 1.</exception>
    public static Limits Exact(int count, double exposure, double level = 0.95)
    {
        Refuse(count, exposure);
        Limits.RefuseLevel(level);
        double tail = (1 - level) / 2;
        return new(
            count == 0 ? 0 : Tails.GammaQuantile(tail, count) / exposure,
            Tails.GammaQuantile(1 - tail, count + 1) / exposure);
    }

    /// <summary>Compares two rates given the total of their events, of which the first's share is binomial: Przyborowski and
    /// Wilenski (1940), Biometrika 31, 313–323.</summary>
    /// <exception cref="ArgumentOutOfRangeException">As <see cref="Exact"/>, or no event at all.</exception>
    public static RateComparison Compare(
        int count, double exposure, int otherCount, double otherExposure, double level = 0.95)
    {
        Refuse(count, exposure);
        Refuse(otherCount, otherExposure);
        int total = count + otherCount;
        ArgumentOutOfRangeException.ThrowIfLessThan(total, 1, nameof(count));
        Limits share = Proportion.Exact(count, total, level);
        double perExposure = otherExposure / exposure;
        return new(
            count * perExposure / otherCount,
            new(share.Low / (1 - share.Low) * perExposure, share.High / (1 - share.High) * perExposure),
            TwoSided(count, total, exposure / (exposure + otherExposure)));
    }

    /// <summary>The chance of every outcome no likelier than the one seen, those equal but for rounding included.</summary>
    private static double TwoSided(int successes, int trials, double probability)
    {
        double[] chances =
        [
            .. Enumerable.Range(0, trials + 1).Select(k => Math.Exp(
                SpecialFunctions.BinomialLn(trials, k) + k * Math.Log(probability) + (trials - k) * Math.Log(1 - probability))),
        ];
        return Math.Min(1, chances.Where(chance => chance <= chances[successes] * (1 + 1e-7)).Sum());
    }

    private static void Refuse(int count, double exposure)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        if (!(exposure > 0 && double.IsFinite(exposure)))
            throw new ArgumentOutOfRangeException(nameof(exposure), exposure, "An exposure must be above 0 and finite.");
    }
}

/// <summary>One rate against another.</summary>
/// <param name="Ratio">The first rate over the second; infinite when the second saw no event.</param>
/// <param name="Limits">Of the ratio.</param>
/// <param name="P">The chance of a split at least as unlikely if the rates are equal.</param>
public sealed record RateComparison(double Ratio, Limits Limits, double P);
