namespace FlipAnalytics.Statistics;

/// <summary>A colour in CIELAB, white D65, 2° observer, in which equal steps look about equally large: ISO/CIE 11664-4.
/// </summary>
/// <param name="Lightness">L*, 0 black to 100 white.</param>
/// <param name="A">a*, green below 0, red above.</param>
/// <param name="B">b*, blue below 0, yellow above.</param>
public readonly record struct LabColour(double Lightness, double A, double B)
{
    // Below (6/29)³ the cube root is replaced by its tangent.
    private const double Knee = 6.0 / 29;

    /// <summary>How far from grey: √(a*² + b*²).</summary>
    public double Chroma => Math.Sqrt(A * A + B * B);

    /// <summary>Degrees from red over yellow (90), green (180) and blue (270), from 0 to below 360; 0 for a grey.</summary>
    public double Hue => Angle(B, A);

    /// <summary>From an sRGB colour as on the web.</summary>
    /// <param name="hex">Six hexadecimal digits, or three that count double, with or without # before them.</param>
    /// <exception cref="FormatException">Something else.</exception>
    public static LabColour FromHex(string hex)
    {
        (double x, double y, double z) = Srgb.ToXyz(hex);
        (double whiteX, double whiteY, double whiteZ) = Srgb.White;
        double fx = Root(x / whiteX), fy = Root(y / whiteY), fz = Root(z / whiteZ);
        return new(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
    }

    /// <summary>From lightness, chroma (0 or more) and hue in degrees (CIELCh).</summary>
    public static LabColour FromLch(double lightness, double chroma, double hue)
    {
        (double sine, double cosine) = Math.SinCos(hue * Math.PI / 180);
        return new(lightness, chroma * cosine, chroma * sine);
    }

    internal static double Angle(double b, double a)
    {
        if (a == 0 && b == 0)
            return 0;
        double degrees = Math.Atan2(b, a) * (180 / Math.PI);
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static double Root(double share) =>
        share > Knee * Knee * Knee ? Math.Cbrt(share) : share / (3 * Knee * Knee) + 4.0 / 29;
}
