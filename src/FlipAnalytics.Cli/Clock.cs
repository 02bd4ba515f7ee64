using System.Globalization;

namespace FlipAnalytics.Cli;

/// <summary>The only place where the date of today enters.</summary>
internal static class Clock
{
    public static DateOnly Today => DateOnly.FromDateTime(DateTime.Now);

    /// <summary>Whether something in a log is dated today or tomorrow, so that in another time zone it would count, or not.</summary>
    /// <param name="log">The whole log.</param>
    public static bool Matters(SalesLog log) => log.LastFactUpTo(Today.AddDays(1)) >= Today;

    /// <summary>Which day today is and where, for answers that turn on it.</summary>
    public static string Sentence => string.Create(
        CultureInfo.InvariantCulture, $"Today is {Today:yyyy-MM-dd} ({TimeZoneInfo.Local.Id}).\n");
}
