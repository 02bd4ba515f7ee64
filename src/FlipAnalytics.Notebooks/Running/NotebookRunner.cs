using System.Text;
using System.Text.Json;
using Microsoft.DotNet.Interactive.Documents;
using Microsoft.DotNet.Interactive.Documents.Jupyter;

namespace FlipAnalytics.Notebooks;

/// <summary>Runs notebooks in this process, from top to bottom, without Jupyter.</summary>
public static class NotebookRunner
{
    private const string ParametersTag = "parameters";
    private const string GivenTag = "injected-parameters";

    /// <summary>Cells with this tag load the library under Jupyter; here it is loaded already.</summary>
    private const string JupyterTag = "jupyter";
    private const string AnswerTag = "answer";

    /// <summary>
    /// Runs a notebook and writes it with its outputs, and as a web page, into a folder. A cell that fails ends the run;
    /// what was shown until then is written all the same.
    /// </summary>
    /// <param name="path">The notebook.</param>
    /// <param name="folder">Folder for what is written; made if it is not there.</param>
    /// <param name="parameters">Values for variables of the cell tagged <c>parameters</c>.</param>
    /// <param name="progress">Told a line before each cell.</param>
    /// <param name="replaces">Whether files that flip did not write, or that changed since, are replaced too.</param>
    /// <exception cref="NotebookException">
    /// The file is no notebook, a parameter does not fit, or the notebook would be overwritten.
    /// </exception>
    /// <exception cref="FileRefusedException">A file in the folder may not be replaced.</exception>
    public static async Task<NotebookRun> RunAsync(
        string path, string folder, IReadOnlyDictionary<string, string> parameters, Action<string> progress, bool replaces = false)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(parameters);
        ArgumentNullException.ThrowIfNull(progress);
        string name = Path.GetFileNameWithoutExtension(path);
        string target = Path.GetFullPath(Path.Combine(folder, name + ".ipynb"));
        if (target == Path.GetFullPath(path))
            throw new NotebookException($"The run would overwrite {path} itself: name another folder with --out.");
        string page = Path.ChangeExtension(target, ".html");
        // Said before the run, which takes its time.
        foreach (string written in new[] { target, page })
        {
            if (OutputFiles.Refusal(written, OwnMark.IsOn, replaces) is { } refusal)
                throw new FileRefusedException(refusal);
        }

        KernelInfoCollection kernels = Kernels();
        InteractiveDocument notebook = await ReadAsync(path, kernels).ConfigureAwait(false);
        if (parameters.Count > 0 && !notebook.Elements.Any(cell => Tags(cell).Contains(ParametersTag)))
            throw new NotebookException($"{name} has no cell tagged '{ParametersTag}', so no parameter can be set.");

        FlipNotebook.Register();
        using var engine = new CellEngine();
        FailedCell? failure = await RunCellsAsync(notebook, engine, name, parameters, progress).ConfigureAwait(false);

        OutputFiles.Write(
            [OutputFile.Marked(target, Text(notebook, kernels)), OutputFile.Marked(page, NotebookPage.Render(notebook, name))], replaces);
        return new(target, page, failure);
    }

    internal static bool IsCode(InteractiveDocumentElement cell) => cell.KernelName == CellEngine.Language;

    internal static bool IsForJupyterOnly(InteractiveDocumentElement cell) => Tags(cell).Contains(JupyterTag);

    /// <summary>Whether what the cell shows is what the reader came for: a page begins with it.</summary>
    internal static bool IsAnswer(InteractiveDocumentElement cell) => Tags(cell).Contains(AnswerTag);

    private static async Task<FailedCell?> RunCellsAsync(
        InteractiveDocument notebook, CellEngine engine, string name, IReadOnlyDictionary<string, string> parameters,
        Action<string> progress)
    {
        foreach ((int index, InteractiveDocumentElement cell) in notebook.Elements.Index())
        {
            cell.Outputs.Clear();
            // Notebooks before format 4.5 have no ids, and what is written here is 4.5, which asks for them.
            if (string.IsNullOrEmpty(cell.Id))
                cell.Id = Html.Invariant($"cell-{index}");
        }

        var waiting = new Queue<InteractiveDocumentElement>(
            notebook.Elements.Where(cell => IsCode(cell) && !IsForJupyterOnly(cell)));
        int number = 0;
        while (waiting.TryDequeue(out InteractiveDocumentElement? cell))
        {
            number++;
            progress(Html.Invariant($"{name}: cell {number} of {number + waiting.Count}"));
            cell.ExecutionOrder = number;
            if (await engine.RunAsync(cell).ConfigureAwait(false) is { } message)
                return new(number, message);
            if (parameters.Count == 0 || !Tags(cell).Contains(ParametersTag))
                continue;
            InteractiveDocumentElement given = Given(NotebookParameters.Assignments(parameters, engine.Variables()));
            notebook.Elements.Insert(notebook.Elements.IndexOf(cell) + 1, given);
            number++;
            given.ExecutionOrder = number;
            if (await engine.RunAsync(given).ConfigureAwait(false) is { } refusal)
                return new(number, refusal);
        }

        return null;
    }

    private static string Text(InteractiveDocument notebook, KernelInfoCollection kernels)
    {
        notebook.Metadata["flip"] = OwnMark.Place;
        using var text = new MemoryStream();
        Notebook.Write(notebook, text, kernels);
        return Encoding.UTF8.GetString(text.ToArray());
    }

    private static InteractiveDocumentElement Given(string code) => new(code, CellEngine.Language)
    {
        Id = GivenTag,
        Metadata = new Dictionary<string, object> { ["tags"] = new[] { GivenTag } },
    };

    private static async Task<InteractiveDocument> ReadAsync(string path, KernelInfoCollection kernels)
    {
        try
        {
            return await InteractiveDocument.LoadAsync(new FileInfo(path), kernels).ConfigureAwait(false);
        }
        catch (JsonException e)
        {
            throw new NotebookException($"{path} is no notebook that can be read: {e.Message}", e);
        }
    }

    private static KernelInfoCollection Kernels() => new()
    {
        new KernelInfo(CellEngine.Language, "C#", ["cs", "C#", "c#"]),
    };

    private static IEnumerable<string> Tags(InteractiveDocumentElement cell) =>
        cell.Metadata is not { } metadata || !metadata.TryGetValue("tags", out object? tags) ? []
        : tags is JsonElement json ? json.EnumerateArray().Select(tag => tag.GetString() ?? "")
        : tags is IEnumerable<object> several ? several.Select(tag => tag.ToString() ?? "")
        : [];
}
