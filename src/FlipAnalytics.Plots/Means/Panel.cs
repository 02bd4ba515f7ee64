using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>An area with two axes. Marks are given in the units of the axes and cut off at the area's edges.</summary>
internal sealed class Panel
{
    private const float TickGap = 6;
    private const float BelowAxis = 11;
    private const float BelowYLabel = 9;
    private const float SampleLength = 26;
    private const float LabelHeight = 19;

    private readonly Sheet sheet;
    private readonly Plot plot;
    private readonly PanelLayout layout;
    private readonly List<Pixel> marks = [];

    internal Panel(Sheet sheet, Plot plot, PanelLayout layout, float top)
    {
        this.sheet = sheet;
        this.plot = plot;
        this.layout = layout;
        float left = layout.Left + (layout.NameColumn ?? layout.Y.LabelWidth + TickGap);
        float right = layout.Right - layout.Gutter;
        float outerTop = top;
        if (layout.Heading is { } heading)
            top = Above(heading, Lettering.Heading, top);
        if (layout.YLabel.Length > 0)
            top = Above(layout.YLabel, Lettering.Quiet, top);
        // The label of the highest tick needs half its height.
        if (top > outerTop)
            top += BelowYLabel;
        Area = new(left, right, top + layout.Height, top);
        plot.Layout.Fixed(Area);
        plot.Axes.SetLimits(
            layout.X.Place(layout.X.Low), layout.X.Place(layout.X.High),
            layout.Y.Place(layout.Y.Low), layout.Y.Place(layout.Y.High));
        DrawYAxis();
        Outer = new(layout.Left, layout.Right, DrawXAxis(), outerTop);
    }

    /// <summary>Where the data are drawn, in pixels.</summary>
    public PixelRect Area { get; }

    /// <summary>The area with everything that belongs to it.</summary>
    public PixelRect Outer { get; }

    /// <summary>The level axis.</summary>
    public Scale X => layout.X;

    /// <summary>The upright axis.</summary>
    public Scale Y => layout.Y;

    private float RoomForNames => Area.Left - layout.Left - 2 * TickGap;

    /// <summary>The value so many pixels to the right of another.</summary>
    public double Beside(double x, float pixels) => x + pixels / Area.Width * (layout.X.High - layout.X.Low);

    /// <summary>A value of the level axis in pixels.</summary>
    public float PixelX(double x) => Area.Left + (float)layout.X.Share(x) * Area.Width;

    /// <summary>A value of the upright axis in pixels.</summary>
    public float PixelY(double y) => Area.Bottom - (float)layout.Y.Share(y) * Area.Height;

    /// <summary>A line through points.</summary>
    public void Line(IEnumerable<(double X, double Y)> points, LineLook look)
    {
        Pixel[] path = Places(points);
        if (path.Length >= 2)
            plot.Add.Plottable(new Stroke(path, look, Area.Expand(look.Width / 2)));
    }

    /// <summary>A line through points that stays level from each to the next.</summary>
    public void Steps(IEnumerable<(double X, double Y)> points, LineLook look)
    {
        var corners = new List<(double X, double Y)>();
        foreach (var point in points)
        {
            if (corners.Count > 0)
                corners.Add((point.X, corners[^1].Y));
            corners.Add(point);
        }

        Line(corners, look);
    }

    /// <summary>A shaded band between two heights.</summary>
    public void Band(IEnumerable<(double X, double Low, double High)> range, Color color, double opacity = 0.18)
    {
        var points = range.Where(p => double.IsFinite(p.Low + p.High)).ToArray();
        if (points.Length < 2)
            return;
        var band = plot.Add.FillY(
            [.. points.Select(p => layout.X.Place(p.X))],
            [.. points.Select(p => layout.Y.Place(p.Low))],
            [.. points.Select(p => layout.Y.Place(p.High))]);
        band.FillColor = color.WithAlpha(opacity);
        band.LineWidth = 0;
        band.MarkerSize = 0;
    }

    /// <summary>Marks at points; those outside the axes are left out.</summary>
    public void Marks(IEnumerable<(double X, double Y)> points, Series series, float size = 8)
    {
        Pixel[] places = [.. Places(points).Where(Area.Expand(1).Contains)];
        marks.AddRange(places);
        plot.Add.Plottable(new PixelMarks(places, series.Mark(size)));
    }

