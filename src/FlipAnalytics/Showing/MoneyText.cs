using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// The one way in which money is written for the owner, whatever the verb, page or plot: sign, symbol, commas between
/// thousands, a point. <c>Exact</c> is for what is on record, to the currency's minor unit; <c>Whole</c> is for what is
/// expected or rounded, without minor digits. In a table's column the symbol is left out (<c>Plain</c>).
/// </summary>
public static class MoneyText
{
    /// <summary>An amount on record, such as $1,234.50 or -$3.00.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="workshop">The workshop, for its symbol and currency.</param>
    public static string Exact(decimal amount, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        return WithSymbol(PlainExact(amount, workshop), workshop);
    }

    /// <summary>An expected amount, such as $297 or -$12; halves away from zero.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="workshop">The workshop, for its symbol.</param>
    public static string Whole(decimal amount, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        return WithSymbol(PlainWhole(amount), workshop);
    }

    /// <summary>A price as one says it: $42, but $1.50.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="workshop">The workshop, for its symbol and currency.</param>
    public static string Spoken(decimal amount, Workshop workshop) =>
        amount == decimal.Truncate(amount) ? Whole(amount, workshop) : Exact(amount, workshop);

    /// <summary>An amount on record in a column, such as 1,234.50.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static string PlainExact(decimal amount, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        Currency currency = workshop.Currency;
        return currency.Round(amount).ToString(
            string.Create(CultureInfo.InvariantCulture, $"N{currency.MinorDigits}"), CultureInfo.InvariantCulture);
    }

    /// <summary>An expected amount in a column, such as 1,234; halves away from zero.</summary>
    /// <param name="amount">The amount.</param>
    public static string PlainWhole(decimal amount) =>
        decimal.Round(amount, 0, MidpointRounding.AwayFromZero).ToString("N0", CultureInfo.InvariantCulture);

    /// <summary>
    /// An amount on record as a program reads it, such as 1234.50 USD: nothing between thousands, the currency's code behind.
    /// </summary>
    /// <param name="amount">The amount.</param>
    /// <param name="currency">The currency.</param>
    public static string WithCode(decimal amount, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(currency);
        string digits = currency.Round(amount).ToString(
            string.Create(CultureInfo.InvariantCulture, $"F{currency.MinorDigits}"), CultureInfo.InvariantCulture);
        return $"{digits} {currency.Code}";
    }

    private static string WithSymbol(string plain, Workshop workshop) =>
        plain.StartsWith('-') ? $"-{workshop.Symbol}{plain[1..]}" : workshop.Symbol + plain;
}
