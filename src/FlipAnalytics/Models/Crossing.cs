namespace FlipAnalytics;

/// <summary>
/// The only place where the log's decimals and dates become the models' doubles and days, and amounts come back.
/// </summary>
internal static class Crossing
{
    // Amounts beyond what may be written down tell nothing more, and the largest do not exist as decimals.
    private static readonly double Furthest = (double)NumberRange.Money.Most;

    /// <summary>Natural logarithm of a positive amount, length or number of hours; null where unknown or not positive.</summary>
    public static double? Log(decimal? amount) => amount > 0 ? Math.Log((double)amount.Value) : null;

    /// <summary>An amount as a double.</summary>
    public static double Number(decimal amount) => (double)amount;

    /// <summary>An amount as a double; null where unknown.</summary>
    public static double? Number(decimal? amount) => (double?)amount;

    /// <summary>A modelled amount in money, rounded to the currency's minor unit, halves away from zero.</summary>
    public static decimal Money(double amount, Currency currency) => currency.Round(Unrounded(amount));

    /// <summary>A modelled amount as it is, to be shared out; one beyond the limit of what may be written is taken at it.</summary>
    public static decimal Unrounded(double amount) => (decimal)Math.Clamp(amount, -Furthest, Furthest);

    /// <summary>A modelled number that is no money, rounded for showing.</summary>
    public static decimal Rounded(double number, int digits) =>
        decimal.Round(Unrounded(number), digits, MidpointRounding.AwayFromZero);

    /// <summary>Days since 0001-01-01.</summary>
    public static double Day(DateOnly date) => date.DayNumber;

    /// <summary>Days from one date to another, at least 1: a piece sold on the day it was listed took a day.</summary>
    public static double DaysOnMarket(DateOnly listed, DateOnly end) => Math.Max(1, end.DayNumber - listed.DayNumber);

    /// <summary>Months since year 0, so that neighbouring months are 1 apart.</summary>
    public static int Month(DateOnly date) => 12 * date.Year + date.Month - 1;

    /// <summary>A month number as yyyy-MM.</summary>
    public static string MonthName(int month) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{month / 12:0000}-{month % 12 + 1:00}");

    /// <summary>Part of the year gone by, 0 at New Year to below 1.</summary>
    public static double PartOfYear(DateOnly date) => (date.DayOfYear - 1) / 365.25;

    /// <summary>The date some days later, held inside the calendar.</summary>
    public static DateOnly Later(DateOnly date, double days) =>
        DateOnly.FromDayNumber((int)Math.Clamp(date.DayNumber + Math.Round(days), 0, DateOnly.MaxValue.DayNumber));
}
