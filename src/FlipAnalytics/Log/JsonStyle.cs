using System.Text.Encodings.Web;
using System.Text.Json;

namespace FlipAnalytics;

/// <summary>How every JSON document looks: snake_case names, indented, line feeds, letters and signs as they are.</summary>
public static class JsonStyle
{
    /// <summary>New options, to be owned by one serializer context.</summary>
    public static JsonSerializerOptions Options() => new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
}
