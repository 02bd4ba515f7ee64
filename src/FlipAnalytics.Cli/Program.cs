using System.CommandLine;
using System.CommandLine.Help;
using System.Text;

namespace FlipAnalytics.Cli;

/// <summary>The command <c>flip</c>.</summary>
internal static class Program
{
    public static int Main(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        Console.SetOut(new CleanWriter(Console.Out));
        Console.SetError(new CleanWriter(Console.Error, isAMessageALine: true));
        return Run(args);
    }

    /// <summary>What a call says. A word that begins with @ is a word, not the name of a file with more of them.</summary>
    internal static ParseResult Parse(string[] args)
    {
        var root = new RootCommand(
            "What to pay for second-hand furniture, what it brings, and what the work pays, from the log you keep.");
        root.Subcommands.Add(CheckCommand.Create());
        root.Subcommands.Add(BuyCommand.Create());
        root.Subcommands.Add(ColorsCommand.Create());
        root.Subcommands.Add(WagesCommand.Create());
        root.Subcommands.Add(QuarterCommand.Create());
        root.Subcommands.Add(YearCommand.Create());
        root.Subcommands.Add(FitCommand.Create());
        root.Subcommands.Add(NotebookCommand.Create());
        root.Subcommands.Add(DemoCommand.Create());
        return root.Parse(args, new() { ResponseFileTokenReplacer = null });
    }

    private static int Run(string[] args)
    {
        try
        {
            ParseResult parsed = Parse(args);
            if (parsed.Action is not (HelpAction or ExamplesHelp) && CommandWords.Problems(parsed) is { IsEmpty: false } problems)
            {
                foreach (string problem in problems)
                    Console.Error.WriteLine(problem);
                Console.Error.WriteLine($"See: {CommandWords.PathOf(parsed.CommandResult)} --help");
                return ExitCode.CommandProblem;
            }

            return parsed.Invoke(new() { EnableDefaultExceptionHandler = false });
        }
        catch (CommandProblemException e)
        {
            Console.Error.WriteLine(e.Message);
            return ExitCode.CommandProblem;
        }
        catch (UnclearWordException e)
        {
            foreach (string question in e.Questions)
                Console.Error.WriteLine(question);
            return ExitCode.CommandProblem;
        }
        catch (FileRefusedException e)
        {
            Console.Error.WriteLine(e.Message);
            return ExitCode.CommandProblem;
        }
        catch (NotEnoughDataException e)
        {
            Console.Error.WriteLine(e.Message);
            return ExitCode.DataProblem;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"{e.Message} Check the path, the room on the disk, and that you may write there.");
            return ExitCode.CommandProblem;
        }
        catch (Exception e)
        {
            // A fault of ours: the user gets a sentence, never a stack trace, and their files are as they were.
            Console.Error.WriteLine($"Something went wrong inside flip: {e.Message} Your files are unchanged; please report this.");
            return ExitCode.DataProblem;
        }
    }
}
