using System.Text.Json;

using static FlipAnalytics.Tests.KeptQuarter;

namespace FlipAnalytics.Tests;

/// <summary>What is said of a kept quarter once the log has changed.</summary>
public sealed class QuarterKeptTests
{
    [Fact]
    public void NothingChangedNothingIsReported()
    {
        using LogFolder folder = KeptFolder();
        QuarterSinceKept since = Since(folder)!;
        Assert.True(since.Holds);
        Assert.Equal("Kept as of 2026-04-05. It still holds: nothing has changed.", QuarterKeptText.Headline(since));
    }

    [Fact]
    public void WithoutAKeptQuarterThePageSaysNothingOfIt()
    {
        using LogFolder folder = LogInAFolder();
        Assert.Null(Since(folder));
    }

    // 520 less 60 paid, 30 of paint, 52 of fees (a tenth) and 90 of rent is 288. Then 70 more in sales, 7 more in fees, 63 in the end.
    [Fact]
    public void ASaleWrittenOtherwiseIsToldWithItsRowOnEveryLineItMoves()
    {
        using LogFolder folder = KeptFolder().With("pieces.csv", Pieces.Replace(",240,", ",310,", StringComparison.Ordinal));
        QuarterSinceKept since = Since(folder)!;
        Assert.Equal(
            [
                ("sales", 70m), ("fees", 7m), ("gross_profit", 70m), ("contribution", 63m), ("net", 63m), ("an hour", 5.25m),
                ("an hour of the pieces sold", 5.25m), ("in: sales and delivery charged", 70m), ("out: fees", 7m), ("in hand", 63m),
            ],
            since.Lines.Select(line => (line.Line, line.Difference!.Value)));
        Assert.All(since.Lines, line =>
        {
            QuarterKeptCause cause = Assert.Single(line.Causes);
            Assert.Equal(("pieces.csv", 3, line.Difference), (cause.File, cause.Line, cause.Amount));
        });
        Assert.Equal(
            [
                "net profit: $288.00 kept, $351.00 now: sales +$70.00, fees -$7.00",
                "sales: $520.00 kept, $590.00 now: P2 sold for $310.00, kept as $240.00 (pieces.csv, line 3)",
                "fees: $52.00 kept, $59.00 now: P2, as above",
            ],
            QuarterKeptText.Lines(since, Read(folder, Kept).Workshop).Take(3));
    }

    [Fact]
    public void EachKindOfFactThatChangedIsNamed()
    {
        (string File, string Text, string Line, string Why)[] cases =
        [
            ("overheads.csv", Overheads + "2026-03,insurance,12\n", "overheads", "insurance of 2026-03 added since, $12.00 (overheads.csv, line 5)"),
            ("overheads.csv", Overheads.Replace("2026-02,rent,30\n", "", StringComparison.Ordinal), "overheads", "rent of 2026-02 taken out since, $30.00 (was overheads.csv, line 3)"),
            ("overheads.csv", Overheads.Replace("2026-02,rent,30\n", "2026-02,rent,31.5\n", StringComparison.Ordinal), "overheads", "rent of 2026-02: amount $31.50, kept as $30.00 (overheads.csv, line 3)"),
            ("uses.csv", Uses.Replace(",0.5,", ",1,", StringComparison.Ordinal), "supplies", "paint on P2 of 2026-01-28: quantity 1, kept as 0.5 (uses.csv, line 3)"),
            ("supplies.csv", Supplies.Replace(",80", ",88", StringComparison.Ordinal), "supplies", "paint of 2026-01-02: price $88.00, kept as $80.00 (supplies.csv, line 2)"),
            ("pieces.csv", Pieces.Replace("2026-03-01", "2026-04-01", StringComparison.Ordinal), "pieces", "P2 sold on 2026-04-01, kept as 2026-03-01 (pieces.csv, line 3)"),
            ("pieces.csv", Pieces.Replace(",,4,", ",,6,", StringComparison.Ordinal), "hours it took", "P2 hours 6, kept as 4 (pieces.csv, line 3)"),
            ("workshop.toml", Settings.Replace("0.1", "0.12", StringComparison.Ordinal), "fees", "fees of online 12 % and $0.00, kept as 10 % and $0.00 (workshop.toml)"),
        ];
        foreach ((string file, string text, string line, string why) in cases)
        {
            using LogFolder folder = KeptFolder().With(file, text);
            QuarterLineSinceKept changed = Assert.Single(Since(folder)!.Lines, changed => changed.Line == line);
            Assert.Equal(why, Assert.Single(changed.Causes).Text);
        }
    }

