using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests.Plots;

public sealed class ReadablePlotTests
{
    public static TheoryData<string, int, bool> Everything()
    {
        var data = new TheoryData<string, int, bool>();
        foreach (string plot in Plots.Keys)
        {
            foreach (int count in new[] { 1, 2, 3, 5, 40 })
            {
                data.Add(plot, count, false);
                data.Add(plot, count, true);
            }
        }

        return data;
    }

    private static readonly Dictionary<string, Func<int, bool, Figure>> Plots = new()
    {
        ["survival"] = (count, isLong) => SurvivalPlot.Of(MadeUp.Curves(count, isLong)),
        ["intervals"] = (count, isLong) => IntervalPlot.Of(MadeUp.Effects(count, isLong)),
        ["price"] = (count, isLong) => PricePlot.Of(MadeUp.Prices(count, isLong)),
        ["actual"] = (count, isLong) => ActualPlot.Of(MadeUp.Check(count, isLong)),
        ["residuals"] = (count, isLong) => ResidualPlot.Of(MadeUp.Check(count, isLong)),
        ["coverage"] = (count, isLong) => CoveragePlot.Of(MadeUp.Check(count, isLong)),
        ["asking"] = (count, isLong) => AskingPlot.Of(MadeUp.Asking(count, isLong), new()),
        ["wages"] = (count, isLong) => WagePlot.Of(MadeUp.Wages(count, isLong)),
        ["quarter"] = (count, isLong) => QuarterPlot.Of(MadeUp.Quarter(count, isLong)),
        ["log"] = (count, isLong) => LogPlot.Of(MadeUp.Filling(count, isLong)),
    };

    [Theory]
    [MemberData(nameof(Everything))]
    public void NoTextOverlapsAnotherOrLeavesThePicture(string plot, int count, bool longNames) =>
        LayoutCheck.IsReadable(Plots[plot](count, longNames));

    [Theory]
    [InlineData("survival", "No piece with a color has a listing date yet.")]
    [InlineData("intervals", "No logged piece tells yet what the color does to sale price.")]
    [InlineData("price", "No sold group 0 has a width yet.")]
    [InlineData("actual", "There are too few logged pieces")]
    [InlineData("residuals", "There are too few logged pieces")]
    [InlineData("coverage", "There are too few logged pieces")]
    [InlineData("asking", "No piece has both a listing date and an asking price.")]
    [InlineData("wages", "Nothing is sold yet")]
    [InlineData("quarter", "In 2026-Q1 you sold nothing. No costs fell into it. No piece was in stock")]
    [InlineData("log", "No piece is written down yet")]
    public void WithoutDataThereIsASentenceInsteadOfEmptyAxes(string plot, string beginning) =>
        Assert.StartsWith(beginning, LayoutCheck.Sentence(Plots[plot](0, false)), StringComparison.Ordinal);

    [Theory]
    [InlineData(0.001)]
    [InlineData(1)]
    [InlineData(1e5)]
    public void AxesFitTheAmountsOfAnyCurrency(double scale)
    {
        LayoutCheck.IsReadable(PricePlot.Of(MadeUp.Prices(6, scale: (decimal)scale)));
        LayoutCheck.IsReadable(QuarterPlot.Of(MadeUp.Quarter(6, scale: (decimal)scale)));
    }

    [Fact]
    public void AForestOfFortyRowsIsAsHighAsItNeedsAndNamesEach()
    {
        Figure few = IntervalPlot.Of(MadeUp.Effects(4)), many = IntervalPlot.Of(MadeUp.Effects(40));
        Assert.True(many.Height > few.Height + 36 * 20);
        Assert.All(Enumerable.Range(0, 40), i => Assert.Contains(
            many.Texts, text => text.Text.StartsWith($"group {i} (", StringComparison.Ordinal)));
    }

    [Fact]
    public void SixOfFortyCurvesAreDrawnAndTheRestIsCounted()
    {
        Figure figure = SurvivalPlot.Of(MadeUp.Curves(40));
        Assert.Contains(figure.Texts, text => text.Text.ReplaceLineEndings(" ").Contains("34 more, with fewer pieces", StringComparison.Ordinal));
        Assert.Equal(6, figure.Texts.Count(text => text.Text.Contains(": half ", StringComparison.Ordinal)));
    }

    [Fact]
    public void PiecesBeyondTheSixteenthAreCounted() => Assert.Contains(
        AskingPlot.Of(MadeUp.Asking(40), new()).Texts, text => text.Text == "and 24 more");

    [Fact]
    public void ALongNameEndsInAnEllipsisAndItsCountStays() => Assert.Contains(
        IntervalPlot.Of(MadeUp.Effects(1, isLong: true)).Texts,
        text => text.Text.EndsWith("… (1)", StringComparison.Ordinal));

    [Fact]
    public void TheHeadlineOfCurvesNamesTheFastestAndTheSlowestOnlyWhereTheyClearlyDiffer()
    {
        MarketCurves clear = MadeUp.Curves(3);
        Assert.StartsWith("Half of group ", SurvivalPlot.Of(clear).Title, StringComparison.Ordinal);
        Assert.Equal(
            "How fast pieces sell does not clearly differ by color", SurvivalPlot.Of(clear with { DifferenceP = 0.3 }).Title);
    }

    [Fact]
    public void RangesThatHoldTooSeldomAreCalledTooNarrow()
    {
        ModelCheck check = MadeUp.Check(40);
        Assert.Equal("80 % ranges of sale price held 32 of 40 times, 80 %", CoveragePlot.Of(check).Title);
        Assert.EndsWith("too narrow", CoveragePlot.Of(check with
        {
            Coverage = [new(0.8, 20, 40, 0.5, new(0.35, 0.65))],
        }).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePieceThatPullsHardIsNamed()
    {
        Assert.StartsWith("group 39 pulls hard on the sale price model", ResidualPlot.Of(MadeUp.Check(40)).Title, StringComparison.Ordinal);
        Assert.StartsWith("No single piece decides", ResidualPlot.Of(MadeUp.Check(9)).Title, StringComparison.Ordinal);
    }
}
