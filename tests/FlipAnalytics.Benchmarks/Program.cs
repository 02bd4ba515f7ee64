using System.Globalization;
using FlipAnalytics.Benchmarks;

switch (args)
{
    case ["surplus"]:
        SurplusBenchmark.Run();
        return 0;
    case ["against-r", .. string[] sizes]:
        AgainstR.Run(sizes is [] ? [300, 3_000, 100_000, 1_000_000] : [.. sizes.Select(s => int.Parse(s, CultureInfo.InvariantCulture))]);
        return 0;
    case ["fit", string path, string repeats]:
        ThreeFits.Run(path, int.Parse(repeats, CultureInfo.InvariantCulture));
        return 0;
    case ["row-sums"]:
        RowSumsBenchmark.Run();
        return 0;
    case ["small-log"]:
        SmallLogBenchmark.Run();
        return 0;
    case ["books"]:
        BooksBenchmark.Run();
        return 0;
    case ["candidates"]:
        CandidatesBenchmark.Run();
        return 0;
    case ["wages"]:
        WagesBenchmark.Run();
        return 0;
    case ["reconcile", string logs]:
        return ReconcileBenchmark.Run(int.Parse(logs, CultureInfo.InvariantCulture));
    case ["cold-start"]:
        ColdStartBenchmark.Run();
        return 0;
    case ["growth", .. string[] flips]:
        GrowthBenchmark.Run(flips is [] ? [1_000, 10_000, 100_000] : [.. flips.Select(f => int.Parse(f, CultureInfo.InvariantCulture))]);
        return 0;
    case ["colour-claims", .. string[] logs]:
        ColourClaims.Run(logs is [string count] ? int.Parse(count, CultureInfo.InvariantCulture) : 400);
        return 0;
    case ["plausibility", .. string[] logs]:
        PlausibilityBenchmark.Run(logs is [string many] ? int.Parse(many, CultureInfo.InvariantCulture) : 10);
        return 0;
    case ["slips", .. string[] logs]:
        SlipsBenchmark.Run(logs is [string each] ? int.Parse(each, CultureInfo.InvariantCulture) : 10);
        return 0;
    case ["first-verdicts", .. string[] logs]:
        FirstVerdicts.Run(logs is [string times] ? int.Parse(times, CultureInfo.InvariantCulture) : 200);
        return 0;
    case ["fuzz", string runs, .. string[] rest] when rest.Length < 3:
        return FuzzBenchmark.Run(
            rest is [_, string first] ? int.Parse(first, CultureInfo.InvariantCulture) : 0,
            int.Parse(runs, CultureInfo.InvariantCulture),
            rest is [string program, ..] && program != "here" ? program : null);
    case ["bom"]:
        File.WriteAllText(FlipAnalytics.Tests.House.BillOfMaterials.Place, FlipAnalytics.Tests.House.BillOfMaterials.Text());
        return 0;
    default:
        Console.Error.WriteLine(
            "Say which benchmark to run: surplus, against-r, row-sums, small-log, books, candidates, wages, reconcile, cold-start, growth, colour-claims, plausibility, slips, first-verdicts, fuzz or bom; README.md says what each measures.");
        return 2;
}
