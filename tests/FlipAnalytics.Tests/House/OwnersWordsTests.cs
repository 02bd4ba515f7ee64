using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>What a verb prints unasked is in the words of someone who paints furniture, fits a screen and writes money one way.</summary>
public sealed partial class OwnersWordsTests
{
    private const int LinesOfAScreen = 40;

    private static readonly string[] TermsOfArt =
    [
        "flexible-budget", "flexible budget", "GMROI", "allowed for", "coefficient", "Weibull", "likelihood", "REML", "standard error",
        "p-value", "variance", "residual", "regression", "confidence interval", "intercept", "logarithm", "change of the log",
        "Student", "quantile", "shrunk", "estimator", "Kaplan", "log-rank", "smearing", "percentile", "posterior", "bootstrap", "(Parameter",
    ];

    private static readonly string Demo = Repository.PathOf("data-demo");

    public static TheoryData<int, ulong> Logs => new() { { 12, 3 }, { 40, 4 }, { 150, 1 } };

    [Theory]
    [MemberData(nameof(Logs))]
    public void WhatAFitSaysUnaskedIsPlainAndFitsAScreen(int flips, ulong seed)
    {
        SalesLog log = DemoLog.Generate(flips, seed).Log.AsOf(DemoLog.LastDay);
        var models = FittedModels.Of(log);
        foreach (ModelName model in Enum.GetValues<ModelName>())
        {
            string text = FitText.Render(ModelFitting.Fit(models, model, Estimator.Mixed, plain: false));
            Assert.Empty(Unfit($"fit {model}", text));
        }
    }

    [Theory]
    [MemberData(nameof(Logs))]
    public void WhatWagesAndQuarterSayUnaskedIsPlainAndFitsAScreen(int flips, ulong seed)
    {
        SalesLog log = DemoLog.Generate(flips, seed).Log.AsOf(DemoLog.LastDay);
        Assert.Empty(Unfit("wages", WagesText.Render(WagesReport.Of(log), null)));
        Assert.Empty(Unfit("quarter", QuarterText.Render(QuarterReport.Of(log, QuarterReport.UsualPeriod(log)))));
        Assert.Empty(Unfit("year", YearText.Render(YearReport.Of(log, YearReport.UsualPeriod(log)))));
    }

    [Theory]
    [InlineData("wages")]
    [InlineData("quarter")]
    [InlineData("year")]
    [InlineData("check")]
    public void AVerbUnaskedFitsAScreenWithTheReasonForItsDateEvenOnALogFullOfSlips(string verb)
    {
        Assert.Empty(Unfit(verb, Flip.Run(verb, "--log", Demo).Output));
        using LogFolder slips = new();
        foreach (string file in Directory.EnumerateFiles(Demo))
            File.Copy(file, Path.Combine(slips.Path, Path.GetFileName(file)));
        // Every fifth price paid cannot be read; every seventh sale is ten times too dear.
        string[] lines = File.ReadAllLines(Path.Combine(Demo, "pieces.csv"));
        string[] columns = lines[0].Split(',');
        int paid = Array.IndexOf(columns, "bought_price"), sold = Array.IndexOf(columns, "sold_price");
        slips.With("pieces.csv", string.Join('\n', lines.Select((line, i) =>
        {
            string[] cells = line.Split(',');
            if (i % 5 == 1)
                cells[paid] = "cheap";
            if (i % 7 == 2 && cells[sold].Length > 0)
                cells[sold] += "0";
            return string.Join(',', cells);
        })) + "\n");
        string text = Flip.Run(verb, "--log", slips.Path).Output;
        Assert.Contains("set aside", text, StringComparison.OrdinalIgnoreCase);
        Assert.Empty(Unfit(verb, text));
    }

    [Fact]
    public void WhatTheOtherVerbsSayUnaskedHoldsNoTermOfArt()
    {
        foreach (string[] verb in new string[][]
        {
            ["buy", "--type", "dresser", "--sticker-price", "40"], ["colors"], ["colors", "--by", "type"], ["check"],
        })
        {
            string text = Flip.Run([.. verb, "--log", Demo]).Output;
            Assert.NotEmpty(text);
            Assert.Empty(Terms(text).Select(term => $"{verb[0]}: {term}"));
        }
    }

