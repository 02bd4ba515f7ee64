using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests.Plots;

public sealed class WaterfallPlotTests
{
    private static readonly Workshop Dollars = new() { Symbol = "$" };

    private static readonly WaterfallStep[] ADresser =
        [new("sale price", 248), new("channel fees", -20), new("supplies", -31), new("hours", -134), new("most to pay", 63)];

    [Theory]
    [InlineData("waterfall.png", "\u0089PNG")]
    [InlineData("waterfall.SVG", "<?xml")]
    public void APictureIsWrittenInTheKindThatItsNameSays(string name, string firstLetters)
    {
        string folder = Directory.CreateTempSubdirectory("flip").FullName;
        try
        {
            string path = Path.Combine(folder, name);
            PlotFile.Save(WaterfallPlot.Of("Up to 63 you earn your 15 an hour", ADresser, "USD", Dollars), path);
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
        var error = Assert.Throws<ArgumentException>(() => PlotFile.Save(WaterfallPlot.Of("A dresser", ADresser, "USD", Dollars), name));
        Assert.StartsWith($"'{name}' is no name for a picture: it must end in .png or .svg.", error.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(name));
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 1)]
    [InlineData(7, 1)]
    [InlineData(10, 1)]
    [InlineData(10, 1000)]
    [InlineData(10, 0.01)]
    [InlineData(6, -1)]
    [InlineData(40, 1)]
    public void NoTextOverlapsAnotherOrLeavesThePicture(int count, double scale)
    {
        Figure figure = WaterfallPlot.Of(
            "Most to pay for a six-drawer dresser in sage with a waxed top, bought at the far end of town on a wet day",
            LongSteps(count, (decimal)scale),
            "USD for the whole piece",
            Dollars);
        LayoutCheck.IsReadable(figure);
        Assert.True(figure.Texts.Count() >= (2 * count) + 3, "names, amounts, title, axis label and ticks");
    }

    [Fact]
    public void WithoutStepsThereIsASentence() =>
        Assert.Equal("There are no amounts to show.", LayoutCheck.Sentence(WaterfallPlot.Of("Most to pay", [], "USD", Dollars)));

    [Fact]
    public void EveryAmountStandsBesideItsBarWithItsSign() => Assert.Superset(
        new HashSet<string> { "$248", "-$20", "-$31", "-$134", "$63" },
        Texts(WaterfallPlot.Of("A dresser", ADresser, "USD", Dollars)));

    [Fact]
    public void ALossIsShownBelowZero() => Assert.Superset(
        new HashSet<string> { "$100.00", "+$5.50", "-$140.25", "-$34.75" },
        Texts(WaterfallPlot.Of("A loss", [new("sale price", 100), new("delivery", 5.5m), new("hours", -140.25m), new("left", -34.75m)], "USD", Dollars)));

    [Fact]
    public void TheAlternativeTextSaysTheSameAmounts() => Assert.Equal(
        "A dresser. sale price $248, channel fees -$20, supplies -$31, hours -$134, most to pay $63; USD.",
        WaterfallPlot.Of("A dresser", ADresser, "USD", Dollars).Alternative);

    [Fact]
    public void StepsThatDoNotAddUpAreRefused()
    {
        var error = Assert.Throws<ArgumentException>(
            () => WaterfallPlot.Of("", [new("sale price", 100), new("hours", -30), new("most to pay", 60)], "", Dollars));
        Assert.Contains("add up to 70 but 'most to pay' is 60", error.Message, StringComparison.Ordinal);
    }

    private static HashSet<string> Texts(Figure figure) => [.. figure.Texts.Select(text => text.Text)];

    private static List<WaterfallStep> LongSteps(int count, decimal scale)
    {
        var steps = new List<WaterfallStep> { new("sale price that a buyer would likely pay for it", 1248 * scale) };
        for (int i = 0; i < count - 2; i++)
            steps.Add(new($"supplies such as undercoat, paint and hardware, part {i}", (i % 3 == 1 ? 45 : -160) * scale));
        steps.Add(new("most to pay so that every hour earns the target wage", steps.Sum(step => step.Amount)));
        return steps;
    }
}
