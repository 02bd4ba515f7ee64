namespace FlipAnalytics.Tests.Showing;

public sealed class MoneyTextTests
{
    private static readonly Workshop Dollars = new() { Symbol = "$" };
    private static readonly Workshop Yen = new() { Currency = Currency.Of("JPY"), Symbol = "¥" };

    [Theory]
    [InlineData("6169.76", "$6,169.76")]
    [InlineData("-3", "-$3.00")]
    [InlineData("0.005", "$0.01")]
    [InlineData("-0.001", "$0.00")]
    public void What_is_on_record_is_written_to_the_cent(string amount, string written) =>
        Assert.Equal(written, MoneyText.Exact(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), Dollars));

    [Theory]
    [InlineData("296.5", "$297")]
    [InlineData("-11.5", "-$12")]
    [InlineData("-0.4", "$0")]
    [InlineData("1234.4", "$1,234")]
    public void What_is_expected_is_written_in_whole_units(string amount, string written) =>
        Assert.Equal(written, MoneyText.Whole(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), Dollars));

    [Fact]
    public void A_currency_without_minor_digits_has_none() => Assert.Equal("¥24,500", MoneyText.Exact(24_500m, Yen));
}
