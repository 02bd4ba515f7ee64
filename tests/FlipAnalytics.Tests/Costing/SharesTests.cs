using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Shares add up to what is shared, to the smallest unit of the currency.</summary>
public class SharesTests
{
    private static readonly Gen<Currency> Currencies = Gen.OneOf("USD", "JPY", "KWD").Select(Currency.Of);

    private static readonly Gen<decimal[]> Amounts = Gen.Int[-9_999_999, 9_999_999].Select(n => n / 7777m).Array[1, 12];

    [Fact]
    public void Shares_add_up_and_none_is_a_whole_unit_off() => Gen.Select(Amounts, Currencies).Sample(
        (amounts, currency) =>
        {
            decimal total = currency.Round(amounts.Sum());
            var shares = Shares.Rounded(amounts, total, currency.MinorDigits);
            decimal unit = 1m / (decimal)Math.Pow(10, currency.MinorDigits);
            return shares.Sum() == total
                && shares.All(share => share == currency.Round(share))
                && shares.Zip(amounts).All(pair => Math.Abs(pair.First - pair.Second) < unit);
        });

    [Fact]
    public void Whole_amounts_stay_as_they_are() => Gen.Int[-99_999, 99_999].Array[1, 9].Sample(cents =>
    {
        decimal[] amounts = [.. cents.Select(n => n / 100m)];
        return Shares.Rounded(amounts, amounts.Sum(), 2).SequenceEqual(amounts);
    });

    /// <summary>Ten shared by three is 3.34, 3.33, 3.33: the cent left goes to the first of equals.</summary>
    [Fact]
    public void Of_equal_remainders_the_earlier_gets_the_unit_left() =>
        Assert.Equal<IEnumerable<decimal>>([3.34m, 3.33m, 3.33m], Shares.Rounded([10m / 3, 10m / 3, 10m / 3], 10, 2));

    [Fact]
    public void A_total_that_the_amounts_do_not_add_up_to_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Shares.Rounded([1, 2], 4, 2));
}