    [Fact]
    public void AFitThatTheLogCannotMakeSaysWhyWithoutATermOfArt()
    {
        foreach (int flips in new[] { 1, 2, 3, 5, 8 })
        {
            var models = FittedModels.Of(DemoLog.Generate(flips, 5).Log.AsOf(DemoLog.LastDay));
            foreach (ModelName model in Enum.GetValues<ModelName>())
            {
                foreach (Estimator how in Enum.GetValues<Estimator>())
                {
                    if (Record.Exception(() => ModelFitting.Fit(models, model, how, plain: true)) is { } refusal)
                    {
                        Assert.IsType<NotEnoughDataException>(refusal);
                        // The option that names it is no term of art there.
                        Assert.Empty(Terms(refusal.Message.Replace("--estimator", "", StringComparison.Ordinal)));
                    }
                }
            }
        }
    }

    [Theory]
    [InlineData("USD", "$")]
    [InlineData("JPY", "¥")]
    public void NoSentenceOfAQuarterHasABareAmount(string currency, string symbol)
    {
        foreach (ulong seed in new ulong[] { 1, 2, 3 })
        {
            SalesLog log = DemoLog.Generate(60, seed).Log.AsOf(DemoLog.LastDay);
            log = log with { Workshop = log.Workshop with { Currency = Currency.Of(currency), Symbol = symbol } };
            QuarterReport report = QuarterReport.Of(log, QuarterReport.UsualPeriod(log));
            string[] sentences =
            [
                QuarterSentences.Headline(report), .. QuarterSentences.Beneath(report), .. QuarterSentences.Undated(report),
                QuarterSentences.ProfitToCash(report) ?? "", QuarterSentences.Change(report, report.AgainstBefore) ?? "",
                .. report.Steps.Select(step => step.Text), .. report.Prompts.Select(prompt => prompt.Text),
                .. OfTheYear(YearReport.Of(log, YearReport.UsualPeriod(log))),
            ];
            Assert.DoesNotContain(sentences, sentence => BareAmount().IsMatch(sentence));
            Assert.Contains(sentences, sentence => sentence.Contains(symbol, StringComparison.Ordinal));
        }
    }

    private static IEnumerable<string> OfTheYear(YearReport sheet) =>
    [
        YearSentences.Headline(sheet), YearSentences.Driving(sheet) ?? "", YearSentences.ToolsBought(sheet) ?? "",
        YearSentences.ThereAtTheEnd(sheet), YearSentences.Cash(sheet), YearSentences.NotCounted(sheet) ?? "",
        .. YearSentences.Limits(sheet), .. sheet.Prompts.Select(prompt => prompt.Text),
    ];

    [Fact]
    public void ATermOfArtALongTextAndABareAmountAreCaught()
    {
        Assert.Equal(["x: GMROI"], Unfit("x", "A GMROI of 3."));
        Assert.Equal(["x: 50 lines"], Unfit("x", string.Concat(Enumerable.Repeat("a line\n", 50))));
        Assert.Matches(BareAmount(), "Money: $3.00 in, 1,204.50 out.");
        Assert.DoesNotMatch(BareAmount(), "Money: $3.00 in, -$1,204.50 out on 2026-03-31, +$0.10.");
    }

    private static IEnumerable<string> Unfit(string verb, string text)
    {
        int lines = text.Count(sign => sign == '\n');
        return Terms(text).Concat(lines > LinesOfAScreen ? [FormattableString.Invariant($"{lines} lines")] : [])
            .Select(found => $"{verb}: {found}");
    }

    private static IEnumerable<string> Terms(string text)
    {
        string onOneLine = string.Join(' ', text.Split((char[])['\n', ' '], StringSplitOptions.RemoveEmptyEntries));
        return TermsOfArt.Where(term => onOneLine.Contains(term, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Two digits after a point, as money is written, with no sign of a currency before them and no hours after.</summary>
    [GeneratedRegex(@"(?<![\d.,$¥])\d[\d,]*\.\d\d(?!\d| h)", RegexOptions.CultureInvariant)]
    private static partial Regex BareAmount();
}
