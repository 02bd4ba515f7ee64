using FlipAnalytics.Notebooks;
using FlipAnalytics.Tests.House;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>Running a notebook captures what this process prints, so nothing else runs beside it.</summary>
[CollectionDefinition("notebooks", DisableParallelization = true)]
public sealed class NotebooksRunAlone : ICollectionFixture<ExecutedNotebooks>;

/// <summary>
/// Every notebook on two logs, each run once in this process; the tests look at what the runs wrote. A notebook that is
/// added to the folder is in all of them.
/// </summary>
public sealed class ExecutedNotebooks : IDisposable
{
    /// <summary>The invented log of the repository, in dollars and inches, and one of another size, currency and unit.</summary>
    public static readonly string[] Logs = ["data-demo", "yen"];

    private readonly string folder = Directory.CreateTempSubdirectory("flip-executed-").FullName;
    private readonly Dictionary<(string, string), NotebookRun> done = [];
    private string? yen;

    public static string[] Names => [.. NotebookFiles.All().Select(entry => entry.Name)];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    public async Task<NotebookRun> Run(string log, string name)
    {
        if (done.TryGetValue((log, name), out NotebookRun? before))
            return before;
        var parameters = new Dictionary<string, string> { ["today"] = "2026-04-02" };
        // The invented log is left to the notebook itself: it is what every notebook opens unless told otherwise.
        if (log == "yen")
            parameters["log-folder"] = YenFolder();
        return done[(log, name)] = await NotebookRunner.RunAsync(
            Repository.PathOf("notebooks", name + ".ipynb"), Path.Combine(folder, log), parameters, _ => { });
    }

    public async Task<List<(string Log, NotebookRun Run)>> All()
    {
        List<(string, NotebookRun)> all = [];
        foreach (string log in Logs)
        {
            foreach (string name in Names)
                all.Add((log, await Run(log, name)));
        }

        return all;
    }

    public string YenFolder()
    {
        if (yen is null)
        {
            yen = Path.Combine(folder, "yen-log");
            SalesLogWriter.Write(YenLog.Generate(60, 3), yen);
        }

        return yen;
    }
}
