using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>An answer degrades, it does not disappear: what cannot be told is said in a sentence, and the rest is told.</summary>
[Collection("console")]
public sealed partial class DegenerateLogTests
{
    private const int Pieces = 30;

    private static readonly string[] Models = ["price", "days", "hours", "supplies"];

    public static TheoryData<string> Logs => [.. DegenerateLogs.Changes.Select(change => change.Name)];

    [Theory]
    [MemberData(nameof(Logs))]
    public void EveryVerbAnswers(string name)
    {
        using LogFolder folder = Written(name);
        foreach (string[] verb in new string[][]
        {
            ["buy", "--type", "dresser", "--width", "40", "--sticker-price", "40"], ["buy", "--type", "dresser", "--json"],
            ["colors"], ["colors", "--by", "type", "--json"], ["wages"], ["quarter"], ["year"],
        })
        {
            FlipRun run = FlipHere.Run([.. verb, "--log", folder.Path]);
            Assert.Equal((0, ""), (run.ExitCode, run.Error));
            Assert.DoesNotMatch(NotANumber(), run.Output);
            if (verb[^1] == "--json")
                JsonDocument.Parse(run.Output).Dispose();
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

    [Theory]
    [InlineData("all sold after a week", "days", "--plain", "All 30 pieces sold after the same number of days,")]
    [InlineData("all sold for the same price", "price", "--plain", "All 30 pieces sold for the same price,")]
    [InlineData("all took the same hours", "hours", "--estimator ols", "All 30 pieces took the same hours,")]
    [InlineData("all took the same supplies", "supplies", "--estimator ols", "All 30 pieces took supplies of the same cost,")]
    public void WhatIsAlikeInEveryPieceIsNotCalledTooFewPieces(string log, string model, string how, string says)
    {
        using LogFolder folder = Written(log);
        Assert.StartsWith(says, FlipHere.Run(["fit", "--model", model, .. how.Split(' '), "--log", folder.Path]).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void OneWhoSellsEverythingOnTheDayIsToldADayAndNothingOfDifferencesInDays()
    {
        using LogFolder folder = Written("all sold on the day they were listed");
        Assert.Contains("Such pieces sell in a day or so.", FlipHere.Run("buy", "--type", "dresser", "--log", folder.Path).Output);
        Assert.DoesNotContain("fewer days", FlipHere.Run("colors", "--log", folder.Path).Output);
        Assert.Contains("as good as the same days", FlipHere.Run("fit", "--model", "days", "--log", folder.Path).Output.Replace('\n', ' '));
    }

    [Fact]
    public void AnyMixtureOfThemIsAnsweredToo() =>
        Gen.Select(
            Gen.OneOf(Gen.Const(1), Gen.Const(2), Gen.Const(3), Gen.Const(7), Gen.Const(20)),
            Gen.Int[0, DegenerateLogs.Changes.Length - 1].Array[1, 3],
            Gen.Enum<GroupedBy>())
            .Sample(
                (pieces, chosen, by) =>
                {
                    SalesLog log = DegenerateLogs.Of(pieces, chosen.Select(i => DegenerateLogs.Changes[i].Change)).AsOf(DegenerateLogs.Last);
                    var models = FittedModels.Of(log);
                    Assert.False(models.Days.HasFailed);
                    foreach (var (model, estimator, plain) in Workbench.Fits)
                    {
                        try
                        {
                            FitReport report = ModelFitting.Fit(models, model, estimator, plain);
                            Assert.DoesNotMatch(NotANumber(), FitText.Render(report, all: true));
                            _ = FitJson.Render(report);
                        }
                        catch (NotEnoughDataException e)
                        {
                            Assert.DoesNotMatch(WordsOfStatistics(), e.Message.Replace("--estimator", "", StringComparison.Ordinal));
                        }
                    }

                    _ = PurchaseJson.Render(PurchaseReport.Of(log, Workbench.Various, new() { NewWords = true }));
                    _ = GroupComparisonJson.Render(GroupComparison.Of(log, by, null, newWords: true));
                },
                iter: 25, threads: 1);

    [Fact]
    public void AYearlyWaveThatAFewPiecesCannotTellIsNotSaidToBeInfinite()
    {
        SalesLog log = DegenerateLogs.Of(7, [DegenerateLogs.Changes[15].Change, DegenerateLogs.Changes[6].Change]).AsOf(DegenerateLogs.Last);
        var models = FittedModels.Of(log);
        string[] texts = [.. Texts()];
        Assert.Contains(texts, text => text.Contains("over 1,000,000 % longer", StringComparison.Ordinal));
        Assert.All(texts, text => Assert.DoesNotMatch(NotANumber(), text));

        IEnumerable<string> Texts()
        {
            foreach (var (_, estimator, plain) in Workbench.Fits.Where(fit => fit.Model == ModelName.Days))
            {
                if (Fitted(estimator, plain) is { } report)
                    yield return FitText.Render(report, all: true);
            }
        }

        FitReport? Fitted(Estimator estimator, bool plain)
        {
            try
            {
                return ModelFitting.Fit(models, ModelName.Days, estimator, plain);
            }
            catch (NotEnoughDataException)
            {
                return null;
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
