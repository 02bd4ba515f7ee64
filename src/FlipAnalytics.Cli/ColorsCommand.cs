using System.CommandLine;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Cli;

/// <summary><c>flip colors</c>: which colors, types, finishes, sources or channels sell fast and well.</summary>
internal sealed class ColorsCommand
{
    private readonly Option<GroupedBy?> by = Values.Word<GroupedBy>("--by", "What to compare; color unless given");
    private readonly Option<string?> next = Values.Text(
        "--for", "Type of the next piece; the type sold most unless given.", "TYPE");
    private readonly Option<bool> newWords = Values.NewWords();
    private readonly Option<bool> all = Values.All();
    private readonly Option<string?> tables = Values.Place("--tables", "Write the tables as CSV files into this folder.", "FOLDER");
    private readonly Option<string?> plot = Values.Picture(
        "Draw days on sale and sale price of each color against the average, ranked, into this file.");
    private readonly ForceOption force;
    private readonly LogOptions log;

    private ColorsCommand(Command command)
    {
        command.Options.Add(by);
        command.Options.Add(next);
        command.Options.Add(newWords);
        command.Options.Add(all);
        command.Options.Add(tables);
        command.Options.Add(plot);
        force = new(command, [plot, tables]);
        log = new(command);
        command.SetAction(Run);
    }

    public static Command Create()
    {
        var command = new Command("colors",
            "Which colors sell fast and well, whether your sales can tell at all, and what to paint the next piece.");
        ExamplesHelp.AddTo(command,
            "flip colors --log my-log",
            "flip colors --log my-log --for nightstand",
            "flip colors --log my-log --by finish --json",
            "flip colors --log my-log --tables colors-tables",
            "flip colors --log my-log --plot colors.png");
        _ = new ColorsCommand(command);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        bool replaces = force.IsGiven(parsed);
        OpenedLog opened = log.Open(parsed);
        if (opened.Log is null)
            return opened.ExitCode;
        string? type = parsed.GetValue(next);
        var rows = Task.Run(() => RowsWorthALook.In(opened.Log));
        GroupComparisonReport report = GroupComparison
            .Of(opened.Log, parsed.GetValue(by) ?? GroupedBy.Color, type, parsed.GetValue(newWords))
            .WithWorthALook(opened.Log, type, rows);
        if (parsed.GetValue(tables) is { } folder)
        {
            foreach (string path in ReportTableFiles.Write(report.Tables(), folder, replaces))
                Console.Error.WriteLine(path);
        }

        if (parsed.GetValue(plot) is { } picture)
            PlotFile.Save(GroupComparisonPlot.Of(report), picture, replaces);
        log.Print(parsed, opened, () => GroupComparisonJson.Render(report), () => GroupComparisonText.Render(report, parsed.GetValue(all)));
        return opened.ExitCode;
    }
}
