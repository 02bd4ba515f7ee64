namespace FlipAnalytics;

/// <summary>What of a cost falls into a span: the one place of the year's sheet that knows.</summary>
internal static class YearSpans
{
    /// <summary>What of it falls into the span.</summary>
    public static decimal Of(QuarterBooks books, CostLine line, ReportPeriod period) =>
        period.Contains(line.Date) ? line.Amount : 0;

    /// <summary>What of it falls after a day.</summary>
    public static decimal After(QuarterBooks books, CostLine line, DateOnly day) => line.Date > day ? line.Amount : 0;
}
