using System.Globalization;
using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics;

/// <summary>From sRGB to CIE XYZ with Y = 1 for white: IEC 61966-2-1. The matrix is derived from the primaries and the white
/// point, whose coordinates are the standard's; its own four-decimal matrix is this one rounded.</summary>
internal static class Srgb
{
    // Chromaticities x, y of red, green, blue and of D65.
    private static readonly (double X, double Y)[] Primaries = [(0.64, 0.33), (0.30, 0.60), (0.15, 0.06)];
    private static readonly (double X, double Y) WhitePoint = (0.3127, 0.3290);

    private static readonly Matrix<double> ToXyzMatrix = Derive();

    /// <summary>X, Y, Z of full red, green and blue together.</summary>
    public static (double X, double Y, double Z) White { get; } =
        (ToXyzMatrix.Row(0).Sum(), ToXyzMatrix.Row(1).Sum(), ToXyzMatrix.Row(2).Sum());

    public static (double X, double Y, double Z) ToXyz(string hex)
    {
        ArgumentNullException.ThrowIfNull(hex);
        string digits = hex.StartsWith('#') ? hex[1..] : hex;
        if (digits.Length == 3)
            digits = string.Concat(digits.Select(digit => new string(digit, 2)));
        if (digits.Length != 6 || !digits.All(char.IsAsciiHexDigit))
            throw new FormatException($"'{hex}' is not a color such as #9CAF88: give six hexadecimal digits, or three.");
        double[] linear =
            [.. Enumerable.Range(0, 3).Select(k => Linear(int.Parse(digits.AsSpan(2 * k, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture)))];
        double[] xyz = [.. ToXyzMatrix.EnumerateRows().Select(row => row[0] * linear[0] + row[1] * linear[1] + row[2] * linear[2])];
        return (xyz[0], xyz[1], xyz[2]);
    }

    /// <summary>Undoes the curve of the stored byte.</summary>
    private static double Linear(int stored)
    {
        double value = stored / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }

    private static Matrix<double> Derive()
    {
        Matrix<double> primaries = Matrix<double>.Build.DenseOfColumns(Primaries.Select(Xyz));
        Vector<double> amounts = primaries.Solve(Vector<double>.Build.DenseOfEnumerable(Xyz(WhitePoint)));
        return primaries * Matrix<double>.Build.DenseOfDiagonalVector(amounts);
    }

    private static double[] Xyz((double X, double Y) chromaticity) =>
        [chromaticity.X / chromaticity.Y, 1, (1 - chromaticity.X - chromaticity.Y) / chromaticity.Y];
}
