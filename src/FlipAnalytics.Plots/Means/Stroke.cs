using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>
/// A line through pixels of the picture. Dashes are laid out here, one stroke each, because the SVG writer of the drawing
/// library leaves them out.
/// </summary>
internal sealed class Stroke : IPlottable
{
    private readonly List<PixelLine> pieces = [];
    private readonly LineStyle style;
    private readonly PixelRect? inside;

    /// <summary>A line.</summary>
    /// <param name="path">Its corners.</param>
    /// <param name="look">Colour, width in pixels and lengths of dashes and gaps in turn; none for an unbroken line.</param>
    /// <param name="inside">Where it is cut off; null for nowhere.</param>
    public Stroke(IReadOnlyList<Pixel> path, LineLook look, PixelRect? inside = null)
    {
        style = new(look.Width, look.Color);
        this.inside = inside;
        if (look.Dashes.IsEmpty)
            pieces.AddRange(path.Zip(path.Skip(1), (from, to) => new PixelLine(from, to)));
        else
            AddDashes(path, look);
    }

    /// <summary>Strokes it is drawn with: one a side, or one a dash and side.</summary>
    public int PieceCount => pieces.Count;

    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        rp.CanvasState.DisableClipping();
        rp.Canvas.Save();
        if (inside is { } rect)
            rp.Canvas.ClipRect(rect.ToSKRect());
        style.Render(rp.Canvas, [.. pieces], rp.Paint);
        rp.Canvas.Restore();
    }

    private void AddDashes(IReadOnlyList<Pixel> path, LineLook look)
    {
        int part = 0;
        float left = look.Dashes[0];
        for (int i = 1; i < path.Count; i++)
        {
            Pixel from = path[i - 1], to = path[i];
            float length = MathF.Sqrt((to.X - from.X) * (to.X - from.X) + (to.Y - from.Y) * (to.Y - from.Y)), done = 0;
            while (done < length)
            {
                float step = Math.Min(left, length - done);
                if (part % 2 == 0)
                    pieces.Add(new(Along(from, to, done / length), Along(from, to, (done + step) / length)));
                done += step;
                left -= step;
                if (left <= 0)
                    left = look.Dashes[++part % look.Dashes.Length];
            }
        }
    }

    private static Pixel Along(Pixel from, Pixel to, float share) =>
        new(from.X + share * (to.X - from.X), from.Y + share * (to.Y - from.Y));
}

/// <summary>Marks at pixels of the picture, whole also where they stand on the edge of an area.</summary>
internal sealed class PixelMarks(IReadOnlyList<Pixel> places, MarkerStyle style) : IPlottable
{
    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        rp.CanvasState.DisableClipping();
        foreach (Pixel place in places)
            style.Render(rp.Canvas, place, rp.Paint);
    }
}
