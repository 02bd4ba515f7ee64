using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>A text at a place of the picture that is known before anything is drawn. Every text is one of these.</summary>
internal sealed class Words : IPlottable
{
    private const float LetterDrop = 0.14f;

    private readonly Pixel anchor;
    private readonly LabelStyle style;

    /// <summary>A text.</summary>
    /// <param name="text">The text; lines are parted by line feeds.</param>
    /// <param name="x">Pixels from the left edge of the picture.</param>
    /// <param name="y">Pixels from its upper edge.</param>
    /// <param name="alignment">Which part of the text stands there.</param>
    /// <param name="look">Its look; null for ordinary text.</param>
    public Words(string text, float x, float y, Alignment alignment, Lettering? look = null)
    {
        look ??= new();
        // Letters stand on a line, above the middle of its height.
        if (alignment is Alignment.MiddleLeft or Alignment.MiddleCenter or Alignment.MiddleRight)
            y += LetterDrop * look.Size;
        anchor = new(x, y);
        Text = CleanText.Lines(text);
        style = look.ToStyle();
        style.Text = Text;
        style.Alignment = alignment;
        using var paint = Paint.NewDisposablePaint();
        Rect = style.Measure(paint).Rect(alignment).WithOffset(new(x, y));
    }

    public string Text { get; }

    /// <summary>Where it stands, in pixels of the picture.</summary>
    public PixelRect Rect { get; }

    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        rp.CanvasState.DisableClipping();
        style.Render(rp.Canvas, anchor, rp.Paint);
    }

    /// <summary>Whether two texts touch.</summary>
    public bool Overlaps(Words other) => Rect.Left < other.Rect.Right && other.Rect.Left < Rect.Right
        && Rect.Top < other.Rect.Bottom && other.Rect.Top < Rect.Bottom;
}
