using System.Globalization;
using FlipAnalytics.Tests;
using Judged = FlipAnalytics.Tests.FirstSales.Judged;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// How often a verdict on the first days is wrong: logs that hold the first few sales of generated towns, each with prices,
/// hours and a price level of its own, and offers whose true most to pay is known.
/// </summary>
internal static class FirstVerdicts
{
    public static void Run(int logs)
    {
        foreach (bool guesses in new[] { false, true })
        {
            Console.WriteLine(guesses ? "\nwith the owner's guesses of three types" : "without guesses");
            Console.WriteLine("| sales | before: wrong | wrong side | firm | wrong | wrong side |");
            Console.WriteLine("|---|---|---|---|---|---|");
            for (int sales = 0; sales <= 10; sales++)
                Console.WriteLine(Row(sales, guesses, logs));
        }
    }

    private static string Row(int sales, bool guesses, int logs)
    {
        Judged[] all = [.. Enumerable.Range(1, logs).AsParallel().AsOrdered().SelectMany(seed => FirstSales.Judge(sales, guesses, (ulong)seed))];
        Judged[] firm = [.. all.Where(judged => judged.IsFirm)];
        string Share(Judged[] of, Func<Judged, bool> which) =>
            of.Length == 0 ? "-" : (100.0 * of.Count(which) / of.Length).ToString("0.0", CultureInfo.InvariantCulture) + " %";
        Judged[] answered = [.. all.Where(judged => judged.IsAnswered)];
        return $"| {sales} | {Share(answered, j => j.IsWrong)} | {Share(answered, j => j.IsWrongSide)} "
            + $"| {Share(all, j => j.IsFirm)} | {Share(firm, j => j.IsWrong)} | {Share(firm, j => j.IsWrongSide)} |";
    }
}
