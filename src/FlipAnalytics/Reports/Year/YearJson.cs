using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>A year's sheet as a JSON document. Fields are only ever added.</summary>
public static class YearJson
{
    /// <summary>The document, indented, ending in a line feed; null is unknown.</summary>
    /// <param name="report">The report.</param>
    /// <param name="files">Files that were written with it.</param>
    /// <param name="journal">The journal that was written with it; null for none.</param>
    public static string Render(YearReport report, ImmutableArray<YearFile> files = default, WrittenJournal? journal = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        var document = new YearDocument(
            report.AsOf,
            report.Workshop.Currency.Code,
            report.Period,
            report.Reckoned,
            report.IsPart,
            YearSentences.Headline(report),
            report.Profit.Pieces,
            report.Profit.Net,
            [.. report.Lines.Where(line => line.IsAlways || line.Amount != 0)
                .Select(line => new YearDocumentLine(line.Section, line.Name, line.What, line.Sign.ToString(), line.Amount))],
            report.CostOfGoods,
            report.Sales,
            report.Left,
            report.Driving,
            report.Overheads,
            report.Tools,
            report.Stock,
            report.Supplies,
            report.Cash,
            report.Tally,
            YearSentences.Limits(report),
            YearPrompts.Whose(report.Workshop),
            report.Prompts,
            report.Lacking,
            report.Notes,
            report.Sums,
            report.SetAside,
            report.WorthALook,
            report.Chosen,
            report.StillToArise,
            files.IsDefault ? [] : files,
            journal);
        return JsonStyle.Text(document, YearJsonContext.Readable.YearDocument);
    }
}

internal sealed record YearDocumentLine(string Section, string Name, string What, string Sign, decimal Amount);

internal sealed record YearDocument(
    DateOnly AsOf,
    string Currency,
    ReportPeriod Period,
    ReportPeriod Reckoned,
    bool IsPart,
    string Headline,
    int Pieces,
    decimal Profit,
    ImmutableArray<YearDocumentLine> Lines,
    YearCostOfGoods CostOfGoods,
    ImmutableArray<QuarterSale> Sales,
    ImmutableArray<YearLeft> Left,
    YearDriving Driving,
    ImmutableArray<YearOverhead> Overheads,
    ImmutableArray<YearTool> Tools,
    ImmutableArray<YearStockPiece> Stock,
    ImmutableArray<YearSupply> Supplies,
    QuarterCash Cash,
    ImmutableArray<YearTally> Tally,
    ImmutableArray<string> Limits,
    string PromptsFor,
    ImmutableArray<QuarterPrompt> Prompts,
    ImmutableArray<string> Lacking,
    ImmutableArray<string> Notes,
    ImmutableArray<QuarterSum> Sums,
    ImmutableArray<RowsSetAside> SetAside,
    string? WorthALook,
    string? Chosen,
    decimal StillToArise,
    ImmutableArray<YearFile> Files,
    WrittenJournal? Journal);

[JsonSerializable(typeof(YearDocument))]
internal sealed partial class YearJsonContext : JsonSerializerContext
{
    public static YearJsonContext Readable { get; } = new(Written());

    private static JsonSerializerOptions Written()
    {
        JsonSerializerOptions options = JsonStyle.Options();
        options.Converters.Add(new JsonStringEnumConverter<LeftAs>(JsonNamingPolicy.SnakeCaseLower));
        options.Converters.Add(new JsonStringEnumConverter<TripPurpose>(JsonNamingPolicy.SnakeCaseLower));
        return options;
    }
}
