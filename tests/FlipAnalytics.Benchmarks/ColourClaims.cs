using System.Globalization;

namespace FlipAnalytics.Benchmarks;

/// <summary>
/// How often colors are said to differ on generated logs where none does, and how often sage is found where it truly sells in
/// 30 % fewer days, against the chance that the report itself states.
/// </summary>
internal static class ColourClaims
{
    private static readonly int[] Sizes = [60, 150, 300];

    public static void Run(int logs)
    {
        Console.WriteLine("| flips | logs | no effect: any claim | days | price | sage 30 % faster: days differ | sage named | stated | right way |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|");
        foreach (int flips in Sizes)
            Console.WriteLine(Row(flips, logs));
    }

    private static string Row(int flips, int logs)
    {
        DemoMarket same = DemoMarket.Standard.WithoutColourEffects();
        ClaimCounts none = Counts(flips, logs, same, 0);
        ClaimCounts sage = Counts(flips, logs, same.WithColourDays("sage", 0.7), 100_000);
        string Share(int count) => (100.0 * count / logs).ToString("0.0", CultureInfo.InvariantCulture) + " %";
        return $"| {flips} | {logs} | {Share(none.Any)} | {Share(none.Days)} | {Share(none.Price)} | {Share(sage.Days)} "
            + $"| {Share(sage.Sage)} | {(100 * sage.Stated / logs).ToString("0.0", CultureInfo.InvariantCulture)} % | {sage.SageFaster} of {sage.Sage} |";
    }

    private static ClaimCounts Counts(int flips, int logs, DemoMarket market, ulong firstSeed)
    {
        var all = new ClaimCounts[logs];
        Parallel.For(0, logs, i =>
        {
            GroupComparisonReport report = GroupComparison.Of(
                DemoLog.Generate(flips, firstSeed + (ulong)i + 1, market).Log, GroupedBy.Color);
            ToldApart told = report.ToldApart;
            LevelRecord? sage = report.Levels.FirstOrDefault(l => l.Level == "sage");
            bool named = told.DaysDiffer && sage?.DaysP <= 1 - told.Confidence;
            all[i] = new(
                told.DaysDiffer || told.PricesDiffer ? 1 : 0, told.DaysDiffer ? 1 : 0, told.PricesDiffer ? 1 : 0,
                named ? 1 : 0, named && sage!.Days!.Share < 0 ? 1 : 0, sage?.ChanceToShow ?? 0);
        });
        return all.Aggregate((a, b) => new(
            a.Any + b.Any, a.Days + b.Days, a.Price + b.Price, a.Sage + b.Sage, a.SageFaster + b.SageFaster, a.Stated + b.Stated));
    }

    private sealed record ClaimCounts(int Any, int Days, int Price, int Sage, int SageFaster, double Stated);
}
