namespace FlipAnalytics.Tests;

/// <summary>What a run printed and ended with.</summary>
internal sealed record FlipRun(int ExitCode, string Output, string Error)
{
    /// <summary>The lines on standard error.</summary>
    public string[] ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
