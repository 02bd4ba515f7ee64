using FlipAnalytics.Statistics;

namespace FlipAnalytics.Tests.Models;

/// <summary>The hex values of names are those of CSS Color Module Level 4, the others made up.</summary>
public sealed class ColourLookTests
{
    [Theory]
    [InlineData("#ffffff", "white")] // white
    [InlineData("#fffff0", "white")] // ivory
    [InlineData("#000000", "black")] // black
    [InlineData("#808080", "gray")] // gray
    [InlineData("#d3d3d3", "gray")] // lightgray
    [InlineData("#2f4f4f", "blue")] // darkslategray, a deep blue-green
    [InlineData("#ff0000", "red")] // red
    [InlineData("#800000", "red")] // maroon
    [InlineData("#dc143c", "red")] // crimson
    [InlineData("#ffa500", "orange")] // orange
    [InlineData("#ff7f50", "orange")] // coral
    [InlineData("#8b4513", "brown")] // saddlebrown
    [InlineData("#d2b48c", "brown")] // tan
    [InlineData("#ffff00", "yellow")] // yellow
    [InlineData("#ffd700", "yellow")] // gold
    [InlineData("#808000", "green")] // olive
    [InlineData("#008000", "green")] // green
    [InlineData("#8fbc8f", "green")] // darkseagreen
    [InlineData("#0000ff", "blue")] // blue
    [InlineData("#000080", "blue")] // navy
    [InlineData("#87ceeb", "blue")] // skyblue
    [InlineData("#800080", "purple")] // purple
    [InlineData("#9370db", "purple")] // mediumpurple
    [InlineData("#ffc0cb", "pink")] // pink
    [InlineData("#ff00ff", "pink")] // magenta
    public void AColorIsCalledWhatMostWouldCallIt(string hex, string family) =>
        Assert.Equal(family, ColourLook.FamilyOf(LabColour.FromHex(hex)));

    [Fact]
    public void RedIsRedOnBothSidesOfItsHueOfNought() => Assert.All(
        [355, 5], hue => Assert.Equal("red", ColourLook.FamilyOf(LabColour.FromLch(40, 50, hue))));

    [Fact]
    public void AnOwnNameTakesItsFamilyFromItsHexUnlessTheOwnerNamesOne()
    {
        Colour look = new("attic dust", null, "#8fbc8f");
        Assert.Equal("green", ColourFamily.Of("Attic-Dust", [look]));
        Assert.Equal("gray", ColourFamily.Of("attic dust", [look with { Family = "gray" }]));
        Assert.Null(ColourFamily.Of("attic dust", [look with { Hex = null }]));
    }

    [Fact]
    public void AWordThatIsKnownKeepsItsFamilyWhateverItsHex() =>
        Assert.Equal("natural wood", ColourFamily.Of("walnut", [new Colour("walnut", null, "#5c4033")]));
}
