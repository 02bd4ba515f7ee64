using System.Collections.Immutable;
using System.Text.Json.Serialization;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>The comparison as the JSON document that other programs read. Fields are only ever added.</summary>
public static class GroupComparisonJson
{
    /// <summary>The document, indented, ending in a line feed.</summary>
    /// <param name="report">The comparison.</param>
    public static string Render(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        ToldApart told = report.ToldApart;
        var document = new GroupComparisonDocument(
            report.AsOf, report.Workshop.Currency.Code, report.TargetWage, report.By.Singular(), report.Sold,
            new GroupComparisonSentences(report).Headline(), report.Advice,
            new(told.Confidence, told.LeastSales, told.Compared, told.TooFew, told.DaysDiffer, told.DaysP, told.PricesDiffer,
                told.PriceP, told.DaysPairs, told.PricePairs,
                told.LogRank is { } test ? new(test.ChiSquared, test.DegreesOfFreedom, test.P) : null, told.Hazards),
            report.Levels, report.Next, [.. report.WordNotes, .. report.Notes], report.WorthALook);
        return JsonStyle.Text(document, GroupComparisonJsonContext.Readable.GroupComparisonDocument);
    }
}

internal sealed record GroupComparisonDocument(
    DateOnly AsOf, string Currency, decimal TargetWage, string By, int Sold, string Answer, GroupAdvice Advice, ToldApartDocument ToldApart,
    ImmutableArray<LevelRecord> Levels, NextPiece? Next, ImmutableArray<string> Notes, string? WorthALook);

internal sealed record ToldApartDocument(
    double Confidence, int LeastSales, ImmutableArray<string> Compared, ImmutableArray<string> TooFew,
    bool DaysDiffer, double? DaysP, bool PricesDiffer, double? PriceP,
    ImmutableArray<PairDifference> DaysPairs, ImmutableArray<PairDifference> PricePairs, ChiSquaredTest? LogRank,
    ImmutableArray<LevelHazard> HazardRatios);

[JsonSerializable(typeof(GroupComparisonDocument))]
internal sealed partial class GroupComparisonJsonContext : JsonSerializerContext
{
    public static GroupComparisonJsonContext Readable { get; } = new(JsonStyle.Options());
}
