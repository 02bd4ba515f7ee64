using System.Diagnostics;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>Runs a program to its end and gives what it printed.</summary>
internal static class ChildProcess
{
    /// <summary>What the program wrote to standard output.</summary>
    /// <exception cref="InvalidOperationException">It failed or took too long; the message has what it wrote.</exception>
    public static async Task<string> Run(
        string program, string folder, TimeSpan limit, IEnumerable<string> arguments, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = folder,
        };
        foreach ((string name, string value) in environment)
            start.Environment[name] = value;
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        using var late = new CancellationTokenSource(limit);
        try
        {
            await process.WaitForExitAsync(late.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new InvalidOperationException($"{program} was stopped after {limit}.\n{await error}");
        }

        return process.ExitCode == 0
            ? await output
            : throw new InvalidOperationException($"{program} ended with {process.ExitCode}.\n{await output}\n{await error}");
    }
}
