namespace FlipAnalytics.Statistics;

/// <summary>How different two colours look.</summary>
public static class ColourDifference
{
    // C⁷ / (C⁷ + 25⁷) appears twice in the formula.
    private const double Pow25To7 = 6103515625;

    /// <summary>CIEDE2000, ISO/CIE 11664-6, all weights 1; about 1 is the smallest difference an eye notices side by side.
    /// Written after Sharma, Wu and Dalal (2005), Color Res. Appl. 30, 21–30, equations 2 to 22, whose test pairs it passes.
    /// </summary>
    /// <exception cref="ArgumentException">A color with a coordinate that is not finite.</exception>
    public static double Ciede2000(LabColour one, LabColour other)
    {
        Refuse("first", one, nameof(one));
        Refuse("second", other, nameof(other));
        double growth = 0.5 * (1 - Saturation((one.Chroma + other.Chroma) / 2));
        Stretched first = new(one, growth), second = new(other, growth);
        bool grey = first.Chroma * second.Chroma == 0;

        double lightness = second.Lightness - first.Lightness, chroma = second.Chroma - first.Chroma;
        double turn = grey ? 0 : Turn(second.Hue - first.Hue);
        double hue = 2 * Math.Sqrt(first.Chroma * second.Chroma) * Math.Sin(Radians(turn / 2));

        double meanLightness = (first.Lightness + second.Lightness) / 2, meanChroma = (first.Chroma + second.Chroma) / 2;
        double meanHue = grey ? first.Hue + second.Hue : MeanHue(first.Hue, second.Hue);
        double t = 1
            - 0.17 * Math.Cos(Radians(meanHue - 30))
            + 0.24 * Math.Cos(Radians(2 * meanHue))
            + 0.32 * Math.Cos(Radians(3 * meanHue + 6))
            - 0.20 * Math.Cos(Radians(4 * meanHue - 63));
        double offWhite = Math.Pow(meanLightness - 50, 2);
        double lightnessStep = lightness / (1 + 0.015 * offWhite / Math.Sqrt(20 + offWhite));
        double chromaStep = chroma / (1 + 0.045 * meanChroma);
        double hueStep = hue / (1 + 0.015 * meanChroma * t);
        double rotation = -Math.Sin(Radians(60 * Math.Exp(-Math.Pow((meanHue - 275) / 25, 2)))) * 2 * Saturation(meanChroma);
        return Math.Sqrt(
            lightnessStep * lightnessStep + chromaStep * chromaStep + hueStep * hueStep + rotation * chromaStep * hueStep);
    }

    private static void Refuse(string which, LabColour colour, string parameter)
    {
        GivenNumbers.RefuseNotFinite($"L* of the {which} color", colour.Lightness, parameter);
        GivenNumbers.RefuseNotFinite($"a* of the {which} color", colour.A, parameter);
        GivenNumbers.RefuseNotFinite($"b* of the {which} color", colour.B, parameter);
    }

    private static double Saturation(double chroma)
    {
        double power = Math.Pow(chroma, 7);
        return Math.Sqrt(power / (power + Pow25To7));
    }

    /// <summary>A difference of hues the short way round.</summary>
    private static double Turn(double difference) =>
        difference > 180 ? difference - 360 : difference < -180 ? difference + 360 : difference;

    private static double MeanHue(double first, double second)
    {
        double sum = first + second;
        return Math.Abs(first - second) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
    }

    private static double Radians(double degrees) => degrees * (Math.PI / 180);

    /// <summary>A colour with a* stretched, which brings near-greys into line.</summary>
    private readonly struct Stretched(LabColour colour, double growth)
    {
        private readonly double a = (1 + growth) * colour.A;

        public double Lightness => colour.Lightness;

        public double Chroma => Math.Sqrt(a * a + colour.B * colour.B);

        public double Hue => LabColour.Angle(colour.B, a);
    }
}
