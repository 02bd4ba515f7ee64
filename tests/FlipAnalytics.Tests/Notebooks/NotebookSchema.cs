using System.Text.Json;
using System.Text.Json.Nodes;
using FlipAnalytics.Tests.House;
using Json.Schema;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>The Jupyter project's schema of notebooks, format 4.5.</summary>
internal static class NotebookSchema
{
    private static readonly JsonSchema Schema = Read();

    /// <summary>Where a notebook breaks the schema, and how; nothing if it does not.</summary>
    public static IEnumerable<string> Faults(string notebook)
    {
        using var document = JsonDocument.Parse(notebook);
        EvaluationResults results = Schema.Evaluate(
            document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid ? [] :
        [
            .. results.Details.Where(detail => detail.HasErrors).SelectMany(detail =>
                detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}")),
            "The notebook breaks the schema.",
        ];
    }

    private static JsonSchema Read()
    {
        JsonNode schema = JsonNode.Parse(
            Repository.Read("tests", "FlipAnalytics.Tests", "ReferenceData", "nbformat", "nbformat.v4.5.schema.json"))!;
        // See the README beside it: draft 4 is older than what the validator reads.
        schema["$schema"] = "http://json-schema.org/draft-06/schema#";
        return JsonSchema.FromText(schema.ToJsonString());
    }
}
