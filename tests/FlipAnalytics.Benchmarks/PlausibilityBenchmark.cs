using System.Globalization;

namespace FlipAnalytics.Benchmarks;

/// <summary>False reports per hundred rows of clean generated logs.</summary>
internal static class PlausibilityBenchmark
{
    public static void Run(int logs)
    {
        Console.WriteLine("| pieces | tails | rows | reports | per 100 rows | where |");
        Console.WriteLine("|---|---|---|---|---|---|");
        foreach (int pieces in new[] { 5, 10, 25, 60, 150, 300, 1000, 3000 })
        {
            foreach (bool heavy in new[] { false, true })
            {
                int rows = 0;
                var found = new List<LogFinding>();
                for (ulong seed = 1; seed <= (ulong)(pieces > 500 ? Math.Max(2, logs / 8) : logs); seed++)
                {
                    SalesLog log = DemoLog.Generate(pieces, seed, DemoMarket.Standard with { HeavyTails = heavy }).Log;
                    rows += log.Pieces.Length + log.AskingPrices.Length + log.Hours.Length + log.Supplies.Length
                        + log.Uses.Length + log.Trips.Length + log.Tools.Length + log.Overheads.Length;
                    found.AddRange(LogFindings.In(log));
                }

                string where = string.Join(", ", found.GroupBy(f => f.File + " " + f.Column).OrderByDescending(g => g.Count()).Take(6).Select(g => $"{g.Key} {g.Count()}"));
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"| {pieces} | {heavy} | {rows} | {found.Count} | {100.0 * found.Count / rows:0.00} | {where} |"));
            }
        }
    }
}
