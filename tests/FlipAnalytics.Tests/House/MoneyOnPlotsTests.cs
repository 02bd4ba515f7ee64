using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>Plots write no money by themselves: symbol and digits come from MoneyText, as in every text.</summary>
public sealed partial class MoneyOnPlotsTests
{
    // Numbers along an axis, whose unit stands beside it, and percentages.
    private const string Axes = "src/FlipAnalytics.Plots/Means/Scale.cs";

    [Fact]
    public void NoPlotWritesAnAmountOfMoneyInAWayOfItsOwn() => Assert.Empty(
        from file in Repository.Sources("src", "FlipAnalytics.Plots")
        where Repository.Relative(file) != Axes
        from found in Found(File.ReadAllText(file.FullName))
        select $"{Repository.Relative(file)}: {found}");

    [Theory]
    [InlineData("$\"{ceiling:#,0.##} left\"")]
    [InlineData("$\"{price:0.00} left\"")]
    [InlineData("$\"{price:N2} left\"")]
    [InlineData("$\"{price:0.##} {workshop.Currency.Code}\"")]
    [InlineData("$\"{price} {currency}\"")]
    [InlineData("$\"{workshop.Symbol}{price}\"")]
    [InlineData("amount.ToString(\"#,0.##\", CultureInfo.InvariantCulture)")]
    [InlineData("amount.ToString(\"F2\", CultureInfo.InvariantCulture)")]
    public void AnAmountThatAPlotWritesItselfIsCaught(string code) => Assert.NotEmpty(Found(code));

    [Theory]
    [InlineData("$\"{MoneyText.Whole(price, workshop)} left\"")]
    [InlineData("$\"sale price, {currency}\"")]
    [InlineData("$\"Cook's distance {pull.CooksDistance:0.00}\"")]
    [InlineData("$\"half by {median.Time:0.#} days\"")]
    public void MoneyTextAnAxisLabelAndOtherNumbersAreNone(string code) => Assert.Empty(Found(code));

    private static IEnumerable<string> Found(string source) => OwnMoney().Matches(source).Select(match => match.Value)
        .Where(found => !found.Contains("CooksDistance", StringComparison.Ordinal));

    /// <summary>Thousands or two fixed digits in a hole or a format, a number before a currency's code, or the symbol.</summary>
    [GeneratedRegex("""\{[^{}"]*:(#,|0\.00|[NFC]\d?)[^{}]*\}|ToString\("(#,|0\.00|[NFC]\d?")|\}\s\{[\w.]*([cC]urrency|Currency\.Code)\}|\.Symbol\b""")]
    private static partial Regex OwnMoney();
}
