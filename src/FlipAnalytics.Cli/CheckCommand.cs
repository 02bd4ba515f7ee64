using System.CommandLine;
using System.Text.Json.Serialization;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Cli;

/// <summary><c>flip check</c>: what was read, and every problem with its mend.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var command = new Command("check",
            "Read the log and list what is in it, each problem with its place and mend, and what each missing table would add. Ends with 1 if anything was set aside.");
        ExamplesHelp.AddTo(command,
            "flip check --log my-log",
            "flip check --log my-log --all",
            "flip check --log my-log --json",
            "flip check --log my-log --plot gaps.png");
        Option<string?> folder = Values.Place("--log", "Folder of the log; the current folder unless given.", "FOLDER");
        Option<bool> json = Values.Flag("--json", "Print one JSON document instead of text.");
        Option<string?> plot = Values.Picture(
            "Draw how much of each column of pieces.csv is written down into this file.");
        command.Options.Add(folder);
        command.Options.Add(json);
        command.Options.Add(plot);
        var force = new ForceOption(command, [plot]);
        Option<bool> all = Values.All();
        command.Options.Add(all);
        command.SetAction(parsed =>
        {
            bool replaces = force.IsGiven(parsed);
            LogReading reading = SalesLogReader.Read(parsed.GetValue(folder) ?? ".");
            var check = LogCheck.Of(reading, Clock.Today);
            if (parsed.GetValue(plot) is { } picture)
                PlotFile.Save(LogPlot.Of(check), picture, replaces);
            Console.Out.Write(parsed.GetValue(json)
                ? JsonStyle.Text(check, CheckJsonContext.Readable.LogCheck)
                : LogCheckText.Render(check, parsed.GetValue(all)));
            if (!parsed.GetValue(json) && reading.Log is { } log && Clock.Matters(log))
                Console.Out.Write($"\n{Clock.Sentence}");
            // On a terminal the text above has said it; where either goes elsewhere, errors are on standard error as ever.
            if (Console.IsOutputRedirected || Console.IsErrorRedirected)
            {
                foreach (LogProblem problem in reading.Problems.Where(p => p.Severity == Severity.Error))
                    Console.Error.WriteLine(problem);
            }

            return reading.HasErrors ? ExitCode.DataProblem : ExitCode.Done;
        });
        return command;
    }
}

[JsonSourceGenerationOptions(UseStringEnumConverter = true)]
[JsonSerializable(typeof(LogCheck))]
internal sealed partial class CheckJsonContext : JsonSerializerContext
{
    public static CheckJsonContext Readable { get; } = new(JsonStyle.Options());
}
