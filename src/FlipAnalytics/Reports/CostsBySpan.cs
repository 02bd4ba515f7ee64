using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What of the costs of days and months falls into a span.</summary>
internal static class CostsBySpan
{
    /// <summary>Their sum, each by its days in the span; days after the date of the books have not come yet.</summary>
    /// <param name="costs">The books.</param>
    /// <param name="lines">Some of their lines.</param>
    /// <param name="period">The span; null for the whole log up to its date, what has no day included.</param>
    public static decimal Sum(CostBook costs, ImmutableArray<CostLine> lines, ReportPeriod? period) =>
        lines.Sum(line => period is null ? line.ArisenBy(costs.Date, costs.Currency) : Of(costs, line, period));

    /// <summary>What of one cost falls into a span, by its days in it, up to the date of the books.</summary>
    /// <param name="costs">The books.</param>
    /// <param name="line">One of their lines.</param>
    /// <param name="period">The span.</param>
    public static decimal Of(CostBook costs, CostLine line, ReportPeriod period)
    {
        DateOnly to = period.To < costs.Date ? period.To : costs.Date;
        return to < period.From ? 0 : line.Within(period.From, to, costs.Currency);
    }
}
