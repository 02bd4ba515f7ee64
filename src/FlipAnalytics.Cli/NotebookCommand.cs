using System.CommandLine;
using System.Globalization;

namespace FlipAnalytics.Cli;

/// <summary><c>flip notebook</c>: pages that explain an answer step by step, run without Jupyter.</summary>
internal static class NotebookCommand
{
    // Made by running, like what a build makes: it can be thrown away.
    private const string UsualFolder = "artifacts/notebooks";

    public static Command Create()
    {
        var command = new Command("notebook",
            "Pages that answer a question step by step and explain it on the way, from your log.");
        ExamplesHelp.AddTo(command,
            "flip notebook list",
            "flip notebook run 00-start --log my-log",
            "flip notebook run 01-sourcing --log my-log -p type=dresser -p width=48 -p sticker-price=45");
        command.Subcommands.Add(List());
        command.Subcommands.Add(RunOne());
        return command;
    }

    private static Command List()
    {
        var list = new Command("list", "List the notebooks and the question each answers.");
        list.SetAction(_ => NotebookProgram.Run("list"));
        return list;
    }

    private static Command RunOne()
    {
        var run = new Command("run",
            "Run a notebook and write it with its outputs, and as a web page that needs no other file.");
        ExamplesHelp.AddTo(run,
            "flip notebook run 00-start --log my-log",
            "flip notebook run 01-sourcing --log my-log -p type=dresser -p width=48 -p sticker-price=45 --out pages");
        var name = new Argument<string>("NAME") { Description = "Name of a notebook, or a file that ends in .ipynb." };
        var parameters = new Option<string[]>("-p")
        {
            Description = "A setting of the notebook, such as -p type=dresser; may be given several times.",
            HelpName = "KEY=VALUE",
        };
        Option<string?> log = Values.Place("--log", "Folder of the log; the invented log data-demo unless given.", "FOLDER");
        Option<DateOnly?> asOf = Values.AsOf();
        Option<string?> folder = Values.Place("--out", $"Folder for what is written; {UsualFolder} unless given.", "FOLDER");
        run.Arguments.Add(name);
        Option<bool> force = Values.Flag("--force", OutputFiles.ForceRule);
        foreach (Option option in new Option[] { parameters, log, asOf, folder, force })
            run.Options.Add(option);
        run.SetAction(parsed =>
        {
            Dictionary<string, string> given = Given(parsed.GetValue(parameters) ?? []);
            if (parsed.GetValue(log) is { } logFolder)
                given["log-folder"] = Path.GetFullPath(logFolder);
            if (parsed.GetValue(asOf) is { } date)
                given["as-of"] = date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            return NotebookProgram.Run(
                ["run", .. parsed.GetValue(force) ? ["--force"] : Array.Empty<string>(), parsed.GetValue(name)!, parsed.GetValue(folder) ?? UsualFolder, .. given.Select(pair => $"{pair.Key}={pair.Value}")]);
        });
        return run;
    }

    private static Dictionary<string, string> Given(string[] parameters)
    {
        var given = new Dictionary<string, string>();
        foreach (string parameter in parameters)
        {
            int equals = parameter.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0)
                throw new CommandProblemException($"-p needs a name and a value, such as -p type=dresser; found '{parameter}'.");
            given[parameter[..equals].Trim()] = parameter[(equals + 1)..];
        }

        return given;
    }
}
