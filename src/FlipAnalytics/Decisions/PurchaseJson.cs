using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>The answers as the JSON document that other programs read. Fields are only ever added.</summary>
public static class PurchaseJson
{
    /// <summary>The document, indented, ending in a line feed.</summary>
    /// <param name="report">The answers.</param>
    public static string Render(PurchaseReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var document = new PurchaseDocument(
            report.AsOf, report.Workshop.Currency.Code, report.TargetWage, [.. report.Decisions.Select(Of)],
            report.WordNotes,
            [.. report.SetAside.Select(problem => new SetAsideDocument(problem.Row, problem.Column, problem.Found, problem.Expected, problem.Remedy))],
            report.WorthALook);
        return JsonStyle.Text(document, PurchaseJsonContext.Readable.PurchaseDocument);
    }

    private static CandidateDocument Of(PurchaseDecision decision) => new(
        decision.Candidate.Id,
        decision.Candidate.Type,
        decision.Verdict is { } verdict ? VerdictWords.Code(verdict) : null,
        decision.Candidate.StickerPrice,
        decision.Ceiling,
        decision.CeilingCautious,
        decision.CeilingBreakEven,
        decision.ChanceOfTargetWage,
        decision.WageAtSticker,
        decision.SalePrice,
        decision.Hours,
        decision.Supplies,
        decision.DaysOnMarket,
        decision.Waterfall,
        [
            .. decision.Comparables.Select(c =>
                new ComparableDocument(c.Id, c.SoldOn, c.SalePrice, c.DaysOnMarket, c.Distance)),
        ],
        decision.Leverages,
        decision.Basis,
        decision.GuessShare,
        [
            .. decision.Cautions.Select(c => new CautionDocument(
                c.Topic, c.When.ToString().ToLowerInvariant(), c.Text, c.Source,
                JsonNamingPolicy.SnakeCaseLower.ConvertName(c.Status.ToString()), c.Jurisdiction, c.Act, c.IsGrave)),
        ],
        [.. decision.Candidate.WordNotes, .. decision.Notes],
        [.. decision.Candidate.Written.Where(cell => cell.IsOwn).Select(cell => new OwnDocument(cell.Column, cell.Text))],
        decision.CeilingLow,
        decision.CeilingHigh,
        decision.WhatDecides,
        decision.Offer,
        decision.WalkAway,
        decision.Load);
}

internal sealed record PurchaseDocument(
    DateOnly AsOf, string Currency, decimal TargetWage, ImmutableArray<CandidateDocument> Candidates,
    ImmutableArray<string> Notes, ImmutableArray<SetAsideDocument> SetAside, string? WorthALook);

internal sealed record SetAsideDocument(int? Row, string? Column, string? Found, string Expected, string Remedy);

internal sealed record OwnDocument(string Column, string Text);

internal sealed record CandidateDocument(
    string Id,
    string Type,
    string? Verdict,
    decimal? StickerPrice,
    decimal? Ceiling,
    decimal? CeilingCautious,
    decimal? CeilingBreakEven,
    decimal? ChanceOfTargetWage,
    decimal? WageAtSticker,
    ForecastRange? SalePrice,
    ForecastRange? Hours,
    ForecastRange? Supplies,
    ForecastRange? DaysOnMarket,
    ImmutableArray<WaterfallStep> Waterfall,
    ImmutableArray<ComparableDocument> Comparables,
    ImmutableArray<Leverage> Leverages,
    SalesBasis Basis,
    decimal GuessShare,
    ImmutableArray<CautionDocument> Cautions,
    ImmutableArray<string> Notes,
    ImmutableArray<OwnDocument> OwnColumns,
    decimal? CeilingLow,
    decimal? CeilingHigh,
    WhatDecides? WhatDecides,
    OpeningOffer? OpeningOffer,
    decimal? WalkAway,
    ImmutableArray<string> Load);

internal sealed record ComparableDocument(
    string Id, DateOnly? SoldOn, decimal SalePrice, int? DaysOnMarket, decimal Distance);

internal sealed record CautionDocument(
    string Topic, string When, string Text, string Source, string Status, string Jurisdiction, string Act, bool IsGrave);

[JsonSerializable(typeof(PurchaseDocument))]
internal sealed partial class PurchaseJsonContext : JsonSerializerContext
{
    /// <summary>The document is read by people too, so letters and signs stay as they are.</summary>
    public static PurchaseJsonContext Readable { get; } = new(JsonStyle.Options());
}
