using System.CommandLine;

namespace FlipAnalytics.Cli;

/// <summary><c>--force</c> of a verb that writes files: what is there already is replaced.</summary>
internal sealed class ForceOption
{
    private readonly Option<bool> force;
    private readonly Option[] writing;

    /// <summary>Adds it to a verb.</summary>
    /// <param name="command">The verb.</param>
    /// <param name="writing">The options that name what is written; --force goes with one of them.</param>
    /// <param name="also">What else it does, as the beginning of a sentence's rest; empty for nothing.</param>
    public ForceOption(Command command, Option[] writing, string also = "")
    {
        this.writing = writing;
        force = Values.Flag("--force", also + OutputFiles.ForceRule);
        command.Options.Add(force);
    }

    /// <summary>Whether it is given.</summary>
    /// <exception cref="CommandProblemException">It is given though nothing is written.</exception>
    public bool IsGiven(ParseResult parsed)
    {
        if (!parsed.GetValue(force))
            return false;
        if (writing.Any(option => parsed.GetResult(option) is { Implicit: false }))
            return true;
        throw new CommandProblemException(
            $"--force replaces files, so it goes with {string.Join(" or ", writing.Select(option => option.Name))}; add one, or leave --force out.");
    }
}
