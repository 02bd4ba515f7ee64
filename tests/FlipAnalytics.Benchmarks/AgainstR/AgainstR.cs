using System.Globalization;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// This library and R (lm, lme4, survival) one after the other on the same generated files: seconds, memory, and how far
/// the estimates are apart.
/// </summary>
internal static class AgainstR
{
    private static readonly (string Key, string Words)[] Steps =
    [
        ("read", "read the CSV file"),
        ("lm", "least squares, 52 columns"),
        ("mixed", "mixed model, 3 crossed groups"),
        ("weibull", "Weibull, 32 columns"),
    ];

    public static void Run(int[] sizes)
    {
        Console.WriteLine(Surroundings.Line());
        Console.WriteLine(ChildProcess.Run("Rscript", "--vanilla", "-e",
            "cat(R.version.string, '; lme4', format(packageVersion('lme4')), '; survival', format(packageVersion('survival')))").Output);
        Console.WriteLine();
        var processor = new Dictionary<int, Dictionary<string, double>>();
        Console.WriteLine("| rows | step | R | here | ratio | R, processor | here, processor | ratio | R, first | here, first | estimates differ by at most |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|");
        var notes = new List<string>();
        foreach (int rows in sizes)
            processor.Add(rows, Compare(rows, notes));
        Console.WriteLine();
        foreach (string note in notes)
            Console.WriteLine(note);
        foreach (var (rows, times) in processor.Where(p => processor.ContainsKey(10 * p.Key)))
        {
            Console.WriteLine(
                Text($"From {rows:N0} to {10 * rows:N0} rows the processor time here grows ")
                + string.Join(", ", Steps.Select(s => Text($"{processor[10 * rows][s.Key] / times[s.Key]:0.0}-fold ({s.Words})"))) + ".");
        }
    }

    private static Dictionary<string, double> Compare(int rows, List<string> notes)
    {
        string file = Path.Combine(Places.Work("against-r"), Text($"{rows}.csv"));
        if (!File.Exists(file))
            ChildProcess.Run("Rscript", "--vanilla", Places.Script("make_log.R"), Text($"{rows}"), file);
        string load = Surroundings.Load();

        // Whole processes that do everything once, for first times, memory and the whole; then others that repeat.
        var (hereText, hereWall) = ChildProcess.Run(ChildProcess.Self, "fit", file, "1");
        var (otherText, otherWall) = ChildProcess.Run("Rscript", "--vanilla", Places.Script("fit_log.R"), file, "1");
        Dictionary<string, double> here = KeyedNumbers.Parse(hereText);
        Dictionary<string, double> other = KeyedNumbers.Parse(otherText);
        var hereAgain = KeyedNumbers.Parse(ChildProcess.Run(ChildProcess.Self, "fit", file, rows > 500_000 ? "7" : rows > 50_000 ? "30" : "300").Output);
        var otherAgain = rows > 500_000
            ? other
            : KeyedNumbers.Parse(ChildProcess.Run("Rscript", "--vanilla", Places.Script("fit_log.R"), file, rows > 50_000 ? "3" : "20").Output);
        foreach (var (key, words) in Steps)
        {
            double hereFastest = Least("fastest", here, hereAgain);
            double otherFastest = Least("fastest", other, otherAgain);
            double hereProcessor = Least("processor", here, hereAgain);
            double otherProcessor = Least("processor", other, otherAgain);
            Console.WriteLine(Text(
                $"| {rows:N0} | {words} | {Seconds(otherFastest)} | {Seconds(hereFastest)} | {otherFastest / hereFastest:0.0} | {Seconds(otherProcessor)} | {Seconds(hereProcessor)} | {otherProcessor / hereProcessor:0.0} | {Seconds(other[$"first.{key}"])} | {Seconds(here[$"first.{key}"])} | {Difference(here, other, key)} |"));

            double Least(string kind, Dictionary<string, double> once, Dictionary<string, double> again) =>
                Math.Min(once[$"{kind}.{key}"], again[$"{kind}.{key}"]);
        }

        Console.WriteLine(Text(
            $"| {rows:N0} | whole process, once | {Seconds(otherWall)} | {Seconds(hereWall)} | {otherWall / hereWall:0.0} | | | | | | |"));
        notes.Add(Text(
            $"{rows:N0} rows: peak memory {other["peak.megabytes"]:0} MB in R, {here["peak.megabytes"]:0} MB here; {load} at the start, {Surroundings.Load()[13..]} at the end."));
        return Steps.ToDictionary(s => s.Key, s => hereAgain[$"processor.{s.Key}"]);
    }

    /// <summary>The largest relative difference of a fit's numbers; of a slope near 0 relative to 1.</summary>
    private static string Difference(Dictionary<string, double> here, Dictionary<string, double> other, string step)
    {
        var keys = other.Keys.Where(k => k.StartsWith($"{step}.", StringComparison.Ordinal)).ToArray();
        if (keys.Length == 0)
            return "";
        if (keys.Except(here.Keys).FirstOrDefault() is { } missing)
            throw new InvalidOperationException($"R reports {missing}, and the fit here does not.");
        string worst = keys.MaxBy(Of)!;
        return Text($"{Of(worst):0.0E+0} ({worst[(step.Length + 1)..]})");

        double Of(string key) => Math.Abs(here[key] - other[key]) / Math.Max(key.StartsWith("mixed.sd", StringComparison.Ordinal) ? 0 : 1, Math.Abs(other[key]));
    }

    private static string Seconds(double seconds) => seconds switch
    {
        < 0.001 => Text($"{seconds * 1000:0.00} ms"),
        < 0.1 => Text($"{seconds * 1000:0.0} ms"),
        < 1 => Text($"{seconds * 1000:0} ms"),
        _ => Text($"{seconds:0.0} s"),
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
