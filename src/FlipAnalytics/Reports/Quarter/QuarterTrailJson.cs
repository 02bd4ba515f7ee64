using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>A line of the quarter with its parts as a JSON document. Fields are only ever added.</summary>
public static class QuarterTrailJson
{
    /// <summary>The document, indented, ending in a line feed; null is unknown.</summary>
    /// <param name="trail">The trail.</param>
    /// <param name="workshop">The workshop.</param>
    public static string Render(QuarterTrail trail, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(trail);
        ArgumentNullException.ThrowIfNull(workshop);
        var document = new QuarterTrailDocument(
            trail.AsOf,
            workshop.Currency.Code,
            trail.Period,
            trail.Reckoned,
            trail.Line.Word,
            trail.Line.Meaning,
            QuarterTrailText.Answer(trail, workshop),
            trail.Line.IsHours ? "hours" : "money",
            trail.Total,
            trail.Count,
            trail.Noun,
            trail.Parts,
            trail.Difference,
            trail.Notes,
            trail.SetAside);
        return JsonStyle.Text(document, QuarterTrailJsonContext.Readable.QuarterTrailDocument);
    }
}

internal sealed record QuarterTrailDocument(
    DateOnly AsOf,
    string Currency,
    ReportPeriod Period,
    ReportPeriod Reckoned,
    string Line,
    string Meaning,
    string Answer,
    string Unit,
    decimal Total,
    int Count,
    string Noun,
    ImmutableArray<QuarterTrailPart> Parts,
    decimal Difference,
    ImmutableArray<string> Notes,
    ImmutableArray<RowsSetAside> SetAside);

[JsonSerializable(typeof(QuarterTrailDocument))]
internal sealed partial class QuarterTrailJsonContext : JsonSerializerContext
{
    public static QuarterTrailJsonContext Readable { get; } = new(JsonStyle.Options());
}
