namespace FlipAnalytics.Tests;

/// <summary>Units as the standards define them: NIST Handbook 44, appendix C; SP 811, appendix B.</summary>
public sealed class SupplyUnitTests
{
    /// <summary>A gallon is 231 cubic inches, an inch 25.4 mm; the rest divides it. An imperial gallon is 4.54609 l.</summary>
    [Theory]
    [InlineData("gal", "3.785411784")]
    [InlineData("Quart", "0.946352946")]
    [InlineData("quarts", "0.946352946")]
    [InlineData("qt.", "0.946352946")]
    [InlineData("pint", "0.473176473")]
    [InlineData("cup", "0.2365882365")]
    [InlineData("fl oz", "0.0295735295625")]
    [InlineData("fl. oz.", "0.0295735295625")]
    [InlineData("imperial gallon", "4.54609")]
    [InlineData("imp pint", "0.56826125")]
    [InlineData("imperial fl oz", "0.0284130625")]
    [InlineData("ml", "0.001")]
    [InlineData("Litres", "1")]
    public void AVolumeHasItsExactLitres(string word, string litres) =>
        Assert.Equal((SupplyUnit.Litre, Number(litres)), MeasureOf(word));

    [Theory]
    [InlineData("ft2", "square metre", "0.09290304")]
    [InlineData("sq ft", "square metre", "0.09290304")]
    [InlineData("m²", "square metre", "1")]
    [InlineData("lbs", "kilogram", "0.45359237")]
    [InlineData("oz", "kilogram", "0.028349523125")]
    [InlineData("g", "kilogram", "0.001")]
    [InlineData("feet", "metre", "0.3048")]
    [InlineData("inches", "metre", "0.0254")]
    [InlineData("dozen", "each", "12")]
    [InlineData("pcs", "each", "1")]
    public void AreaMassLengthAndCountHaveTheirExactFactors(string word, string measure, string factor) =>
        Assert.Equal((measure, Number(factor)), MeasureOf(word));

    [Theory]
    [InlineData("sheet", "Sheets")]
    [InlineData("tin", "tins")]
    [InlineData("box", "boxes")]
    public void AWordThatIsNoUnitOfMeasureConvertsToItsPluralOnly(string one, string many)
    {
        Assert.Equal(MeasureOf(one), MeasureOf(many));
        Assert.NotEqual(SupplyUnit.Of(one).Measure, SupplyUnit.Of("each").Measure);
    }

    [Fact]
    public void AnOunceOfSomethingBoughtByVolumeIsAFluidOunce() =>
        Assert.Equal(0.0295735295625m, SupplyUnit.Of("oz", SupplyUnit.Of("quart").Measure).Factor);

    /// <summary>300 ft²/gal is 75 ft²/quart and 7.36 m²/l; 12 m²/l is 489.0 ft²/gal.</summary>
    [Theory]
    [InlineData(300, "ft2/gal", 7.36)]
    [InlineData(75, "sq ft per quart", 7.36)]
    [InlineData(350, "ft2/gal", 8.59)]
    [InlineData(400, "ft2/gal", 9.82)]
    [InlineData(500, "ft2 / gallon", 12.27)]
    [InlineData(600, "ft²/gal", 14.73)]
    [InlineData(150, "ft2/qt", 14.73)]
    [InlineData(407.5, "ft2/gal", 10)]
    [InlineData(489.0, "ft2/gal", 12)]
    [InlineData(570.4, "ft2/gal", 14)]
    public void CoverageConvertsToSquareMetresALitre(decimal coverage, string unit, decimal squareMetres) =>
        Assert.Equal(squareMetres, decimal.Round(coverage * CoverageUnit.Of(unit, null)!.SquareMetres, 2));

    [Fact]
    public void CoverageMayBeStatedForAPackOrForTheUnitBought()
    {
        Assert.Equal(4, CoverageUnit.Of("m2/250 g", null)!.SquareMetres);
        Assert.Equal(("tin", 0.09290304m), (
            CoverageUnit.Of("ft2", SupplyUnit.Of("tin"))!.Per.Measure, CoverageUnit.Of("ft2", SupplyUnit.Of("tin"))!.SquareMetres));
    }

    [Theory]
    [InlineData("quart")]
    [InlineData("ft2/")]
    [InlineData("ft2/0 l")]
    [InlineData("m/l")]
    [InlineData(" ")]
    public void WhatIsNoCoverageUnitIsNone(string text) => Assert.Null(CoverageUnit.Of(text, null));

    private static (string, decimal) MeasureOf(string word) => (SupplyUnit.Of(word).Measure, SupplyUnit.Of(word).Factor);

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
