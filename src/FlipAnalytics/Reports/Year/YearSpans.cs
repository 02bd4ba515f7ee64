using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What of a cost falls into a span, by days: the one place of the year's sheet that knows.</summary>
internal static class YearSpans
{
    /// <summary>All wear of tools, before it is shared over pieces.</summary>
    public static ImmutableArray<CostLine> Wear(QuarterBooks books) => books.Costs.ToolWear;

    /// <summary>What of it falls into the span, up to the date of the books.</summary>
    public static decimal Of(QuarterBooks books, CostLine line, ReportPeriod period)
    {
        DateOnly to = period.To < books.Costs.Date ? period.To : books.Costs.Date;
        return to < period.From ? 0 : line.Within(period.From, to, books.Currency);
    }

    /// <summary>What of it falls after a day.</summary>
    public static decimal After(QuarterBooks books, CostLine line, DateOnly day) => line.Amount - line.ArisenBy(day, books.Currency);
}
