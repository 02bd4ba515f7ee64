using System.CommandLine;

namespace FlipAnalytics.Cli;

/// <summary><c>flip colors</c>: which colors, types, finishes, sources or channels sell fast and well.</summary>
internal sealed class ColorsCommand
{
    private readonly Option<GroupedBy?> by = Values.Word<GroupedBy>("--by", "What to compare; color unless given");
    private readonly Option<string?> next = Values.Text(
        "--for", "Type of the next piece; the type sold most unless given.", "TYPE");
    private readonly LogOptions log;

    private ColorsCommand(Command command)
    {
        command.Options.Add(by);
        command.Options.Add(next);
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
            "flip colors --log my-log --by finish --json");
        _ = new ColorsCommand(command);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        OpenedLog opened = log.Open(parsed);
        if (opened.Log is null)
            return opened.ExitCode;
        GroupComparisonReport report = GroupComparison.Of(
            opened.Log, parsed.GetValue(by) ?? GroupedBy.Color, parsed.GetValue(next));
        if (parsed.GetValue(log.Json))
        {
            Console.Out.Write(GroupComparisonJson.Render(report));
            return opened.ExitCode;
        }

        Console.Out.Write(GroupComparisonText.Render(report));
        if (opened.Sentence is { } sentence)
            Console.Out.Write($"\n{sentence}\n");
        return opened.ExitCode;
    }
}
