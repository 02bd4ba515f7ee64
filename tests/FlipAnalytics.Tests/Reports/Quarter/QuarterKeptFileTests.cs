using System.Text.Json;

using static FlipAnalytics.Tests.KeptQuarter;

namespace FlipAnalytics.Tests;

/// <summary>The file of a kept quarter: what it holds, what may stand in it, and when it is written.</summary>
public sealed class QuarterKeptFileTests
{
    [Fact]
    public void TheFileSaysWhatEachLineIsMadeOf()
    {
        using LogFolder folder = KeptFolder();
        QuarterKept kept = QuarterKeptFile.Read(folder.Path, Quarter).Kept!;
        QuarterKeptParts sales = Assert.Single(kept.MadeOf, line => line.Line == "sales");
        Assert.Equal(520, sales.Total);
        Assert.Contains(sales.Parts, part => part.StartsWith("pieces.csv, line 3: ", StringComparison.Ordinal)
            && part.Contains("P2", StringComparison.Ordinal) && part.EndsWith("2026-03-01, 240", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("\"amount\": 520", "\"amount\": 525", "its fingerprint does not fit the facts in it")]
    [InlineData("P2,nightstand,2026-01-06,20", "P2,nightstand,2026-01-06,21", "its fingerprint does not fit the facts in it")]
    [InlineData("\"fingerprint\"", "\"fingerprint", "was edited or damaged since it was kept: line")]
    [InlineData("\"facts\"", "\"fakt\"", "a part of it is missing")]
    [InlineData("\"to\": \"2026-03-31\"", "\"to\": \"2025-03-31\"", "a part of it is missing")]
    [InlineData("\"format\": 1", "\"format\": 2", "use the newer program that wrote it")]
    public void AnEditedOrNewerFileIsSaidAndThePageGoesOn(string was, string becomes, string said)
    {
        using LogFolder folder = KeptFolder();
        string path = Path.Combine(folder.Path, "kept", "2026-Q1.json");
        string text = File.ReadAllText(path);
        Assert.Contains(was, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(was, becomes, StringComparison.Ordinal));
        QuarterSinceKept since = Since(folder)!;
        Assert.False(since.Holds);
        Assert.Contains(said, since.Trouble, StringComparison.Ordinal);
        SalesLog log = Read(folder, Kept);
        string page = QuarterText.Render(QuarterReport.Of(log, Quarter) with { SinceKept = since });
        Assert.Contains("Kept, but: kept/2026-Q1.json", page, StringComparison.Ordinal);
        Assert.Contains("= what you made (net profit)", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("{\"format\": 1, \"facts\": [null], \"figures\": [null]}")]
    [InlineData("{\"format\": 1e99}")]
    public void WhateverTheFileHoldsEndsInASentence(string text)
    {
        using LogFolder folder = KeptFolder();
        File.WriteAllText(Path.Combine(folder.Path, "kept", "2026-Q1.json"), text);
        Assert.Contains("keep the quarter anew with --keep --force", Since(folder)!.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void TheFileMayBeLaidOutOtherwise()
    {
        using LogFolder folder = KeptFolder();
        string path = Path.Combine(folder.Path, "kept", "2026-Q1.json");
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(path));
        File.WriteAllText(path, JsonSerializer.Serialize(document.RootElement).Replace("520.00", "520", StringComparison.Ordinal));
        Assert.True(Since(folder)!.Holds);
    }

    [Fact]
    public void AnotherCurrencyIsSaid()
    {
        using LogFolder folder = KeptFolder().With("workshop.toml", Settings.Replace("USD", "EUR", StringComparison.Ordinal));
        Assert.Equal(
            "kept/2026-Q1.json was kept in USD, and the log is in EUR now: amounts of two currencies are not compared.", Since(folder)!.Trouble);
    }

    [Fact]
    public void AKeptQuarterIsReplacedOnlyWhenToldSo()
    {
        using LogFolder folder = KeptFolder();
        QuarterReport report = QuarterReport.Of(Read(folder, Kept), Quarter);
        Assert.Equal(
            "2026-Q1 is kept already, as of 2026-04-05 (kept/2026-Q1.json), and a kept quarter stays as it was; to replace it for good, add --force. Without --keep, flip quarter 2026-Q1 says what has changed since.",
            QuarterKeptFile.Refusal(report, folder.Path, replaces: false));
        Assert.Null(QuarterKeptFile.Refusal(report, folder.Path, replaces: true));
    }

    [Fact]
    public void AQuarterThatIsNotOverIsNotKept()
    {
        using LogFolder folder = LogInAFolder();
        QuarterReport report = QuarterReport.Of(Read(folder, new(2026, 3, 20)), Quarter);
        Assert.StartsWith(
            "2026-Q1 is not kept: it ends on 2026-03-31, and facts are known up to 2026-03-20 only.",
            QuarterKeptFile.Refusal(report, folder.Path, replaces: true), StringComparison.Ordinal);
    }

    [Fact]
    public void KeepingTouchesNoFileOfTheLogAndTheCheckStaysSilentOnIt()
    {
        using LogFolder folder = LogInAFolder();
        string[] before = [.. Directory.GetFiles(folder.Path).Order().Select(File.ReadAllText)];
        int problems = folder.Read().Problems.Length;
        Keep(folder);
        Assert.Equal(before, Directory.GetFiles(folder.Path).Order().Select(File.ReadAllText));
        Assert.Equal(problems, folder.Read().Problems.Length);
        Assert.Equal(["2026-Q1.json"], Directory.GetFiles(Path.Combine(folder.Path, "kept")).Select(Path.GetFileName));
    }
}
