using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests.Plots;

public sealed class LabelPlacerTests
{
    [Fact]
    public void LabelsThatDoNotTouchStayWhereTheyAreWanted() =>
        Assert.Equal([50, 20, 80], LabelPlacer.Spread([50, 20, 80], 10, 0, 100));

    [Fact]
    public void TwoThatCollideShareTheShift() => Assert.Equal([45, 55], LabelPlacer.Spread([50, 50], 10, 0, 100));

    // 40, 42, 44 at distance 10 with least squares: the mean stays 42.
    [Fact]
    public void ABlockOfThreeKeepsItsMean() => Assert.Equal([32, 42, 52], LabelPlacer.Spread([40, 42, 44], 10, 0, 100));

    [Fact]
    public void LabelsStayBetweenTheEnds() => Assert.Equal([85, 95, 5], LabelPlacer.Spread([99, 99, -7], 10, 0, 100));

    [Fact]
    public void AsManyAsThereIsRoomForFillTheLine() =>
        Assert.Equal([5, 15, 25], LabelPlacer.Spread([0, 0, 0], 10, 0, 30));

    [Fact]
    public void MoreThanThereIsRoomForAreRefused()
    {
        Assert.Equal(3, LabelPlacer.Room(10, 0, 39));
        var error = Assert.Throws<ArgumentException>(() => LabelPlacer.Spread([1, 2, 3, 4], 10, 0, 39));
        Assert.Contains("leave some out", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ATextIsCutWhereItsWidthEnds()
    {
        string cut = TextFitting.Shorten("a chest of drawers with turned feet", 120, Lettering.Small);
        Assert.EndsWith("…", cut, StringComparison.Ordinal);
        Assert.True(Lettering.Small.Measure(cut).Width <= 120);
        Assert.Equal("short", TextFitting.Shorten("short", 120, Lettering.Small));
    }

    [Fact]
    public void LinesAndControlCharactersBecomeSpaces() => Assert.Equal("a b", TextFitting.OneLine("a\nb\t"));

    [Theory]
    [InlineData(0, 97, 0, 100)]
    [InlineData(-3, 14, -5, 15)]
    [InlineData(5, 5, 4.4, 5.6)]
    [InlineData(0, 0, 0, 1)]
    public void AScaleEndsAtRoundNumbers(double low, double high, double first, double last)
    {
        Scale scale = Scale.Of([low, high]);
        Assert.Equal(first, scale.Low, 9);
        Assert.Equal(last, scale.High, 9);
        Assert.Equal(scale.Low, scale.Ticks[0].Value, 9);
        Assert.Equal(scale.High, scale.Ticks[^1].Value, 9);
    }

    [Fact]
    public void ADashedLineIsCutIntoDashes() => Assert.Equal(
        3, new LineLook(Style.Ink) { Dashes = [5, 3] } is var look ? new Stroke([new(0, 0), new(21, 0)], look).PieceCount : 0);
}
