namespace FlipAnalytics;

/// <summary>The month that a day is in.</summary>
internal static class Months
{
    extension(DateOnly day)
    {
        /// <summary>The last day of its month.</summary>
        public DateOnly LastOfMonth() => new(day.Year, day.Month, DateTime.DaysInMonth(day.Year, day.Month));
    }
}
