using System.Globalization;
using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What is dated after the as-of date may be there or not, or be another: no verb says anything else.</summary>
[Collection("console")]
public sealed class LaterFactsTests
{
    private static readonly string[][] Verbs =
    [
        ["buy", "--type", "dresser", "--sticker-price", "40"], ["buy", "--type", "chair", "--json", "--new-words"],
        ["colors"], ["colors", "--by", "channel", "--json"],
        ["wages"], ["wages", "--json"], ["quarter"], ["quarter", "--json"], ["year"], ["year", "--json"],
        ["fit", "--model", "price"], ["fit", "--model", "days", "--json"], ["fit", "--model", "hours", "--json"], ["fit", "--model", "supplies", "--all"],
    ];

    private static readonly Gen<(SalesLog Log, DateOnly Day, int Choice)> Cases = Gen.Select(
        MessyLogs.Any, Gen.Int[60, 900].Select(MessyLogs.FirstDay.AddDays), Gen.Int[0, 6560]);

    [Fact]
    public void NoLaterFactOfAnyTableShowsInTheLogAsItWasKnown() => Cases.Sample(
        c => Assert.Equal(LogContent.Of(c.Log.AsOf(c.Day)), LogContent.Of(new LaterFacts(c.Log, c.Day, c.Choice).Otherwise().AsOf(c.Day))),
        iter: 1000);

    [Fact]
    public void NoLaterFactOfAnyTableChangesAByteOfWhatAVerbSays() => Cases.Sample(
        c =>
        {
            SalesLog log = LaterFacts.Last(c.Log, c.Day);
            using LogFolder folder = new();
            string[] asKnown = Said(log, folder, c.Day);
            string[] otherwise = Said(new LaterFacts(log, c.Day, c.Choice).Otherwise(), folder, c.Day);
            for (int verb = 0; verb < Verbs.Length; verb++)
                Assert.Equal(asKnown[verb], otherwise[verb]);
        },
        iter: 8, threads: 1);

    private static string[] Said(SalesLog log, LogFolder folder, DateOnly day)
    {
        foreach (string file in Directory.EnumerateFiles(folder.Path))
            File.Delete(file);
        SalesLogWriter.Write(log, folder.Path);
        string date = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return
        [
            .. Verbs.Select(verb =>
            {
                FlipRun run = FlipHere.Run([.. verb, "--log", folder.Path, "--as-of", date]);
                // Books of nothing are still books; forecasts of nothing are a sentence on standard error.
                Assert.True(run.Output.Length > 0 || verb[0] is "buy" or "fit", $"{verb[0]}: {run.Error}");
                return $"{string.Join(' ', verb)}\n{run.Output}";
            }),
        ];
    }
}
