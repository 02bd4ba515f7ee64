using System.Diagnostics;
using System.Globalization;
using CsCheck;
using FlipAnalytics.Tests;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// Whether quarters reconcile on very many generated logs: a span is the sum of its parts wherever it is split, one part closes
/// as the next opens, every sum comes out to the smallest unit, and every cent in the files is on one line of the year's sheet or
/// in the list of what is not counted. The laws and the logs are those of the tests.
/// </summary>
internal static class ReconcileBenchmark
{
    public static int Run(int logs)
    {
        var watch = Stopwatch.StartNew();
        long reports = 0;
        QuarterLaws.Cases.Sample(
            given =>
            {
                ReportPeriod year = ReportPeriod.Of(new(given.Split.Year, 1, 1), new(given.Split.Year, 12, 31));
                string[] breaches =
                [
                    .. QuarterLaws.Breaches(given.Log, given.From, given.Split, given.To), .. YearLaws.Breaches(given.Log, year),
                ];
                if (breaches.Length > 0)
                    throw new InvalidOperationException(string.Join(Environment.NewLine, breaches));
                Interlocked.Add(ref reports, 5);
            },
            iter: logs);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{logs} logs, {reports} reports: everything reconciles, in {watch.Elapsed.TotalSeconds:0} s."));
        return 0;
    }
}
