using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>A line between pixels of the picture, also outside the area of the data: axes and samples of lines.</summary>
internal sealed class Stroke(PixelLine line, LineStyle style) : IPlottable
{
    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        rp.CanvasState.DisableClipping();
        style.Render(rp.Canvas, line, rp.Paint);
    }
}

/// <summary>A mark at a pixel of the picture, also outside the area of the data.</summary>
internal sealed class PixelMark(Pixel place, MarkerStyle style) : IPlottable
{
    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        rp.CanvasState.DisableClipping();
        style.Render(rp.Canvas, place, rp.Paint);
    }
}
