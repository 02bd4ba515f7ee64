using System.Text.Json;
using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests;

/// <summary>An answer degrades, it does not disappear: what cannot be told is said in a sentence, and the rest is told.</summary>
[Collection("console")]
public sealed partial class DegenerateLogTests
{
    private const int Pieces = 40;

    private static readonly string[] Models = ["price", "days", "hours", "supplies"];

    public static TheoryData<string> Logs => [.. DegenerateLogs.Changes.Select(change => change.Name)];

    [Theory]
    [MemberData(nameof(Logs))]
    public void EveryVerbAnswers(string name)
    {
        using LogFolder folder = Written(name);
        foreach (string[] verb in new string[][]
        {
            ["buy", "--type", "dresser", "--width", "40", "--sticker-price", "40"],
            ["colors"], ["wages"], ["quarter"], ["year"],
        })
        {
            FlipRun run = FlipHere.Run([.. verb, "--log", folder.Path]);
            Assert.Equal((0, ""), (run.ExitCode, run.Error));
            Assert.DoesNotMatch(NotANumber(), run.Output);
            FlipRun json = FlipHere.Run([.. verb, "--log", folder.Path, "--json"]);
            Assert.Equal((0, ""), (json.ExitCode, json.Error));
            JsonDocument.Parse(json.Output).Dispose();
        }
    }

    [Theory]
    [MemberData(nameof(Logs))]
    public void EachFitAnswersOrSaysInOneSentenceOfItsOwnWhatIsMissing(string name)
    {
        using LogFolder folder = Written(name);
        foreach (string model in Models)
        {
            foreach (string[] how in new string[][] { [], ["--plain"], ["--estimator", "ols"] })
            {
                string[] call = ["fit", "--model", model, .. how, "--log", folder.Path];
                FlipRun run = FlipHere.Run([.. call, "--all"]);
                if (run.ExitCode == 0)
                {
                    Assert.Equal("", run.Error);
                    Assert.DoesNotMatch(NotANumber(), run.Output);
                    JsonDocument.Parse(FlipHere.Run([.. call, "--json"]).Output).Dispose();
                }
                else
                {
                    Assert.DoesNotContain("inside flip", run.Error);
                    Assert.DoesNotMatch(WordsOfStatistics(), run.Error.Replace("--estimator", "", StringComparison.Ordinal));
                    Assert.Single(run.ErrorLines);
                }
            }
        }
    }

    private static LogFolder Written(string name)
    {
        var folder = new LogFolder();
        SalesLogWriter.Write(DegenerateLogs.Of(Pieces, DegenerateLogs.Changes.First(change => change.Name == name).Change), folder.Path);
        return folder;
    }

    [GeneratedRegex("NaN|Infinity|∞")]
    private static partial Regex NotANumber();

    [GeneratedRegex("scale|likelihood|covariate|variance|column|coefficient|prior|Newton|residual|estimate", RegexOptions.IgnoreCase)]
    private static partial Regex WordsOfStatistics();
}
