namespace FlipAnalytics;

/// <summary>The only place of the reports where the books' decimals and dates become the statistics' doubles and back.</summary>
internal static class ReportCrossing
{
    private const double DaysInAYear = 365.25;

    /// <summary>An amount or a number of hours as a double.</summary>
    public static double Number(decimal amount) => (double)amount;

    /// <summary>Years since 0001-01-01.</summary>
    public static double Years(DateOnly day) => day.DayNumber / DaysInAYear;

    /// <summary>An estimate in money, rounded to two digits more than the currency has; null where it is not a number.</summary>
    public static decimal? Estimate(double amount, Currency currency) => Math.Abs(amount) < 1e15
        ? decimal.Round((decimal)amount, currency.MinorDigits + 2, MidpointRounding.AwayFromZero)
        : null;
}
