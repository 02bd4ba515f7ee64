using System.Collections.Immutable;
using System.Security;
using System.Text;
using ScottPlot;
using SkiaSharp;

namespace FlipAnalytics.Plots;

/// <summary>A picture with its size and the words that stand in for it.</summary>
public sealed class Figure
{
    private readonly ImmutableArray<Plot> layers;

    internal Figure(string title, string alternative, int height, ImmutableArray<Plot> layers)
    {
        Title = title;
        Alternative = alternative;
        Height = height;
        this.layers = layers;
        // A layer is drawn twice the first time, which would darken what is see-through and write each text twice.
        using var nowhere = new SKNoDrawCanvas(Width, Height);
        foreach (Plot layer in layers)
            layer.Render(nowhere, new PixelRect(0, Width, Height, 0));
    }

    /// <summary>What the picture says, in a sentence.</summary>
    public string Title { get; }

    /// <summary>The title and the picture's main numbers, for those who do not see it.</summary>
    public string Alternative { get; }

    /// <summary>Width in pixels.</summary>
    public int Width => Style.Width;

    /// <summary>Height in pixels; it grows with what is shown.</summary>
    public int Height { get; }

    /// <summary>Every text of the picture with the rectangle it stands in.</summary>
    internal IEnumerable<Words> Texts => layers.SelectMany(layer => layer.GetPlottables<Words>());

    /// <summary>The picture as a PNG file.</summary>
    public byte[] Png()
    {
        using SKSurface surface = Drawing.CreateSurface(Width, Height);
        Draw(surface.Canvas);
        using SKImage image = surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    /// <summary>The picture as an SVG file that carries its alternative text.</summary>
    public string Svg()
    {
        using var file = new MemoryStream();
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, Height), file))
            Draw(canvas);
        string xml = Encoding.UTF8.GetString(file.ToArray());
        int root = xml.IndexOf("<svg", StringComparison.Ordinal) + "<svg".Length;
        int inside = xml.IndexOf('>', root);
        return string.Concat(
            xml.AsSpan(0, root),
            FormattableString.Invariant(
                $" role=\"img\" aria-labelledby=\"title desc\" viewBox=\"0 0 {Width} {Height}\""),
            xml.AsSpan(root, inside + 1 - root),
            $"<title id=\"title\">{SecurityElement.Escape(Title)}</title><desc id=\"desc\">{SecurityElement.Escape(Alternative)}</desc>"
            + xml[(inside + 1)..]);
    }

    private void Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        foreach (Plot layer in layers)
            layer.Render(canvas, new PixelRect(0, Width, Height, 0));
    }
}
