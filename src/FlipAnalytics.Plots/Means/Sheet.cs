using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>
/// A picture in the making. Everything is placed in pixels from the upper left corner, so that where each text stands is
/// known before anything is drawn. A plot takes a sheet, adds panels and words from top to bottom, and finishes it.
/// </summary>
internal sealed class Sheet
{
    private const int MostTitleLines = 3;
    private const float LineGap = 5;

    private readonly Plot top = Transparent();
    private readonly List<Plot> panels = [];
    private readonly List<Words> words = [];
    private readonly string title;
    private float filled;

    /// <summary>A sheet with its title.</summary>
    /// <param name="title">What the picture says, in a sentence.</param>
    /// <param name="explanation">What is drawn and what it rests on; null for none.</param>
    public Sheet(string title, string? explanation = null)
    {
        this.title = TextFitting.OneLine(title);
        Top = Style.Margin;
        AddLines(title, Lettering.Title, MostTitleLines);
        if (explanation is not null)
            AddLines(explanation, Lettering.Quiet, MostTitleLines);
        Top += LineGap;
    }

    /// <summary>Pixels from the left edge where drawing may begin.</summary>
    public static float Left => Style.Margin;

    /// <summary>Pixels from the left edge where drawing must end.</summary>
    public static float Right => Style.Width - Style.Margin;

    /// <summary>Pixels from the upper edge down to which the sheet is filled.</summary>
    public float Top { get; set; }

    /// <summary>A picture of a sentence, for when there is nothing to draw.</summary>
    /// <param name="title">What the picture would show.</param>
    /// <param name="sentence">Why there is nothing to see, and what would help.</param>
    public static Figure Sentence(string title, string sentence)
    {
        var sheet = new Sheet(title);
        sheet.AddLines(sentence, new(), 6);
        return sheet.Finish(sentence);
    }

    /// <summary>Adds a panel below what is there; its axes and their labels are drawn at once.</summary>
    /// <param name="layout">Axes, height and what room to leave.</param>
    public Panel AddPanel(PanelLayout layout)
    {
        Plot plot = Transparent();
        panels.Add(plot);
        var panel = new Panel(this, plot, layout, Top);
        filled = Math.Max(filled, panel.Outer.Bottom + LineGap);
        if (!layout.KeepsTop)
            Top = filled;
        return panel;
    }

    /// <summary>Adds a text.</summary>
    public Words Add(Words text)
    {
        words.Add(text);
        top.Add.Plottable(text);
        return text;
    }

    /// <summary>Adds a text only if it touches no other and stays inside a rectangle.</summary>
    /// <returns>Whether it was added.</returns>
    public bool TryAdd(Words text, PixelRect inside)
    {
        PixelRect rect = text.Rect;
        return rect.Left >= inside.Left && rect.Right <= inside.Right && rect.Top >= inside.Top && rect.Bottom <= inside.Bottom
            && TryAdd(text, text);
    }

    /// <summary>Adds a text only if a larger one in its place would touch no other.</summary>
    /// <returns>Whether it was added.</returns>
    public bool TryAdd(Words text, Words? withRoom = null)
    {
        if (words.Any((withRoom ?? text).Overlaps))
            return false;
        Add(text);
        return true;
    }

    /// <summary>Adds lines of text over the whole width below what is there.</summary>
    public void AddLines(string text, Lettering look, int mostLines)
    {
        string wrapped = TextFitting.Wrap(text, Right - Left, look, mostLines);
        if (wrapped.Length > 0)
            Top = Add(new Words(wrapped, Left, Top, Alignment.UpperLeft, look)).Rect.Bottom + LineGap;
    }

    /// <summary>Adds a straight line between pixels.</summary>
    public void Add(Pixel from, Pixel to, LineLook look) => top.Add.Plottable(new Stroke([from, to], look));

    /// <summary>Adds a sample of how one of several things looks: a piece of its line with its mark.</summary>
    public void AddSample(Series series, float left, float middle, float length)
    {
        Add(new(left, middle), new(left + length, middle), series.Line());
        top.Add.Plottable(new PixelMarks([new(left + length / 2, middle)], series.Mark(8)));
    }

    /// <summary>The finished picture.</summary>
    /// <param name="alternative">What the picture shows beyond its title, in sentences with its main numbers.</param>
    public Figure Finish(string alternative) => new(
        title, $"{title.TrimEnd('.')}. {TextFitting.OneLine(alternative)}".Trim(),
        (int)MathF.Ceiling(Math.Max(Top, filled) + Style.Margin - LineGap), [.. panels, top]);

    private static Plot Transparent()
    {
        var plot = new Plot();
        plot.FigureBackground.Color = Colors.Transparent;
        plot.DataBackground.Color = Colors.Transparent;
        plot.RenderManager.ClearCanvasBeforeEachRender = false;
        plot.HideGrid();
        plot.Axes.Frameless();
        return plot;
    }
}
