using System.Diagnostics;

namespace FlipAnalytics.Benchmarks;

/// <summary>The times of a task done again and again in one process, in milliseconds.</summary>
/// <param name="First">The first time, with everything still to be compiled.</param>
/// <param name="Median">The median of the times after the warming up.</param>
/// <param name="Fastest">The least of them.</param>
internal sealed record Repeated(double First, double Median, double Fastest)
{
    public static Repeated Of(int warmUps, int runs, Action task)
    {
        double first = Time(task);
        for (int i = 1; i < warmUps; i++)
            task();
        double[] times = [.. Enumerable.Range(0, runs).Select(_ => Time(task)).Order()];
        return new(first, times[runs / 2], times[0]);
    }

    private static double Time(Action task)
    {
        long start = Stopwatch.GetTimestamp();
        task();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    public override string ToString() =>
        FormattableString.Invariant($"first {First:0} ms, then median {Median:0.0} ms, fastest {Fastest:0.0} ms");
}
