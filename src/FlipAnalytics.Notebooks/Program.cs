using System.Text;

namespace FlipAnalytics.Notebooks;

/// <summary>
/// The program behind <c>flip notebook</c>. It stands apart from the command, so that no other verb waits for the notebook
/// engine to be fetched and built. Its arguments come from the command, checked: <c>list</c>, or
/// <c>run [--force] NAME FOLDER KEY=VALUE...</c>. It ends with 0 when done, 1 when a cell failed, 2 when it cannot run as asked.
/// </summary>
internal static class Program
{
    private const string Force = "--force";
    private const int Done = 0;
    private const int CellFailed = 1;
    private const int CannotRun = 2;

    public static async Task<int> Main(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        Console.SetOut(new CleanWriter(Console.Out));
        Console.SetError(new CleanWriter(Console.Error));
        try
        {
            return args switch
            {
                ["list"] => List(),
                ["run", Force, var name, var folder, .. var given] => await RunAsync(name, folder, given, replaces: true).ConfigureAwait(false),
                ["run", var name, var folder, .. var given] => await RunAsync(name, folder, given, replaces: false).ConfigureAwait(false),
                _ => throw new NotebookException(
                    "This program belongs to flip: see flip notebook --help for what it does."),
            };
        }
        catch (Exception e) when (e is NotebookException or FileRefusedException)
        {
            await Console.Error.WriteLineAsync(e.Message).ConfigureAwait(false);
            return CannotRun;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"{e.Message} Check the path, the room on the disk, and that you may write there.").ConfigureAwait(false);
            return CannotRun;
        }
        catch (Exception e)
        {
            // A fault of ours: the user gets a sentence, never a stack trace, as from every other verb.
            await Console.Error.WriteLineAsync($"Something went wrong inside flip: {e.Message} Your files are unchanged; please report this.")
                .ConfigureAwait(false);
            return CellFailed;
        }
    }

    private static int List()
    {
        foreach (NotebookEntry entry in NotebookFiles.All())
            Console.Out.Write($"{entry.Name,-16}{entry.Title}\n");
        return Done;
    }

    private static async Task<int> RunAsync(string name, string folder, string[] given, bool replaces)
    {
        var parameters = given.Select(pair => pair.Split('=', 2)).ToDictionary(pair => pair[0], pair => pair[1]);
        NotebookRun run = await NotebookRunner.RunAsync(NotebookFiles.Find(name), folder, parameters, Console.Error.WriteLine, replaces)
            .ConfigureAwait(false);
        if (run.Failure is { } failure)
            await Console.Error.WriteLineAsync($"{name}, cell {failure.Number}: {failure.Message}").ConfigureAwait(false);
        await Console.Out.WriteAsync($"{run.Page}\n{run.Notebook}\n").ConfigureAwait(false);
        return run.Failure is null ? Done : CellFailed;
    }
}
