using System.Collections.Immutable;
using System.Text.Json;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>A cell as it stands in a notebook's file.</summary>
internal sealed record NotebookCell(
    string Kind, string? Id, string Source, ImmutableArray<string> Tags, JsonElement? ExecutionCount, JsonElement? Outputs)
{
    public bool IsCode => Kind == "code";
}

/// <summary>A notebook as it stands in its file, read by nothing but JSON.</summary>
internal sealed class NotebookText
{
    private NotebookText(JsonElement root)
    {
        Format = (root.GetProperty("nbformat").GetInt32(), root.GetProperty("nbformat_minor").GetInt32());
        Kernel = root.GetProperty("metadata").GetProperty("kernelspec").GetProperty("name").GetString();
        Cells = [.. root.GetProperty("cells").EnumerateArray().Select(Cell)];
    }

    public (int Major, int Minor) Format { get; }

    public string? Kernel { get; }

    public ImmutableArray<NotebookCell> Cells { get; }

    public IEnumerable<NotebookCell> Code => Cells.Where(cell => cell.IsCode);

    public static NotebookText Read(string path) => new(JsonSerializer.Deserialize<JsonElement>(File.ReadAllBytes(path)));

    /// <summary>A text that the format may split into lines.</summary>
    public static string Joined(JsonElement text) => text.ValueKind == JsonValueKind.Array
        ? string.Concat(text.EnumerateArray().Select(line => line.GetString()))
        : text.GetString()!;

    private static NotebookCell Cell(JsonElement cell)
    {
        JsonElement metadata = cell.GetProperty("metadata");
        return new(
            cell.GetProperty("cell_type").GetString()!,
            cell.TryGetProperty("id", out JsonElement id) ? id.GetString() : null,
            Joined(cell.GetProperty("source")),
            metadata.TryGetProperty("tags", out JsonElement tags) ? [.. tags.EnumerateArray().Select(tag => tag.GetString()!)] : [],
            cell.TryGetProperty("execution_count", out JsonElement count) ? count : null,
            cell.TryGetProperty("outputs", out JsonElement outputs) ? outputs : null);
    }
}
