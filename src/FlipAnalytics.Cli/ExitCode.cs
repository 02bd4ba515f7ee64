namespace FlipAnalytics.Cli;

/// <summary>What a run ends with.</summary>
internal static class ExitCode
{
    public const int Done = 0;

    /// <summary>Something in the data needs the owner's eye.</summary>
    public const int DataProblem = 1;

    /// <summary>The command cannot be carried out as it was given.</summary>
    public const int CommandProblem = 2;
}
