using System.Globalization;
using System.Runtime.InteropServices;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// An answer in the store aisle from a standing start: <c>flip buy</c> in each form in which the command can be published,
/// against a script in R that fits the same four models of the same log. Wall time with the start of the process.
/// </summary>
internal static class ColdStartBenchmark
{
    private const int Runs = 7;
    private const int Flips = 300;

    public static void Run()
    {
        Console.WriteLine(Surroundings.Line());
        string work = Places.Work("cold-start");
        string log = Path.Combine(work, "log");
        Directory.CreateDirectory(log);
        SalesLogWriter.Write(DemoLog.Generate(Flips, 1).Log, log, overwrite: true);
        string platform = RuntimeInformation.RuntimeIdentifier;
        string plain = PublishedCommand.Make(work, "plain");
        string ready = PublishedCommand.Make(work, "ready", "-r", platform, "--self-contained", "false", "-p:PublishReadyToRun=true");
        string native = PublishedCommand.Native(work);
        foreach (string model in new[] { "price", "hours", "supplies", "days" })
            ChildProcess.Run(plain, "fit", "--log", log, "--model", model, "--plain", "--design", Path.Combine(work, $"design-{model}.csv"));

        string[] question = ["buy", "--log", log, "--type", "dresser", "--width", "48", "--color", "sage", "--sticker-price", "45"];
        string[] answers = [.. new[] { plain, ready, native }.Select(form => ChildProcess.Run(form, question).Output).Distinct()];
        Console.WriteLine(answers.Length == 1 ? "All forms print the same." : "THE FORMS PRINT DIFFERENT ANSWERS.");
        Console.WriteLine();
        string script = Places.Script("refit_log.R");
        double other = ChildProcess.Fastest(Runs, "Rscript", "--vanilla", script, work);
        Console.WriteLine($"| form | fastest of {Runs} | R is slower by |");
        Console.WriteLine("|---|---|---|");
        Say("R script with the same fits", other, other);
        Say("`dotnet flip.dll`", ChildProcess.Fastest(Runs, "dotnet", [$"{plain}.dll", .. question]), other);
        Say("`flip` on the installed .NET", ChildProcess.Fastest(Runs, plain, question), other);
        Say("`flip` on the installed .NET, ReadyToRun", ChildProcess.Fastest(Runs, ready, question), other);
        Say("`flip`, native", ChildProcess.Fastest(Runs, native, question), other);
        Console.WriteLine();
        Console.WriteLine(Surroundings.Load());
    }

    private static void Say(string form, double seconds, double other) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"| {form} | {seconds * 1000:0} ms | {other / seconds:0.0} times |"));
}
