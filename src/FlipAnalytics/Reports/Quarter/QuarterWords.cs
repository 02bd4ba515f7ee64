using System.Globalization;

namespace FlipAnalytics;

/// <summary>Amounts, shares and spans in words and digits, the same in every culture.</summary>
internal static class QuarterWords
{
    /// <summary>An amount to the minor unit, with commas between thousands.</summary>
    public static string Money(decimal amount, Currency currency) =>
        amount.ToString(string.Create(CultureInfo.InvariantCulture, $"N{currency.MinorDigits}"), CultureInfo.InvariantCulture);

    /// <summary>An amount in whole units where it is 100 or more.</summary>
    public static string Rough(decimal amount, Currency currency) =>
        decimal.Abs(amount) >= 100
            ? decimal.Round(amount, MidpointRounding.AwayFromZero).ToString("N0", CultureInfo.InvariantCulture)
            : Money(amount, currency);

    /// <summary>Hours with up to one digit.</summary>
    public static string Hours(decimal hours) =>
        decimal.Round(hours, 1, MidpointRounding.AwayFromZero).ToString("#,0.#", CultureInfo.InvariantCulture);

    /// <summary>A share as a percentage.</summary>
    public static string Percent(decimal share) =>
        decimal.Round(100 * share, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture) + " %";

    /// <summary>A ratio with two digits.</summary>
    public static string Ratio(decimal ratio) =>
        decimal.Round(ratio, 2, MidpointRounding.AwayFromZero).ToString("#,0.00", CultureInfo.InvariantCulture);
}
