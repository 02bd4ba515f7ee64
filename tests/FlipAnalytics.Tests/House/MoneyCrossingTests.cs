using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>Money becomes a double, and a double money, in one file of the models and one of the reports.</summary>
public sealed partial class MoneyCrossingTests
{
    [Theory]
    [InlineData("Reports", "ReportCrossing.cs")]
    public void MoneyCrossesInOneFile(string folder, string crossing)
    {
        Assert.True(File.Exists(Repository.PathOf("src", "FlipAnalytics", folder, crossing)));
        Assert.Empty(
            from file in Repository.Sources("src", "FlipAnalytics", folder)
            where file.Name != crossing
            from found in Found(File.ReadAllText(file.FullName))
            select $"{Repository.Relative(file)}: {found}");
    }

    [Theory]
    [InlineData("double price = (double)piece.SoldPrice;")]
    [InlineData("double? price = (double?)piece.SoldPrice;")]
    [InlineData("decimal wage = (decimal)estimate;")]
    [InlineData("double price = Convert.ToDouble(amount);")]
    [InlineData("double price = decimal.ToDouble(amount);")]
    public void APlantedCrossingIsCaught(string code) => Assert.Single(Found(code));

    [Fact]
    public void AWordInACommentIsNone() => Assert.Empty(Found("// (double) would cross"));

    private static IEnumerable<string> Found(string source) =>
        Crossings().Matches(CSharpText.WithoutCommentsAndStrings(source)).Select(match => match.Value);

    [GeneratedRegex(@"\((double|decimal)\??\)\s*[\w(]|\b(Convert|decimal)\.To(Double|Decimal)\b|\bnew\s+decimal\s*\(")]
    private static partial Regex Crossings();
}