    // 4 quarts for 80, of which P1 took one before 4 more came for 120. P2's half quart is 10 of the first can, or on average more.
    [Fact]
    public void ACostingMethodSetOtherwiseIsACause()
    {
        using LogFolder folder = LogInAFolder().With("supplies.csv", Supplies + "paint,2026-01-20,4,quart,120\n");
        Keep(folder);
        folder.With("workshop.toml", Settings.Replace("fifo", "average", StringComparison.Ordinal));
        QuarterLineSinceKept supplies = Assert.Single(Since(folder)!.Lines, line => line is { Part: "profit", Line: "supplies" });
        // After P1's quart 3 are left for 60; with 4 more for 120 it is 180 / 7 a quart: 12.86 for half of one.
        Assert.Equal(2.86m, supplies.Difference);
        Assert.Equal("costing method average, kept as fifo (workshop.toml)", Assert.Single(supplies.Causes).Text);
    }

    [Fact]
    public void TwoChangesShareADifferenceToTheCent()
    {
        using LogFolder folder = KeptFolder()
            .With("pieces.csv", Pieces.Replace(",240,", ",310,", StringComparison.Ordinal))
            .With("overheads.csv", Overheads + "2026-03,insurance,12\n");
        QuarterLineSinceKept net = Assert.Single(Since(folder)!.Lines, line => line is { Part: "profit", Line: "net" });
        Assert.Equal(51, net.Difference);
        Assert.Equal([63, -12], net.Causes.Select(cause => cause.Amount!.Value));
    }

    [Fact]
    public void WhatMovesNoFigureIsNoChange()
    {
        using LogFolder folder = KeptFolder().With(
            "pieces.csv", Pieces.Replace("first one", "sold to a neighbor", StringComparison.Ordinal).Replace(",280,", ",280.00,", StringComparison.Ordinal));
        Assert.Equal((true, 0), (Since(folder)!.Holds, Since(folder)!.ChangedFacts));
    }

    [Fact]
    public void RowsInAnotherOrderAreTheSameFacts()
    {
        string[] lines = Overheads.Split('\n');
        using LogFolder folder = KeptFolder().With("overheads.csv", $"{lines[0]}\n{lines[3]}\n{lines[1]}\n{lines[2]}\n");
        Assert.Equal((true, 0), (Since(folder)!.Holds, Since(folder)!.ChangedFacts));
    }

    [Fact]
    public void AFactThatCameLaterIsToldAsLater()
    {
        // P3 was not sold in the quarter, and the can it took from was there at its end all the same.
        using LogFolder folder = KeptFolder().With("uses.csv", Uses + "P3,2026-04-20,paint,1,quart\n");
        QuarterSinceKept since = Since(folder, new(2026, 5, 1))!;
        Assert.Equal((true, 1), (since.Holds, since.LaterFacts));
        Assert.Equal("Kept as of 2026-04-05. It still holds: every figure is the same (1 later fact moved none).", QuarterKeptText.Headline(since));
    }

    [Fact]
    public void AQuarterKeptLaterThanThePageIsComparedByWhatWasKnownThen()
    {
        using LogFolder folder = KeptFolder();
        QuarterSinceKept since = Since(folder, new(2026, 2, 20))!;
        Assert.True(since.Holds);
        Assert.StartsWith(
            "Kept as of 2026-04-05, a later day than this page's: compared by what was known on 2026-02-20.",
            QuarterKeptText.Headline(since), StringComparison.Ordinal);
        // The sale of P2 in March is not known yet, so its change is not told; that of P1 is.
        folder.With("pieces.csv", Pieces.Replace(",240,", ",310,", StringComparison.Ordinal));
        Assert.True(Since(folder, new(2026, 2, 20))!.Holds);
        folder.With("pieces.csv", Pieces.Replace(",280,", ",290,", StringComparison.Ordinal));
        Assert.Equal(10, Assert.Single(Since(folder, new(2026, 2, 20))!.Lines, line => line.Line == "sales").Difference);
    }

