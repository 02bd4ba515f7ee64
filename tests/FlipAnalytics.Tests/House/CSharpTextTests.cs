namespace FlipAnalytics.Tests.House;

/// <summary>The house rules rest on this reading of C#, so it is tested on planted code.</summary>
public sealed class CSharpTextTests
{
    [Theory]
    [InlineData("public Area Size => new();")]
    [InlineData("var area = new Area(3);")]
    [InlineData("ImmutableArray<Area> areas = [];")]
    [InlineData("decimal size = Area.Of(piece);")]
    [InlineData("void Use(Area area, int count) { }")]
    [InlineData("bool big = found is Area { Size: 3 };")]
    [InlineData("sealed class Wall : Area;")]
    [InlineData("Func<decimal> size = () => Area.Of(piece);")]
    [InlineData("var size = known ? Area.None : Area.Of(piece);")]
    public void ATypeIsSeenWhereItIsUsed(string code) => Assert.True(CSharpText.UsesType(code, "Area"));

    [Theory]
    [InlineData("// an Area of the piece")]
    [InlineData("/* Area */ int x = 1;")]
    [InlineData("/// <summary>Area coated.</summary>")]
    [InlineData("string text = \"Area\";")]
    [InlineData("string text = @\"the \"\"Area\"\" of\";")]
    [InlineData("string text = \"\"\"Area \"of\" it\"\"\";")]
    [InlineData("public decimal? Area { get; init; }")]
    [InlineData("record Use(decimal? Area, int Row = 0);")]
    [InlineData("var use = new Use { Area = 3 };")]
    [InlineData("var use = Make(Area: 3);")]
    [InlineData("decimal size = use.Area;")]
    [InlineData("ImmutableArray<decimal> Area { get; }")]
    [InlineData("int[] Area { get; }")]
    [InlineData("int AreaCount = 1;")]
    public void AWordThatIsNoTypeIsNot(string code) => Assert.False(CSharpText.UsesType(code, "Area"));

    [Fact]
    public void EveryKindOfTypeDeclarationIsFound() => Assert.Equal(
        ["A", "B", "C", "D", "E", "F"],
        CSharpText.DeclaredTypes("""
            class A; record B(int X); record struct C; interface D; enum E { } // class G
            public sealed record class F;
            """));
}
