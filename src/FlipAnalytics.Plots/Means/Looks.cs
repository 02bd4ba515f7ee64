using System.Collections.Immutable;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>How a line looks.</summary>
/// <param name="Color">Colour.</param>
/// <param name="Width">Width in pixels.</param>
internal sealed record LineLook(Color Color, float Width = 1)
{
    /// <summary>Lengths of dashes and gaps in turn, in pixels; empty for an unbroken line.</summary>
    public ImmutableArray<float> Dashes { get; init; } = [];

    /// <summary>Where a value would stand if all were well: zero, or alike on both axes.</summary>
    public static LineLook Reference { get; } = new(Style.Ink, 1.2f) { Dashes = [7, 5] };
}

/// <summary>How one of several things looks.</summary>
/// <param name="Color">Its colour.</param>
/// <param name="Marker">Shape of its marks.</param>
internal sealed record Series(Color Color, MarkerShape Marker)
{
    /// <summary>Lengths of dashes and gaps of its line, in pixels; empty for an unbroken line.</summary>
    public ImmutableArray<float> Dashes { get; init; } = [];

    /// <summary>Its line.</summary>
    public LineLook Line(float width = 2) => new(Color, width) { Dashes = Dashes };

    /// <summary>Its mark.</summary>
    public MarkerStyle Mark(float size)
    {
        bool open = Marker.ToString().StartsWith("Open", StringComparison.Ordinal);
        return new(Marker, size, Color)
        {
            FillColor = Color,
            LineColor = Color,
            LineWidth = open ? 1.5f : 1,
            OutlineColor = Color,
            OutlineWidth = open ? 1.5f : 0,
        };
    }
}

/// <summary>The look of a text.</summary>
/// <param name="Size">Height in pixels.</param>
/// <param name="Bold">Whether it is bold.</param>
internal sealed record Lettering(float Size = Style.TextSize, bool Bold = false)
{
    public static Lettering Title { get; } = new(Style.TitleSize, Bold: true);

    public static Lettering Heading { get; } = new(Bold: true);

    public static Lettering Small { get; } = new(Style.SmallTextSize);

    public static Lettering Quiet { get; } = new(Style.SmallTextSize) { Color = Style.QuietInk };

    /// <summary>Small text with a pale ground, so that lines behind it do not cross it out.</summary>
    public static Lettering OnLines { get; } = new(Style.SmallTextSize) { Ground = Colors.White.WithAlpha(0.75) };

    public Color Color { get; init; } = Style.Ink;

    /// <summary>What lies behind the letters.</summary>
    public Color Ground { get; init; } = Colors.Transparent;

    public LabelStyle ToStyle() => new()
    {
        FontName = Style.Font,
        FontSize = Size,
        Bold = Bold,
        ForeColor = Color,
        BackgroundColor = Ground,
    };

    /// <summary>Width and height of a text in pixels.</summary>
    public PixelSize Measure(string text)
    {
        using var paint = Paint.NewDisposablePaint();
        return ToStyle().Measure(text, paint).Size;
    }
}
