using FlipAnalytics.Plots;

using ScottPlot;
using ScottPlot.Plottables;

namespace FlipAnalytics.Tests.Plots;

public sealed class WaterfallPlotTests
{
    private static readonly (string Item, double Amount)[] ADresser =
        [("sale price", 248), ("channel fees", -20), ("supplies", -31), ("hours", -134), ("most to pay", 63)];

    [Theory]
    [InlineData("waterfall.png", "\u0089PNG")]
    [InlineData("waterfall.SVG", "<?xml")]
    public void APictureIsWrittenInTheKindThatItsNameSays(string name, string firstLetters)
    {
        string folder = Directory.CreateTempSubdirectory("flip").FullName;
        try
        {
            string path = Path.Combine(folder, name);
            PlotFile.Save(WaterfallPlot.Of("Up to 63 you earn your 15 an hour", ADresser, "USD"), path);
            Assert.StartsWith(firstLetters, System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(path)), StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("waterfall.gif")]
    [InlineData("waterfall")]
    public void AnotherKindIsRefusedInASentence(string name)
    {
        var error = Assert.Throws<ArgumentException>(() => PlotFile.Save(WaterfallPlot.Of("", ADresser, ""), name));
        Assert.StartsWith($"'{name}' is no name for a picture: it must end in .png or .svg.", error.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(name));
    }

    [Theory]
    [InlineData(3, 1)]
    [InlineData(4, 1)]
    [InlineData(5, 1)]
    [InlineData(6, 1)]
    [InlineData(7, 1)]
    [InlineData(8, 1)]
    [InlineData(9, 1)]
    [InlineData(10, 1)]
    [InlineData(10, 1000)]
    [InlineData(10, 0.01)]
    [InlineData(6, -1)]
    public void NoTextOverlapsAnotherOrLeavesThePicture(int count, double scale)
    {
        Figure figure = WaterfallPlot.Of(
            "Most to pay for a six-drawer dresser in sage with a waxed top, bought at the far end of town on a wet day",
            LongSteps(count, scale),
            "USD for the whole piece");
        (string Text, PixelRect Box)[] texts = [.. TextBoxes(figure)];
        Assert.True(texts.Length >= (2 * count) + 4, "names, amounts, title, axis label and ticks");
        Assert.All(texts, text => Assert.True(
            text.Box.Left >= 0 && text.Box.Right <= figure.Width && text.Box.Top >= 0 && text.Box.Bottom <= figure.Height,
            $"'{text.Text}' leaves the picture: {text.Box}"));
        for (int i = 0; i < texts.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                Assert.False(
                    Overlap(texts[i].Box, texts[j].Box),
                    $"'{texts[i].Text}' {texts[i].Box} and '{texts[j].Text}' {texts[j].Box} overlap.");
            }
        }
    }

    [Fact]
    public void EveryAmountStandsBesideItsBarWithItsSign() => Assert.Equal(
        ["248", "\u221220", "\u221231", "\u2212134", "63"],
        WaterfallPlot.Of("", ADresser, "").Plot.GetPlottables<Text>().Select(text => text.LabelStyle.Text));

    [Fact]
    public void ALossIsShownBelowZero() => Assert.Equal(
        ["100", "+5.50", "\u2212140.25", "\u221234.75"],
        WaterfallPlot.Of("", [("sale price", 100), ("delivery", 5.5), ("hours", -140.25), ("left", -34.75)], "")
            .Plot.GetPlottables<Text>().Select(text => text.LabelStyle.Text.Replace("100.00", "100", StringComparison.Ordinal)));

    [Fact]
    public void StepsThatDoNotAddUpAreRefused()
    {
        var error = Assert.Throws<ArgumentException>(
            () => WaterfallPlot.Of("", [("sale price", 100), ("hours", -30), ("most to pay", 60)], ""));
        Assert.Contains("add up to 70 but 'most to pay' is 60", error.Message, StringComparison.Ordinal);
    }

    private static List<(string Item, double Amount)> LongSteps(int count, double scale)
    {
        var steps = new List<(string Item, double Amount)> { ("sale price that a buyer would likely pay for it", 1248 * scale) };
        for (int i = 0; i < count - 2; i++)
            steps.Add(($"supplies such as undercoat, paint and hardware, part {i}", (i % 3 == 1 ? 45 : -160) * scale));
        steps.Add(("most to pay so that every hour earns the target wage", steps.Sum(step => step.Amount)));
        return steps;
    }

    /// <summary>Where each text stands after drawing: measured in its own style at its own anchor.</summary>
    private static IEnumerable<(string Text, PixelRect Box)> TextBoxes(Figure figure)
    {
        Plot plot = figure.Plot;
        plot.RenderInMemory(figure.Width, figure.Height);
        using var paint = Paint.NewDisposablePaint();
        foreach (Text text in plot.GetPlottables<Text>())
            yield return (text.LabelStyle.Text, text.LabelStyle.LastRenderPixelRect);
        foreach (IAxis axis in new IAxis[] { plot.Axes.Left, plot.Axes.Bottom })
        {
            PixelRect data = plot.LastRender.DataRect;
            foreach (Tick tick in axis.TickGenerator.Ticks.Where(tick => tick.IsMajor && tick.Label.Length > 0))
            {
                PixelSize size = axis.TickLabelStyle.Measure(tick.Label, paint).Size;
                float along = axis.GetPixel(tick.Position, data);
                yield return (tick.Label, axis is IYAxis
                    ? new(data.Left - size.Width, data.Left, along + (size.Height / 2), along - (size.Height / 2))
                    : new(along - (size.Width / 2), along + (size.Width / 2), data.Bottom + size.Height, data.Bottom));
            }
        }

        yield return (plot.Axes.Bottom.Label.Text, plot.Axes.Bottom.Label.LastRenderPixelRect);
        yield return (plot.Axes.Title.Label.Text, plot.Axes.Title.Label.LastRenderPixelRect);
    }

    private static bool Overlap(PixelRect one, PixelRect other) =>
        one.Left < other.Right && other.Left < one.Right && one.Top < other.Bottom && other.Top < one.Bottom;
}
