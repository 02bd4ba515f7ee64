using System.Diagnostics;

namespace FlipAnalytics.Tests;

/// <summary>Runs the command as a user does: a process of its own, its output and its exit code.</summary>
internal static class Flip
{
    public static FlipRun Run(params string[] arguments) => RunIn([], arguments);

    public static FlipRun RunIn((string Name, string Value)[] environment, params string[] arguments) =>
        RunAt(AppContext.BaseDirectory, environment, arguments);

    /// <summary>Runs the copy of the command that stands in a folder.</summary>
    public static FlipRun RunAt(string folder, (string Name, string Value)[] environment, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = House.Repository.Root.FullName,
        };
        start.ArgumentList.Add(Path.Combine(folder, "flip.dll"));
        foreach (string argument in arguments)
            start.ArgumentList.Add(argument);
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, output, error.Result);
    }
}
