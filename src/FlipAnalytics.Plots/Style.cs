using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>
/// How every picture looks. Colours are from the palette that people with colour blindness can tell apart: M. Okabe and
/// K. Ito, Color Universal Design (2008). Text stays readable where the picture is 700 pixels wide.
/// </summary>
public static class Style
{
    /// <summary>Width of a picture, in pixels.</summary>
    public const int Width = 700;

    /// <summary>Height of ordinary text, in pixels.</summary>
    public const int TextSize = 15;

    /// <summary>Height of the title's text, in pixels.</summary>
    public const int TitleSize = 18;

    /// <summary>Where a title is broken into lines: so many bold letters fit the width of a picture.</summary>
    internal const int TitleLetters = 56;

    private const string PreferredFont = "DejaVu Sans";

    /// <summary>A standing amount: Okabe and Ito's blue.</summary>
    public static Color Standing { get; } = Color.FromHex("#0072B2");

    /// <summary>What is taken away: Okabe and Ito's vermillion.</summary>
    public static Color TakenAway { get; } = Color.FromHex("#D55E00");

    /// <summary>What is added: Okabe and Ito's bluish green.</summary>
    public static Color Added { get; } = Color.FromHex("#009E73");

    /// <summary>Text and axes.</summary>
    public static Color Ink { get; } = Color.FromHex("#222222");

    /// <summary>Lines that help the eye.</summary>
    public static Color Faint { get; } = Color.FromHex("#D9D9D9");

    /// <summary>The font of all text: DejaVu Sans where it is installed, else the drawing library's own choice.</summary>
    public static string Font { get; } =
        Fonts.GetTypeface(PreferredFont, FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal)?.FamilyName
            == PreferredFont ? PreferredFont : Fonts.Default;

    /// <summary>Gives a plot its title, fonts, ink and a frame of one line at the bottom.</summary>
    /// <param name="plot">The plot.</param>
    /// <param name="title">What the picture says; long titles are broken into lines.</param>
    internal static void Apply(Plot plot, string title)
    {
        plot.Font.Set(Font);
        plot.Title(Wrap(title, TitleLetters), TitleSize);
        plot.Axes.Title.FullFigureCenter = true;
        plot.Axes.Color(Ink);
        plot.Axes.Title.Label.ForeColor = Ink;
        plot.Axes.Left.FrameLineStyle.Width = 0;
        plot.Axes.Right.FrameLineStyle.Width = 0;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        foreach (IAxis axis in plot.Axes.GetAxes())
        {
            axis.TickLabelStyle.FontSize = TextSize;
            axis.Label.FontSize = TextSize;
            axis.Label.Bold = false;
        }

        plot.Grid.MajorLineColor = Faint;
    }

    /// <summary>Breaks a text at spaces into lines of at most so many letters; a longer word is broken too.</summary>
    internal static string Wrap(string text, int letters)
    {
        var lines = new List<string> { "" };
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(word => word.Chunk(letters))
            .Select(part => new string(part)))
        {
            if (lines[^1].Length == 0)
                lines[^1] = word;
            else if (lines[^1].Length + 1 + word.Length <= letters)
                lines[^1] += " " + word;
            else
                lines.Add(word);
        }

        return string.Join('\n', lines);
    }
}
