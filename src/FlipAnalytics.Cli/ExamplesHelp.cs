using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace FlipAnalytics.Cli;

/// <summary>The usual help, followed by examples to copy.</summary>
internal sealed class ExamplesHelp(SynchronousCommandLineAction usual, string[] examples) : SynchronousCommandLineAction
{
    /// <summary>Gives a command an option --help that ends in examples.</summary>
    public static void AddTo(Command command, params string[] examples) => command.Options.Add(new HelpOption
    {
        Action = new ExamplesHelp(new HelpAction(), examples),
    });

    public override int Invoke(ParseResult parseResult)
    {
        int code = usual.Invoke(parseResult);
        parseResult.InvocationConfiguration.Output.Write(
            $"Examples:\n{string.Concat(examples.Select(e => $"  {e}\n"))}");
        return code;
    }
}