    // Sandpaper has no uses, so it is spread over the pieces worked on until it is bought again; P3 was worked on later.
    [Fact]
    public void WhatCameLaterAndMovesAFigureIsToldApartFromWhatChanged()
    {
        using LogFolder folder = LogInAFolder().With("supplies.csv", Supplies + "sandpaper,2026-01-02,10,sheet,12\n");
        folder.With("pieces.csv", Pieces.Replace("9,2026-04-02,2026-04-03", "9,2026-04-12,2026-04-13", StringComparison.Ordinal))
            .With("hours.csv", "id,date,task,hours\nP3,2026-04-12,sanding,6\n");
        Keep(folder);
        QuarterSinceKept since = Since(folder, new(2026, 5, 1))!;
        Assert.Equal((false, true, 0), (since.Holds, since.HoldsAsKnownThen, since.ChangedFacts));
        // 12 by hours over P1 and P2 alone, then over P1, P2 and P3: 12 × 12 / 18.
        QuarterLineSinceKept supplies = Assert.Single(since.Lines, line => line is { Part: "profit", Line: "supplies" });
        Assert.Equal(-4, supplies.Difference);
        Assert.StartsWith("later P3 ready on 2026-04-12", Assert.Single(supplies.Causes).Text, StringComparison.Ordinal);
        Assert.StartsWith(
            "Kept as of 2026-04-05. Nothing of that time has changed; what came later moved", QuarterKeptText.Headline(since), StringComparison.Ordinal);
    }

    [Fact]
    public void FiguresThatTheSameFactsNoLongerGiveAreReckonedOtherwise()
    {
        using LogFolder folder = LogInAFolder();
        SalesLog log = Read(folder, Kept);
        var kept = QuarterKept.Of(QuarterReport.Of(log, Quarter), log);
        kept = kept with { Figures = [.. kept.Figures.Select(figure => figure.Line == "overheads" ? figure with { Amount = 85 } : figure)] };
        QuarterKeptFile.Write(kept with { Fingerprint = kept.FingerprintOfFacts() }, folder.Path);
        QuarterLineSinceKept line = Assert.Single(Since(folder)!.Lines);
        Assert.Equal(("overheads", 5m), (line.Line, line.Difference!.Value));
        Assert.Equal("the way it is reckoned changed", Assert.Single(line.Causes).Text);
    }

    [Fact]
    public void ThePageSaysItAfterTheFirstLineAndStaysAScreen()
    {
        using LogFolder folder = KeptFolder()
            .With("pieces.csv", Pieces.Replace(",240,", ",310,", StringComparison.Ordinal).Replace(",40,", ",45,", StringComparison.Ordinal))
            .With("overheads.csv", Overheads + "2026-03,insurance,12\n")
            .With("uses.csv", Uses.Replace(",0.5,", ",1,", StringComparison.Ordinal));
        SalesLog log = Read(folder, Kept);
        QuarterReport report = QuarterReport.Of(log, Quarter) with { SinceKept = Since(folder) };
        string[] page = QuarterText.Render(report).Split('\n');
        int at = Array.FindIndex(page, line => line.StartsWith("  Kept as of 2026-04-05. It no longer holds:", StringComparison.Ordinal));
        Assert.InRange(at, 1, 2);
        Assert.InRange(page.Length, 10, 38);
        Assert.Contains(page, line => line.StartsWith("    and ", StringComparison.Ordinal) && line.EndsWith(" more figures: --all", StringComparison.Ordinal));
        Assert.DoesNotContain("more figures: --all", QuarterText.Render(report, all: true), StringComparison.Ordinal);
        Assert.StartsWith("    net profit: ", page[at + 1], StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(QuarterJson.Render(report));
        Assert.Equal(report.SinceKept!.Lines.Length, json.RootElement.GetProperty("since_kept").GetProperty("lines").GetArrayLength());
    }
}
