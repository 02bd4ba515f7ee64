using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// The family of a colour by how it looks: lightness L*, chroma C* and hue in degrees (CIELCh, ISO/CIE 11664-4).
/// </summary>
/// <remarks>
/// The families are the basic colour terms of Berlin and Kay (1969). Where one ends and the next begins is this project's own
/// choice, made so that the common names of web colours (CSS Color Module Level 4) and ordinary paint words come out as most
/// people would call them; a family in <c>colors.csv</c> overrides it.
/// </remarks>
public static class ColourLook
{
    private const double GrayChroma = 10;

    /// <summary>The family; every colour has one.</summary>
    /// <param name="look">The colour.</param>
    public static string FamilyOf(LabColour look)
    {
        double light = look.Lightness, chroma = look.Chroma;
        if (light < 8 || (light < 24 && chroma < GrayChroma))
            return "black";
        if (light >= 90 && chroma < 25)
            return "white";
        if (chroma < GrayChroma)
            return light >= 85 ? "white" : "gray";
        return look.Hue switch
        {
            < 20 => light >= 55 ? "pink" : "red",
            < 45 => light >= 68 ? "pink" : light >= 57 ? "orange" : light < 40 && chroma < 35 ? "brown" : "red",
            < 75 => light < 40 || chroma < 45 ? "brown" : "orange",
            < 95 => chroma < 35 || light < 50 ? "brown" : "yellow",
            < 112 => chroma < 20 ? "brown" : light < 65 ? "green" : "yellow",
            < 185 => "green",
            < 295 => "blue",
            // In CIELAB a deep blue has the hue of a light violet.
            < 308 => light >= 45 ? "purple" : "blue",
            < 320 => "purple",
            < 345 => light >= 55 ? "pink" : "purple",
            _ => light >= 55 ? "pink" : "red",
        };
    }
}
