using System.Collections.Immutable;
using System.Text.Json;

namespace FlipAnalytics.Notebooks;

/// <summary>A notebook that comes with the library.</summary>
/// <param name="Name">Its name, such as 01-sourcing.</param>
/// <param name="Title">Its heading, the question it answers.</param>
public sealed record NotebookEntry(string Name, string Title);

/// <summary>The notebooks that come with the library; a build puts them beside it.</summary>
public static class NotebookFiles
{
    private const string Ending = ".ipynb";

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "notebooks");

    /// <summary>All of them, by name.</summary>
    public static ImmutableArray<NotebookEntry> All() => !Directory.Exists(Folder) ? [] :
    [
        .. Directory.EnumerateFiles(Folder, "*" + Ending)
            .Order(StringComparer.Ordinal)
            .Select(path => new NotebookEntry(Path.GetFileNameWithoutExtension(path), Title(path))),
    ];

    /// <summary>The file of a notebook.</summary>
    /// <param name="name">The name of one that comes with the library, or the path of any notebook.</param>
    /// <exception cref="NotebookException">There is none.</exception>
    public static string Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (name.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) && File.Exists(name))
        {
            return PlainFile.IsPipeOrDevice(name)
                ? throw new NotebookException($"{name} is a pipe or a device, which is not read: name an ordinary file.")
                : Path.GetFullPath(name);
        }

        string own = Path.Combine(Folder, Path.GetFileName(name) + Ending);
        if (Path.GetFileName(name) == name && File.Exists(own))
            return own;
        throw new NotebookException(
            $"There is no notebook '{name}'{DidYouMean(name, All().Select(entry => entry.Name))} Name one of {string.Join(", ", All().Select(entry => entry.Name))}, or a file that ends in {Ending}.");
    }

    /// <summary>The question that ends a refusal: the name that was likely meant, or no more than a full stop.</summary>
    internal static string DidYouMean(string written, IEnumerable<string> known) =>
        new KnownWords(known).Meant(written) is { } meant ? $": did you mean {meant}?" : ".";

    private static string Title(string path)
    {
        using var notebook = JsonDocument.Parse(File.ReadAllBytes(path));
        foreach (JsonElement cell in notebook.RootElement.GetProperty("cells").EnumerateArray())
        {
            JsonElement source = cell.GetProperty("source");
            string text = source.ValueKind == JsonValueKind.Array
                ? string.Concat(source.EnumerateArray().Select(line => line.GetString()))
                : source.GetString() ?? "";
            if (text.StartsWith("# ", StringComparison.Ordinal))
                return text.Split('\n')[0][2..].Trim();
        }

        return "";
    }
}
