using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>A fitted model as a JSON document. Fields are only ever added.</summary>
public static class FitJson
{
    /// <summary>The document, indented, ending in a line feed. Numbers read back to the same double.</summary>
    /// <param name="report">The fitted model.</param>
    public static string Render(FitReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var document = new FitDocument(
            report.Model.ToString().ToLowerInvariant(), report.Estimator.ToString().ToLowerInvariant(), report.Plain,
            report.AsOf, report.N, report.Formula, report.Terms, report.Random, report.ResidualVariance,
            report.LogLikelihood, report.Criterion, report.Distribution, report.Scale, report.LogScaleStandardError,
            report.DroppedTerms, report.Converged, report.Diagnostics);
        return JsonStyle.Text(document, FitJsonContext.Readable.FitDocument);
    }
}

internal sealed record FitDocument(
    string Model,
    string Estimator,
    bool Plain,
    DateOnly AsOf,
    int N,
    string Formula,
    ImmutableArray<FitTerm> Terms,
    ImmutableArray<FitGroup> Random,
    double? ResidualVariance,
    double LogLikelihood,
    string Criterion,
    string? Distribution,
    double? Scale,
    double? LogScaleStandardError,
    ImmutableArray<string> DroppedTerms,
    bool Converged,
    FitDiagnostics? Diagnostics);

[JsonSerializable(typeof(FitDocument))]
internal sealed partial class FitJsonContext : JsonSerializerContext
{
    public static FitJsonContext Readable { get; } = new(JsonStyle.Options());
}
