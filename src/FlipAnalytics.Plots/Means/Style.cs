using System.Collections.Immutable;
using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>
/// How every picture looks. Colours are from the palette that people with colour blindness can tell apart: M. Okabe and
/// K. Ito, Color Universal Design (2008). No meaning rests on colour alone: lines also differ by pattern and marks by
/// shape, so that a grey print says the same.
/// </summary>
public static class Style
{
    /// <summary>Width of a picture, in pixels.</summary>
    public const int Width = 700;

    /// <summary>Height of ordinary text, in pixels.</summary>
    public const int TextSize = 14;

    /// <summary>Height of the text of ticks and notes, in pixels.</summary>
    public const int SmallTextSize = 13;

    /// <summary>Height of the title's text, in pixels.</summary>
    public const int TitleSize = 18;

    /// <summary>Room between the edge of a picture and what is drawn, in pixels.</summary>
    internal const int Margin = 14;

    private const string PreferredFont = "DejaVu Sans";

    /// <summary>A standing amount, and the first of several: Okabe and Ito's blue.</summary>
    public static Color Standing { get; } = Color.FromHex("#0072B2");

    /// <summary>What is taken away, and the second of several: Okabe and Ito's vermillion.</summary>
    public static Color TakenAway { get; } = Color.FromHex("#D55E00");

    /// <summary>What is added, and the third of several: Okabe and Ito's bluish green.</summary>
    public static Color Added { get; } = Color.FromHex("#009E73");

    /// <summary>Text and axes.</summary>
    public static Color Ink { get; } = Color.FromHex("#222222");

    /// <summary>Text that explains.</summary>
    public static Color QuietInk { get; } = Color.FromHex("#595959");

    /// <summary>Lines that help the eye.</summary>
    public static Color Faint { get; } = Color.FromHex("#DDDDDD");

    /// <summary>
    /// What several things in one plot look like, in order. Of Okabe and Ito's palette the yellow is left out, since it
    /// cannot be seen on white.
    /// </summary>
    internal static ImmutableArray<Series> Several { get; } =
    [
        new(Standing, MarkerShape.FilledCircle),
        new(TakenAway, MarkerShape.FilledTriangleUp) { Dashes = [9, 5] },
        new(Added, MarkerShape.FilledSquare) { Dashes = [2.5f, 3.5f] },
        new(Color.FromHex("#CC79A7"), MarkerShape.OpenDiamond) { Dashes = [12, 4, 2.5f, 4] },
        new(Color.FromHex("#E69F00"), MarkerShape.OpenTriangleDown) { Dashes = [16, 6] },
        new(Color.FromHex("#56B4E9"), MarkerShape.OpenSquare) { Dashes = [5, 3] },
    ];

    /// <summary>A number of things in words, such as 1 sale or 12 sales.</summary>
    internal static string Count(int number, string one, string plural = "s") =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {one}{(number == 1 ? "" : plural)}");

    /// <summary>The font of all text: DejaVu Sans where it is installed, else the drawing library's own choice.</summary>
    public static string Font { get; } =
        Fonts.GetTypeface(PreferredFont, FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal)?.FamilyName
            == PreferredFont ? PreferredFont : Fonts.Default;
}
