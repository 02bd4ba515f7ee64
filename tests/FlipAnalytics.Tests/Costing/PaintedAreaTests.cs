namespace FlipAnalytics.Tests;

/// <summary>Painted areas worked by hand from the formulas, to a tenth of a square foot.</summary>
public sealed class PaintedAreaTests
{
    [Theory]
    [InlineData("nightstand", 20, 16, 25, 11.2)]
    [InlineData("dresser", 60, 18, 32, 28.8)]
    [InlineData("chest of drawers", 36, 18, 48, 28.5)]
    [InlineData("sideboard", 60, 18, 36, 31.5)]
    [InlineData("bookcase", 36, 12, 72, 76.7)]
    public void TheAreaOfAPieceFollowsFromItsDimensions(string type, int width, int depth, int height, decimal squareFeet) =>
        Assert.Equal(squareFeet, decimal.Round(PaintedArea.Of(
            new() { Id = "P1", Type = type, Width = width, Depth = depth, Height = height }, LengthUnit.Inch)!.Value, 1));

    /// <summary>Dining table, coffee table and writing desk, four legs each.</summary>
    [Theory]
    [InlineData(72, 36, 4, 10, 29, 33.1)]
    [InlineData(48, 24, 3, 8, 17, 15.4)]
    [InlineData(48, 24, 5, 8, 29, 19.9)]
    public void ATableHasTopEdgeApronAndLegs(int length, int width, int apron, int girth, int legs, decimal squareFeet) =>
        Assert.Equal(squareFeet, decimal.Round(PaintedArea.Table(length, width, 1, apron, 2, 4, girth, legs) / 144, 1));

    [Fact]
    public void APedestalDeskHasTwoBoxesAndAPanelBetween() =>
        Assert.Equal(43.4m, decimal.Round(PaintedArea.PedestalDesk(48, 24, 30, 15, 12, 1) / 144, 1));

    /// <summary>28.8333 ft² are 2.68 m².</summary>
    [Fact]
    public void CentimetresGiveSquareMetres() => Assert.Equal(2.68m, decimal.Round(PaintedArea.Of(
        new() { Id = "P1", Type = "dresser", Width = 152.4m, Depth = 45.72m, Height = 81.28m }, LengthUnit.Centimetre)!.Value, 2));

    [Fact]
    public void ASetOfFourChairsHasFourTimesTheAreaOfOne() => Assert.Equal(
        47.2m, PaintedArea.Of(new() { Id = "P1", Type = "side chair", Count = 4 }, LengthUnit.Inch));

    [Theory]
    [InlineData("lamp", 30)]
    [InlineData("dresser", null)]
    public void WithoutAFormOrADimensionTheAreaIsUnknown(string type, int? height) => Assert.Null(PaintedArea.Of(
        new() { Id = "P1", Type = type, Width = 20, Depth = 20, Height = height }, LengthUnit.Inch));
}
