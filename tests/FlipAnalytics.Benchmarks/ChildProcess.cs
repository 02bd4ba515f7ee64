using System.Diagnostics;

namespace FlipAnalytics.Benchmarks;

/// <summary>Runs programs and measures them from outside, start-up included.</summary>
internal static class ChildProcess
{
    /// <summary>What the program printed and how long it took from start to exit.</summary>
    /// <exception cref="InvalidOperationException">It did not end well.</exception>
    public static (string Output, double Seconds) Run(string program, params string[] arguments)
    {
        long start = Stopwatch.GetTimestamp();
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return process.ExitCode == 0
            ? (output, seconds)
            : throw new InvalidOperationException(
                $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {output}");
    }

    /// <summary>How long a program took, and the most memory it held.</summary>
    /// <exception cref="InvalidOperationException">It did not end well.</exception>
    public static (double Seconds, long PeakBytes) Measure(string program, params string[] arguments)
    {
        long start = Stopwatch.GetTimestamp(), peak = 0;
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        while (!process.WaitForExit(10))
        {
            process.Refresh();
            // The process may end between the two.
            peak = process.HasExited ? peak : Math.Max(peak, process.PeakWorkingSet64);
        }

        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return process.ExitCode == 0 ? (seconds, peak)
            : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {output.Result}");
    }

    /// <summary>The least time of several runs, in seconds.</summary>
    public static double Fastest(int runs, string program, params string[] arguments) =>
        Enumerable.Range(0, runs).Min(_ => Run(program, arguments).Seconds);

    /// <summary>This benchmark's own program, to start over.</summary>
    public static string Self => Environment.ProcessPath!;
}
