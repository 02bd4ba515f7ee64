using System.Text.Json;
using FlipAnalytics.Notebooks;
using FlipAnalytics.Tests.House;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>
/// Jupyter, with the kernel of <c>.config</c>, shows the same as the command. It is given the notebooks that the command
/// has executed, because they hold the same settings; it throws their outputs away and runs every cell anew.
/// </summary>
[Collection("notebooks")]
public sealed class JupyterTests(ExecutedNotebooks executed) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("flip-jupyter-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [JupyterFact]
    public async Task JupyterShowsTheSameAsTheCommandOnBothLogs()
    {
        LinkRooms();
        List<(string Log, NotebookRun Run)> runs = await executed.All(ExecutedNotebooks.Demo, ExecutedNotebooks.Yen);
        List<string> copies = [];
        foreach ((string log, NotebookRun run) in runs)
        {
            string beside = Directory.CreateDirectory(Path.Combine(folder, log + "-notebooks")).FullName;
            copies.Add(Path.Combine(beside, Path.GetFileName(run.Notebook)));
            File.Copy(run.Notebook, copies[^1]);
        }

        await ChildProcess.Run("dotnet", Repository.Root.FullName, TimeSpan.FromMinutes(3), ["tool", "restore"]);
        await ChildProcess.Run(
            OutsideProgram.NbConvert.Path, folder, TimeSpan.FromMinutes(8),
            ["--to", "notebook", "--execute", "--inplace", .. copies],
            ("JUPYTER_PATH", Path.Combine(folder, ".config", "jupyter")));
        Assert.All(runs.Zip(copies), pair =>
        {
            string written = File.ReadAllText(pair.Second);
            Assert.Empty(NotebookSchema.Faults(written));
            Assert.DoesNotMatch("http://(?!127.0.0.1)", written);
            // Jupyter alone runs this cell, so it tells that Jupyter ran at all.
            NotebookCell load = NotebookText.Read(pair.Second).Code.First();
            Assert.Equal(JsonValueKind.Number, load.ExecutionCount!.Value.ValueKind);
            List<string> shown = Shown(pair.First.Run.Notebook);
            Assert.NotEmpty(shown);
            Assert.Equal(shown, Shown(pair.Second));
        });
    }

    // A local tool and the path of the library are looked for from the notebook's folder, so it stands as in the repository.
    private void LinkRooms()
    {
        foreach (string room in new[] { "src", ".config", "data-demo" })
            Directory.CreateSymbolicLink(Path.Combine(folder, room), Repository.PathOf(room));
    }

    /// <summary>What each cell shows, as text or as the picture's bytes; all but the cell that is for Jupyter alone.</summary>
    private static List<string> Shown(string path) =>
    [
        .. from cell in NotebookText.Read(path).Code
           where !cell.Tags.Contains("jupyter")
           from output in cell.Outputs!.Value.EnumerateArray()
           from part in Parts(output)
           select $"{cell.Id}, {part.Name}: {NotebookText.Joined(part.Value).ReplaceLineEndings("\n").Trim()}",
    ];

    private static IEnumerable<(string Name, JsonElement Value)> Parts(JsonElement output) =>
        output.TryGetProperty("data", out JsonElement data)
            ? data.EnumerateObject().Select(part => (part.Name, part.Value)).OrderBy(part => part.Name, StringComparer.Ordinal)
            : output.EnumerateObject().Where(part => part.Name is "text" or "evalue").Select(part => (part.Name, part.Value));
}
