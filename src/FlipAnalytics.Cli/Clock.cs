namespace FlipAnalytics.Cli;

/// <summary>The only place where the date of today enters.</summary>
internal static class Clock
{
    public static DateOnly Today => DateOnly.FromDateTime(DateTime.Now);
}