    /// <summary>A bar of a thickness in pixels along the level axis.</summary>
    public void Bar(double from, double to, double row, float thickness, Color color)
    {
        double half = thickness / Area.Height * (layout.Y.High - layout.Y.Low) / 2;
        var bar = plot.Add.Rectangle(from, to, row - half, row + half);
        bar.FillColor = color;
        bar.LineWidth = 0;
    }

    /// <summary>An upright line over the whole height.</summary>
    public void Upright(double x, LineLook look) =>
        sheet.Add(new(PixelX(x), Area.Top), new(PixelX(x), Area.Bottom), look);

    /// <summary>
    /// Names things beside the right edge of the area, as near their ends as there is room: a sample of each one's line
    /// with its name. What does not fit is counted.
    /// </summary>
    public void NameAtRight(IReadOnlyList<(string Name, double Y, Series Series)> ends)
    {
        int room = LabelPlacer.Room(LabelHeight, Area.Top, Area.Bottom);
        int shown = ends.Count <= room ? ends.Count : room - 1;
        List<float> wanted = [.. ends.Take(shown).Select(end => PixelY(end.Y))];
        if (shown < ends.Count)
            wanted.Add(Area.Bottom);
        float[] middles = LabelPlacer.Spread(wanted, LabelHeight, Area.Top, Area.Bottom);
        float left = Area.Right + TickGap;
        for (int i = 0; i < shown; i++)
        {
            sheet.AddSample(ends[i].Series, left, middles[i], SampleLength);
            float textLeft = left + SampleLength + TickGap;
            string name = TextFitting.Shorten(ends[i].Name, layout.Right - textLeft, Lettering.Small);
            sheet.Add(new Words(name, textLeft, middles[i], Alignment.MiddleLeft, Lettering.Small));
        }

        if (shown < ends.Count)
        {
            sheet.Add(new Words(
                FormattableString.Invariant($"and {ends.Count - shown} more"), left, middles[^1], Alignment.MiddleLeft, Lettering.Quiet));
        }
    }

    /// <summary>A name to the left of a row, shortened to the room there.</summary>
    public void NameRow(string name, double row, int mostLines) => sheet.Add(new Words(
        TextFitting.Wrap(name, RoomForNames, new(), mostLines), Area.Left - 2 * TickGap, PixelY(row), Alignment.MiddleRight));

    /// <summary>A name to the left of a row, shortened so that what follows it is there in full.</summary>
    public void NameRow(string name, double row, string followedBy) => sheet.Add(new Words(
        TextFitting.Shorten(name, RoomForNames - new Lettering().Measure(followedBy).Width, new()) + followedBy,
        Area.Left - 2 * TickGap, PixelY(row), Alignment.MiddleRight));

    /// <summary>A text that begins at a point, broken into lines where it would leave the panel.</summary>
    public void Write(string text, double x, double y, float gap = 6, Lettering? look = null, int wrapTo = 1)
    {
        look ??= Lettering.Small;
        float left = PixelX(x) + gap;
        sheet.Add(new Words(
            TextFitting.Wrap(text, layout.Right - left, look, wrapTo), left, PixelY(y), Alignment.MiddleLeft, look));
    }

    /// <summary>
    /// Texts to the right of points, moved apart up or down so that none overlap; a thin line leads to each that moved.
    /// </summary>
    /// <param name="points">The texts with their points.</param>
    /// <param name="gap">Pixels from the point to the text.</param>
    /// <param name="lift">Pixels by which texts stand higher than their points.</param>
    public void WriteBeside(IReadOnlyList<(string Text, double X, double Y)> points, float gap = 8, float lift = 0)
    {
        float[] middles = LabelPlacer.Spread(
            [.. points.Select(point => PixelY(point.Y) - lift)], LabelHeight, Area.Top, Area.Bottom);
        for (int i = 0; i < points.Count; i++)
        {
            var (text, x, y) = points[i];
            float left = Math.Min(PixelX(x) + gap, layout.Right - Lettering.Small.Measure(text).Width);
            if (Math.Abs(middles[i] - PixelY(y)) > LabelHeight / 3)
                sheet.Add(new(PixelX(x), PixelY(y)), new(left - 2, middles[i]), new(Style.QuietInk));
            sheet.Add(new Words(text, left, middles[i], Alignment.MiddleLeft, Lettering.OnLines));
        }
    }

