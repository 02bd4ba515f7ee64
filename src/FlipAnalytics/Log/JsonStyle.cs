using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace FlipAnalytics;

/// <summary>How every JSON document looks: snake_case names, indented, line feeds, letters and signs as they are.</summary>
public static class JsonStyle
{
    /// <summary>A document as text that ends in a line feed; what would upset a terminal is escaped.</summary>
    /// <param name="document">The document.</param>
    /// <param name="kind">How its type is written.</param>
    public static string Text<T>(T document, JsonTypeInfo<T> kind) => CleanText.Json(JsonSerializer.Serialize(document, kind)) + "\n";

    /// <summary>New options, to be owned by one serializer context.</summary>
    public static JsonSerializerOptions Options() => new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
}
