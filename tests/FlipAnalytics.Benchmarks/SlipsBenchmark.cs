using System.Globalization;
using FlipAnalytics.Tests;

namespace FlipAnalytics.Benchmarks;

/// <summary>How far one slip of the pen, unmended in a log of 100 flips, moves the ceilings of 20 other pieces.</summary>
internal static class SlipsBenchmark
{
    public static void Run(int logs)
    {
        Console.WriteLine("| slip | median | largest | largest of all logs |");
        Console.WriteLine("|---|---|---|---|");
        foreach (var (name, make) in Slips.All)
        {
            double[][] moves =
            [
                .. Enumerable.Range(1, logs).Select(seed => (double[])[.. Slips.Moves(100, (ulong)seed, make)])
                    .Where(m => m.Length > 0),
            ];
            if (moves.Length == 0)
                continue;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {name} | {moves.Average(m => m[m.Length / 2]):0.0%} | {moves.Average(m => m[^1]):0.0%} | {moves.Max(m => m[^1]):0.0%} |"));
        }
    }
}
