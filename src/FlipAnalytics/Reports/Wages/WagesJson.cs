using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>The wages report and the trail of a piece as JSON documents. Fields are only ever added.</summary>
public static class WagesJson
{
    /// <summary>The report, indented, ending in a line feed. Amounts have at most six digits after the point.</summary>
    /// <param name="report">The report.</param>
    public static string Render(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var document = new WagesDocument(
            report.AsOf, report.Workshop.Currency.Code, report.Workshop.TargetWage, report.Period?.Name,
            WagesSentences.Answer(report), report.Total.CashWage, report.Total.FullWage, report.CashIsAtMost,
            report.FullIsAtMost, report.Bridge?.WageAfterIdleMonths, report.Bridge?.SpanWage, report.Total, report.Bridge, report.Everywhere, report.Spread, report.Trend, report.FilledIn, report.UnsoldPieces,
            report.By(WageGroupBy.Type).Groups, report.By(WageGroupBy.Color).Groups,
            report.By(WageGroupBy.Source).Groups, report.By(WageGroupBy.Quarter).Groups, report.Flips, report.Losers,
            report.WrittenOff, report.Hours, report.Hindsight, report.LeftOut, report.MissingCosts,
            report.KindsWithoutRecord, report.Notes, report.Reconciliation, report.SetAside, report.WorthALook,
            report.StillToArise);
        return JsonStyle.Text(document, WagesJsonContext.Readable.WagesDocument);
    }

    /// <summary>The trail of a piece, indented, ending in a line feed.</summary>
    /// <param name="trail">The trail.</param>
    public static string Render(WageTrail trail)
    {
        ArgumentNullException.ThrowIfNull(trail);
        return JsonStyle.Text(trail, WagesJsonContext.Readable.WageTrail);
    }
}

internal sealed record WagesDocument(
    DateOnly AsOf,
    string Currency,
    decimal? TargetWage,
    string? Period,
    string Answer,
    decimal? CashWage,
    decimal? FullWage,
    bool CashIsAtMost,
    bool FullIsAtMost,
    decimal? WageAfterIdleMonths,
    decimal? SpanWage,
    WageSum Total,
    WageBridge? WageBridge,
    WageHours WageHours,
    WageSpread? Spread,
    WageTrend? Trend,
    WagesFilledIn? HoursFilledIn,
    int UnsoldPieces,
    ImmutableArray<WageGroup> ByType,
    ImmutableArray<WageGroup> ByColor,
    ImmutableArray<WageGroup> BySource,
    ImmutableArray<WageGroup> ByQuarter,
    ImmutableArray<FlipWage> Flips,
    ImmutableArray<LosingFlip> Losers,
    PiecesWrittenOff WrittenOff,
    HoursByTask HoursByTask,
    WagesHindsight? Hindsight,
    FlipsLeftOut LeftOut,
    ImmutableArray<MissingCost> MissingCosts,
    ImmutableArray<CostKind> KindsWithoutRecord,
    ImmutableArray<string> Notes,
    WagesReconciliation Reconciliation,
    ImmutableArray<RowsSetAside> SetAside,
    string? WorthALook,
    decimal StillToArise);

/// <summary>Writes a decimal with at most six digits after the point, without zeros behind them.</summary>
internal sealed class SixDigits : JsonConverter<decimal>
{
    public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.GetDecimal();

    public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(decimal.Round(value, 6, MidpointRounding.AwayFromZero).Trimmed());
}

[JsonSerializable(typeof(WagesDocument))]
[JsonSerializable(typeof(WageTrail))]
internal sealed partial class WagesJsonContext : JsonSerializerContext
{
    public static WagesJsonContext Readable { get; } = new(Written());

    private static JsonSerializerOptions Written()
    {
        JsonSerializerOptions options = JsonStyle.Options();
        options.Converters.Add(new SixDigits());
        options.Converters.Add(new JsonStringEnumConverter<CostKind>(JsonNamingPolicy.SnakeCaseLower));
        options.Converters.Add(new JsonStringEnumConverter<WageGroupBy>(JsonNamingPolicy.SnakeCaseLower));
        options.Converters.Add(new JsonStringEnumConverter<LossYardstick>(JsonNamingPolicy.SnakeCaseLower));
        options.Converters.Add(new JsonStringEnumConverter<WorkTask>(JsonNamingPolicy.SnakeCaseLower));
        options.Converters.Add(new JsonStringEnumConverter<PieceState>(JsonNamingPolicy.SnakeCaseLower));
        return options;
    }
}