    /// <summary>A text above a point and to its right; left out where it would touch another.</summary>
    public void TryNameAbove(string text, double x, double y) => sheet.TryAdd(
        new(text, PixelX(x) + 5, PixelY(y) - 3, Alignment.LowerLeft, Lettering.OnLines));

    /// <summary>
    /// A text beside a point, at the first of several places where it touches no other text and, if there is such a
    /// place, hides no mark; left out if there is none.
    /// </summary>
    public bool TryName(string text, double x, double y, float gap = 8)
    {
        float px = PixelX(x), py = PixelY(y);
        Words[] places =
        [
            .. new (float X, float Y, Alignment Part)[]
            {
                (px + gap, py, Alignment.MiddleLeft), (px - gap, py, Alignment.MiddleRight),
                (px, py - gap, Alignment.LowerCenter), (px, py + gap, Alignment.UpperCenter),
                (px + gap, py - gap, Alignment.LowerLeft), (px - gap, py - gap, Alignment.LowerRight),
                (px + gap, py + gap, Alignment.UpperLeft), (px - gap, py + gap, Alignment.UpperRight),
            }.Select(place => new Words(TextFitting.OneLine(text), place.X, place.Y, place.Part, Lettering.OnLines)),
        ];
        return places.Where(place => !marks.Any(place.Rect.Expand(4).Contains)).Concat(places)
            .Any(place => sheet.TryAdd(place, Area.Expand(4)));
    }

    private float Above(string text, Lettering look, float top) => sheet.Add(new Words(
        TextFitting.Shorten(text, layout.Right - layout.Left, look), layout.Left, top, Alignment.UpperLeft, look)).Rect.Bottom + 2;

    private void DrawYAxis()
    {
        foreach (var (value, label) in layout.Y.Ticks)
        {
            float y = PixelY(value);
            if (layout.LinesAcross)
                plot.Add.Plottable(new Stroke([new(Area.Left, y), new(Area.Right, y)], new(Style.Faint)));
            sheet.TryAdd(new(label, Area.Left - TickGap, y, Alignment.MiddleRight, Lettering.Small));
        }
    }

    private float DrawXAxis()
    {
        foreach (float x in layout.X.Ticks.Where(_ => layout.LinesUp).Select(tick => PixelX(tick.Value)))
            plot.Add.Plottable(new Stroke([new(x, Area.Bottom), new(x, Area.Top)], new(Style.Faint)));
        sheet.Add(Area.BottomLeft, Area.BottomRight, new(Style.Ink));
        float bottom = Area.Bottom;
        foreach (var (value, label) in layout.X.Ticks)
        {
            var text = new Words(
                label, Held(PixelX(value), Lettering.Small.Measure(label).Width), Area.Bottom + BelowAxis,
                Alignment.UpperCenter, Lettering.Small);
            // A neighbour needs a gap, or two numbers read as one.
            var withGap = new Words("n" + label + "n", text.Rect.HorizontalCenter, text.Rect.Top, Alignment.UpperCenter, Lettering.Small);
            if (sheet.TryAdd(text, withGap))
                sheet.Add(new(PixelX(value), Area.Bottom), new(PixelX(value), Area.Bottom + 4), new(Style.Ink));
            bottom = Math.Max(bottom, text.Rect.Bottom);
        }

        if (layout.XLabel.Length == 0)
            return bottom;
        string shortened = TextFitting.Shorten(layout.XLabel, layout.Right - layout.Left, Lettering.Quiet);
        return sheet.Add(new Words(
            shortened, Held(Area.HorizontalCenter, Lettering.Quiet.Measure(shortened).Width), bottom + 3,
            Alignment.UpperCenter, Lettering.Quiet)).Rect.Bottom;
    }

    // The middle of a text of this width, moved so far that it stays on the panel.
    private float Held(float middle, float width) =>
        Math.Clamp(middle, layout.Left + width / 2, Math.Max(layout.Left + width / 2, layout.Right - width / 2));

    private Pixel[] Places(IEnumerable<(double X, double Y)> points) =>
        [.. points.Select(p => new Pixel(PixelX(p.X), PixelY(p.Y))).Where(p => float.IsFinite(p.X) && float.IsFinite(p.Y))];
}
