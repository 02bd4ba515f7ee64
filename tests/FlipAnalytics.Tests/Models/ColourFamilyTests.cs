namespace FlipAnalytics.Tests.Models;

/// <summary>
/// Families are the basic colour terms of Berlin and Kay, Basic Color Terms (1969), with natural wood and two-tone.
/// </summary>
public sealed class ColourFamilyTests
{
    [Theory]
    [InlineData("sage", "green")]
    [InlineData("Navy", "blue")]
    [InlineData("cream", "white")]
    [InlineData("beige", "brown")]
    [InlineData("greige", "gray")]
    [InlineData("charcoal", "gray")]
    [InlineData("blush", "pink")]
    [InlineData("burgundy", "red")]
    [InlineData("terracotta", "orange")]
    [InlineData("mustard", "yellow")]
    [InlineData("lavender", "purple")]
    [InlineData("walnut", "natural wood")]
    [InlineData("black", "black")]
    public void AnOrdinaryColourWordHasAFamily(string word, string family) =>
        Assert.Equal(family, ColourFamily.Of(word, []));

    [Theory]
    [InlineData("off white")]
    [InlineData("Off-White")]
    [InlineData("offwhite")]
    [InlineData(" OFF  WHITE ")]
    public void SpellingMakesNoDifference(string word) => Assert.Equal("white", ColourFamily.Of(word, []));

    [Fact]
    public void GreyAndGrayAreOneFamily() =>
        Assert.Equal(ColourFamily.Of("light gray", []), ColourFamily.Of("light grey", []));

    [Theory]
    [InlineData("dark green", "green")]
    [InlineData("dusty blue", "blue")]
    [InlineData("blue green", "green")]
    [InlineData("green wash", "green")]
    [InlineData("pale duck egg", "blue")]
    public void ACompoundTakesItsLastKnownWord(string word, string family) =>
        Assert.Equal(family, ColourFamily.Of(word, []));

    [Fact]
    public void ATwoTonePieceStaysTwoTone() => Assert.Equal("two-tone", ColourFamily.Of("two tone white and oak", []));

    [Fact]
    public void TheOwnersFamilyWins()
    {
        Colour[] owners = [new("Teal", "green", null), new("attic dust", "gray", null), new("sage", null, null)];
        Assert.Equal("green", ColourFamily.Of("teal", owners));
        Assert.Equal("green", ColourFamily.Of("deep teal", owners));
        Assert.Equal("gray", ColourFamily.Of("attic-dust", owners));
        Assert.Equal("green", ColourFamily.Of("sage", owners));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("surprise")]
    public void AnUnknownWordHasNoFamily(string word) => Assert.Null(ColourFamily.Of(word, []));
}
