using System.Globalization;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// Time and memory of every verb from start to exit, for logs with every table that are ten times as large each time, in the
/// plain form and compiled natively.
/// </summary>
internal static class GrowthBenchmark
{
    // The least of so many; once is enough for what takes long.
    private const int Runs = 3;
    private const double LongSeconds = 5;

    private static readonly (string Name, string[] Arguments)[] Verbs =
    [
        ("check", ["check"]),
        ("buy", ["buy", "--type", "dresser", "--width", "48", "--color", "sage", "--sticker-price", "45"]),
        ("colors", ["colors"]),
        ("wages", ["wages"]),
        ("quarter", ["quarter"]),
        ("year", ["year"]),
    ];

    public static void Run(int[] sizes)
    {
        Console.WriteLine(Surroundings.Line());
        string work = Places.Work("growth");
        string plain = PublishedCommand.Make(work, "plain");
        string native = PublishedCommand.Native(work);
        string[] logs = [.. sizes.Select(flips => Log(work, flips))];
        Console.WriteLine($"| command | form | {string.Join(" | ", sizes.Select(flips => Text($"{flips:N0} flips")))} | last growth |");
        Console.WriteLine($"|---|---|{string.Concat(sizes.Select(_ => "---|"))}---|");
        foreach (var (name, arguments) in Verbs)
        {
            Say(name, "`dotnet flip.dll`", "dotnet", [$"{plain}.dll", .. arguments], logs);
            Say(name, "native", native, arguments, logs);
        }

        string[] alone = [.. logs.Select(PiecesAlone)];
        Say("buy, pieces.csv alone", "native", native, Verbs[1].Arguments, alone);
        Console.WriteLine();
        BesideR(work, native, alone[^1], sizes[^1]);
        TenTimes(work, native, sizes[^1]);
        Console.WriteLine(Surroundings.Load());
    }

    // R fits the designs that were written for it; reading the log and looking for slips is not among its work.
    private static void BesideR(string work, string native, string log, int flips)
    {
        string folder = Directory.CreateDirectory(Path.Combine(work, "designs")).FullName;
        foreach (string model in new[] { "price", "hours", "supplies", "days" })
        {
            ChildProcess.Run(
                native, "fit", "--log", log, "--model", model, "--plain", "--force", "--design", Path.Combine(folder, $"design-{model}.csv"));
        }

        double other = ChildProcess.Measure("Rscript", ["--vanilla", Places.Script("refit_log.R"), folder]).Seconds;
        double here = ChildProcess.Measure(native, [.. Verbs[1].Arguments, "--log", log]).Seconds;
        Console.WriteLine(Text($"{flips:N0} pieces, pieces.csv alone: R's script {other:0.0} s, native buy {here:0.0} s, {other / here:0.0} times as fast."));
    }

    private static void TenTimes(string work, string native, int flips)
    {
        string folder = Path.Combine(work, Text($"log-{flips}-ten-times"));
        SalesLog log = DemoLog.Generate(flips, 1).Log;
        SalesLogWriter.Write(
            new()
            {
                Date = log.Date,
                Workshop = log.Workshop,
                Pieces = [.. Enumerable.Range(0, 10).SelectMany(k => log.Pieces.Select(piece => piece with { Id = Text($"{piece.Id}-{k}") }))],
            },
            folder,
            overwrite: true);
        var (seconds, bytes) = ChildProcess.Measure(native, [.. Verbs[1].Arguments, "--log", folder]);
        Console.WriteLine(Text($"{10L * flips:N0} pieces, pieces.csv alone: native buy {seconds:0.0} s, {bytes / 1e6:0} MB."));
    }

    private static void Say(string name, string form, string program, string[] arguments, string[] logs)
    {
        (double Seconds, long PeakBytes)[] all =
        [
            .. logs.Select(log => Fastest(program, [.. arguments, "--log", log])),
        ];
        string growth = all.Length < 2 ? "" : Text($"{all[^1].Seconds / all[^2].Seconds:0.0}-fold");
        Console.WriteLine(
            $"| {name} | {form} | {string.Join(" | ", all.Select(run => Text($"{run.Seconds:0.00} s, {run.PeakBytes / 1e6:0} MB")))} | {growth} |");
    }

    private static (double Seconds, long PeakBytes) Fastest(string program, string[] arguments)
    {
        var best = ChildProcess.Measure(program, arguments);
        for (int run = 1; run < Runs && best.Seconds < LongSeconds; run++)
        {
            var again = ChildProcess.Measure(program, arguments);
            best = again.Seconds < best.Seconds ? again : best;
        }

        return best;
    }

    private static string Log(string work, int flips)
    {
        string folder = Path.Combine(work, Text($"log-{flips}"));
        Directory.CreateDirectory(folder);
        SalesLogWriter.Write(DemoLog.Generate(flips, 1).Log, folder, overwrite: true);
        return folder;
    }

    private static string PiecesAlone(string log)
    {
        string folder = $"{log}-pieces";
        Directory.CreateDirectory(folder);
        File.Copy(Path.Combine(log, "pieces.csv"), Path.Combine(folder, "pieces.csv"), overwrite: true);
        return folder;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
