using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>A report as a JSON document. Fields are only ever added.</summary>
public static class QuarterJson
{
    /// <summary>The document, indented, ending in a line feed; null is unknown or undefined.</summary>
    /// <param name="report">The report.</param>
    public static string Render(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var document = new QuarterDocument(
            report.AsOf,
            report.Workshop.Currency.Code,
            report.Workshop.TargetWage,
            Span(report.Period),
            Span(report.Reckoned),
            report.IsSoFar,
            QuarterSentences.Headline(report),
            report.Profit,
            report.Hours,
            report.Cash,
            report.Opening,
            report.Closing,
            report.Moved,
            report.Ratios,
            report.Counts,
            report.Sales,
            [
                .. new[] { report.AgainstBefore, report.AgainstYearEarlier }.OfType<QuarterChange>()
                    .Select(change => new QuarterChangeDocument(
                        Span(change.With), change.IsBeforeTheLog, change.Profit, change.Hours, change.Net, change.Effects,
                        change.Wage, change.WageByProfit, change.WageByHours, change.NewTypes, change.GoneTypes)),
            ],
            report.Steps,
            report.Prompts,
            report.Undated,
            report.Lacking,
            report.Notes,
            report.Sums);
        return JsonSerializer.Serialize(document, QuarterJsonContext.Readable.QuarterDocument) + "\n";
    }

    private static QuarterSpanDocument Span(ReportPeriod period) => new(period.Name, period.From, period.To);
}

internal sealed record QuarterSpanDocument(string Name, DateOnly From, DateOnly To);

internal sealed record QuarterChangeDocument(
    QuarterSpanDocument With,
    bool IsBeforeTheLog,
    QuarterProfit Profit,
    QuarterHours Hours,
    decimal Net,
    ImmutableArray<QuarterEffect> Effects,
    decimal? Wage,
    decimal? WageByProfit,
    decimal? WageByHours,
    ImmutableArray<string> NewTypes,
    ImmutableArray<string> GoneTypes);

internal sealed record QuarterDocument(
    DateOnly AsOf,
    string Currency,
    decimal? TargetWage,
    QuarterSpanDocument Period,
    QuarterSpanDocument Reckoned,
    bool IsSoFar,
    string Headline,
    QuarterProfit Profit,
    QuarterHours Hours,
    QuarterCash Cash,
    QuarterStock Opening,
    QuarterStock Closing,
    QuarterMovement Moved,
    QuarterRatios Ratios,
    QuarterCounts Counts,
    ImmutableArray<QuarterSale> Sales,
    ImmutableArray<QuarterChangeDocument> Against,
    ImmutableArray<QuarterStep> Steps,
    ImmutableArray<QuarterPrompt> Prompts,
    ImmutableArray<QuarterUndated> Undated,
    ImmutableArray<string> Lacking,
    ImmutableArray<string> Notes,
    ImmutableArray<QuarterSum> Sums);

[JsonSerializable(typeof(QuarterDocument))]
internal sealed partial class QuarterJsonContext : JsonSerializerContext
{
    public static QuarterJsonContext Readable { get; } = new(JsonStyle.Options());
}
