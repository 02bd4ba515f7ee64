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

    [Fact]
    public void Zeros_behind_the_amount_make_no_smaller_unit() =>
        Assert.Equal<IEnumerable<decimal>>([3.34m, 3.33m, 3.33m], Shares.InProportion(10.0000m, [1, 1, 1], 2));

    /// <summary>A third of an hour, three times, is a tie to the 28th digit; so are weights of very different size.</summary>
    [Fact]
    public void A_tie_is_no_matter_of_rounding()
    {
        Assert.Equal<IEnumerable<decimal>>([0.04m, 0.03m, 0.03m], Shares.InProportion(0.10m, [1m / 3, 1m / 3, 1m / 3], 2));
        Assert.Equal<IEnumerable<decimal>>([-3, -3, -4], Shares.InProportion(-10, [1m / 7, 1m / 7, 1m / 7], 0));
        Assert.Equal<IEnumerable<decimal>>(
            [0, 5_000_000_000_000m], Shares.InProportion(5_000_000_000_000m, [0.000_000_000_000_000_1m, 1_000_000_000_000m], 3));
    }

    [Fact]
    public void Any_amount_by_any_weights_adds_up_and_none_is_a_whole_unit_off() => Gen.Select(
        Gen.Long[-99_999_999_999, 99_999_999_999], Gen.Int[0, 99_999].Select(n => n / 7777m).Array[1, 12], Currencies).Sample(
        (units, weights, currency) =>
        {
            decimal unit = 1m / (decimal)Math.Pow(10, currency.MinorDigits);
            decimal amount = units * unit;
            var shares = Shares.InProportion(amount, weights, currency.MinorDigits);
            decimal total = weights.Sum();
            return shares.Sum() == amount
                && shares.All(share => share == currency.Round(share))
                && (total == 0 || shares.Zip(weights).All(
                    pair => Math.Abs(pair.First - amount * pair.Second / total) <= unit));
        });
}
