using System.Collections.Immutable;
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
            report.Period,
            report.Reckoned,
            report.IsSoFar,
            report.SinceKept,
            QuarterSentences.Headline(report),
            report.Hours.Bridge?.FullWage,
            report.Hours.Bridge?.SpanWage,
            report.Profit,
            report.Hours,
            report.Cash,
            report.Opening,
            report.Closing,
            report.Moved,
            report.Ratios,
            report.Counts,
            report.Sales,
            [.. new[] { report.AgainstBefore, report.AgainstYearEarlier }.OfType<QuarterChange>()],
            report.Steps,
            report.Prompts,
            report.Undated,
            report.Lacking,
            report.Notes,
            report.Sums,
            report.SetAside,
            report.WorthALook,
            report.Chosen,
            report.StillToArise,
            report.Held,
            report.Cans,
            report.Returns,
            report.Rules);
        return JsonStyle.Text(document, QuarterJsonContext.Readable.QuarterDocument);
    }
}

internal sealed record QuarterDocument(
    DateOnly AsOf,
    string Currency,
    decimal? TargetWage,
    ReportPeriod Period,
    ReportPeriod Reckoned,
    bool IsSoFar,
    QuarterSinceKept? SinceKept,
    string Headline,
    decimal? FullWage,
    decimal? SpanWage,
    QuarterProfit Profit,
    QuarterHours Hours,
    QuarterCash Cash,
    QuarterStock Opening,
    QuarterStock Closing,
    QuarterMovement Moved,
    QuarterRatios Ratios,
    QuarterCounts Counts,
    ImmutableArray<QuarterSale> Sales,
    ImmutableArray<QuarterChange> Against,
    ImmutableArray<QuarterStep> Steps,
    ImmutableArray<QuarterPrompt> Prompts,
    ImmutableArray<QuarterUndated> Undated,
    ImmutableArray<string> Lacking,
    ImmutableArray<string> Notes,
    ImmutableArray<QuarterSum> Sums,
    ImmutableArray<RowsSetAside> SetAside,
    string? WorthALook,
    string? Chosen,
    decimal StillToArise,
    ImmutableArray<QuarterHeld> Held,
    ImmutableArray<SupplyCan> Cans,
    ImmutableArray<QuarterReturn> Returns,
    ImmutableArray<string> Rules);

[JsonSerializable(typeof(QuarterDocument))]
internal sealed partial class QuarterJsonContext : JsonSerializerContext
{
    public static QuarterJsonContext Readable { get; } = new(JsonStyle.Options());
}
