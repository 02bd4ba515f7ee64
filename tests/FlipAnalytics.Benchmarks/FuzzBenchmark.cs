using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using FlipAnalytics.Tests;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// Whether the command keeps its rules whatever it is given, on as many generated calls as one likes: in this process, or of a
/// published program, whose start costs more and whose native code is put to the test too. The cases and rules are those of the tests.
/// </summary>
internal static class FuzzBenchmark
{
    // The logs of the cases have some thirty rows.
    private const double LongestSeconds = 2;
    private const int Chances = 3;
    private const int FitsOneIn = 10;
    private const int MostShown = 20;
    private static readonly TimeSpan Hangs = TimeSpan.FromMinutes(2);

    /// <summary>Runs the cases of these numbers.</summary>
    /// <param name="first">Number of the first.</param>
    /// <param name="runs">How many.</param>
    /// <param name="program">The published command; null to run in this process.</param>
    /// <returns>0 if no rule was broken, else 1.</returns>
    public static int Run(int first, int runs, string? program)
    {
        var watch = Stopwatch.StartNew();
        var endings = new ConcurrentDictionary<int, int>();
        int broken = 0;
        double slowest = 0;
        Lock gate = new();
        // What this process prints can be told apart for one call at a time only.
        var workers = new ParallelOptions { MaxDegreeOfParallelism = program is null ? 1 : Environment.ProcessorCount };
        Parallel.For(first, first + runs, workers, number =>
        {
            FuzzCase given = FuzzCases.Of(number, FitsOneIn);
            double seconds = 0;
            string? breach = Try();
            if (breach is null && seconds > LongestSeconds)
                breach = string.Create(CultureInfo.InvariantCulture, $"it takes {seconds:0.0} s");
            lock (gate)
            {
                slowest = Math.Max(slowest, seconds);
                if (breach is not null && ++broken <= MostShown)
                    Console.WriteLine(CleanText.Lines($"Case {number}: {breach}\n  {string.Join(' ', given.Arguments)}"));
            }

            string? Try() => FuzzRules.Breach(given, call =>
            {
                (FlipRun run, seconds) = program is null ? Here(call) : RunOf(program, call);
                endings.AddOrUpdate(run.ExitCode, 1, (_, count) => count + 1);
                return run;
            });
        });
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{runs} calls, {broken} break a rule; {string.Join(", ", endings.OrderBy(ending => ending.Key).Select(ending => $"{ending.Value} end with {ending.Key}"))}; the slowest took {slowest:0.00} s; {watch.Elapsed.TotalMinutes:0.0} minutes."));
        return broken == 0 ? 0 : 1;
    }

    private static (FlipRun Run, double Seconds) Here(string[] call)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        FlipRun run = FlipHere.Run(call);
        return (run, (Environment.CpuUsage.TotalTime - before).TotalSeconds);
    }

    // A busy computer makes a clock say anything, so what takes long is tried again.
    private static (FlipRun Run, double Seconds) RunOf(string program, string[] call)
    {
        var (run, seconds) = RunOnce(program, call);
        for (int chance = 1; chance < Chances && seconds > LongestSeconds && run.ExitCode >= 0; chance++)
            seconds = Math.Min(seconds, RunOnce(program, call).Seconds);
        return (run, seconds);
    }

    private static (FlipRun Run, double Seconds) RunOnce(string program, string[] call)
    {
        var watch = Stopwatch.StartNew();
        using Process process = Process.Start(new ProcessStartInfo(program, call) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        if (process.WaitForExit(Hangs))
            return (new(process.ExitCode, output.Result, error.Result), watch.Elapsed.TotalSeconds);
        process.Kill();
        return (new(-1, "", "It hangs."), Hangs.TotalSeconds);
    }
}
