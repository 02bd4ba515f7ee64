using FlipAnalytics.Notebooks;
using FlipAnalytics.Tests.House;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>Running a notebook captures what this process prints, so nothing else runs beside it.</summary>
[CollectionDefinition("notebooks", DisableParallelization = true)]
public sealed class NotebooksRunAlone : ICollectionFixture<ExecutedNotebooks>;

/// <summary>
/// Every notebook on three logs, each run once in this process; the tests look at what the runs wrote. A notebook that is
/// added to the folder is in all of them.
/// </summary>
public sealed class ExecutedNotebooks : IDisposable
{
    /// <summary>The invented log of the repository, in dollars and inches.</summary>
    public const string Demo = "data-demo";

    /// <summary>A generated log of another size, currency and unit.</summary>
    public const string Yen = "yen";

    /// <summary>A log without a row.</summary>
    public const string NoSale = "no-sale";

    private readonly string folder = Directory.CreateTempSubdirectory("flip-executed-").FullName;
    private readonly Dictionary<(string, string), NotebookRun> done = [];

    public static string[] Names => [.. NotebookFiles.All().Select(entry => entry.Name)];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    public async Task<NotebookRun> Run(string log, string name)
    {
        if (done.TryGetValue((log, name), out NotebookRun? before))
            return before;
        var parameters = new Dictionary<string, string> { ["today"] = "2026-04-02" };
        // The invented log is what every notebook opens unless told otherwise.
        if (log != Demo)
            parameters["log-folder"] = FolderOf(log);
        return done[(log, name)] = await NotebookRunner.RunAsync(
            Repository.PathOf("notebooks", name + ".ipynb"), Path.Combine(folder, log), parameters, _ => { });
    }

    public async Task<List<(string Log, NotebookRun Run)>> All(params string[] logs)
    {
        List<(string, NotebookRun)> all = [];
        foreach (string log in logs)
        {
            foreach (string name in Names)
                all.Add((log, await Run(log, name)));
        }

        return all;
    }

    /// <summary>Where a log stands; it is written when it is first asked for.</summary>
    public string FolderOf(string log)
    {
        if (log == Demo)
            return Repository.PathOf(Demo);
        string path = Directory.CreateDirectory(Path.Combine(folder, log + "-log")).FullName;
        string pieces = Path.Combine(path, Columns.Pieces.File);
        if (log == Yen && !File.Exists(pieces))
            SalesLogWriter.Write(YenLog.Generate(60, 3), path);
        if (log == NoSale)
            File.WriteAllText(pieces, "type,bought_price,sold_price\n");
        return path;
    }
}
