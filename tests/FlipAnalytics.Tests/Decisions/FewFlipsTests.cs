using System.Globalization;

namespace FlipAnalytics.Tests;

/// <summary>At no, one, two or a handful of flips every question has an answer or a plain sentence.</summary>
public class FewFlipsTests
{
    private static readonly DateOnly Today = new(2026, 3, 31);

    private static readonly int[] Counts = [0, 1, 2, 3, 4, 6];

    public static readonly TheoryData<string> Kinds = [.. Logs.Keys];

    private static Dictionary<string, Func<int, SalesLog>> Logs => new()
    {
        ["ordinary"] = n => Sold(n, Ordinary),
        ["only type and prices"] = n => Sold(n, i => new()
        {
            Id = Name(i),
            Type = i % 2 == 0 ? "dresser" : "nightstand",
            BoughtPrice = 20,
            SoldPrice = 100 + 17 * i,
        }),
        ["constant columns"] = n => Sold(n, i => Ordinary(0) with { Id = Name(i), SoldPrice = 150 + i }),
        ["all alike, all at one price"] = n => Sold(n, i => Ordinary(0) with { Id = Name(i) }),
        ["all at one price"] = n => Sold(n, i => Ordinary(i) with { SoldPrice = 120 }),
        ["no colour"] = n => Sold(n, i => Ordinary(i) with { Colour = null }),
        ["all unsold"] = n => Sold(n, i => Ordinary(i) with { SoldOn = null, SoldPrice = null }),
        ["one sold for a cent"] = n => Sold(n, i => i == 0 ? Ordinary(i) with { SoldPrice = 0.01m } : Ordinary(i)),
        ["one sold for ten million"] = n =>
            Sold(n, i => i == 0 ? Ordinary(i) with { SoldPrice = 10_000_000 } : Ordinary(i)),
        ["a cent and ten million by turns"] = n =>
            Sold(n, i => Ordinary(i) with { SoldPrice = i % 2 == 0 ? 0.01m : 10_000_000 }),
        ["hours of a minute and a year by turns"] = n =>
            Sold(n, i => Ordinary(i) with { Hours = i % 2 == 0 ? 0.02m : 8760 }),
        ["supplies of nothing and ten million by turns"] = n =>
            Sold(n, i => Ordinary(i) with { SuppliesCost = i % 2 == 0 ? 0 : 10_000_000 }),
        ["sold the day it was bought"] = n => Sold(n, i => Ordinary(i) with
        {
            ReadyOn = Today,
            ListedOn = Today,
            BoughtOn = Today,
            SoldOn = Today,
        }),
        ["sold for nothing"] = n => Sold(n, i => Ordinary(i) with { SoldPrice = 0, Hours = 0, SuppliesCost = 0 }),
        ["in yen"] = n => Sold(n, i => Ordinary(i) with { SoldPrice = 20_000 + 500 * i }, new()
        {
            Currency = Currency.Of("JPY"),
            TargetWage = 1500,
            LengthUnit = LengthUnit.Centimetre,
            CapitalRate = 0.1m,
            Storage = 20,
        }),
        ["in dinars"] = n => Sold(n, i => Ordinary(i) with { SoldPrice = 60.125m + i }, new()
        {
            Currency = Currency.Of("KWD"),
            TargetWage = 4.5m,
            LengthUnit = LengthUnit.Centimetre,
            CapitalRate = 0.05m,
            Storage = 0.25m,
        }),
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_candidate_gets_an_answer_or_a_note_that_says_what_would_help(string kind)
    {
        foreach (int n in Counts)
        {
            SalesLog log = Logs[kind](n);
            foreach (PurchaseDecision decision in Workbench.Decide(log, Workbench.Various))
            {
                bool tells = log.Pieces.Any(p => p.SoldPrice > 0) || decision.Candidate.SalePrice is not null;
                Assert.Equal(tells, decision.Ceiling is not null);
                Assert.True(tells || decision.Notes.Any(note => note.Contains("log a sale", StringComparison.Ordinal)));
                Assert.Equal(decision.Ceiling ?? 0, decision.Waterfall.SkipLast(1).Sum(step => step.Amount));
                Assert.InRange(decision.GuessShare, 0, 1);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_fit_gives_its_terms_or_a_plain_sentence(string kind)
    {
        foreach (int n in Counts)
        {
            SalesLog log = Logs[kind](n);
            foreach (var fit in Workbench.Fits)
            {
                string said = Workbench.FitOrSentence(log, fit);
                Assert.True(said.StartsWith('{') || said.EndsWith('.'), said);
                Assert.DoesNotContain("Parameter", said, StringComparison.Ordinal);
                Assert.DoesNotContain("NaN", said, StringComparison.Ordinal);
            }
        }
    }

    private static SalesLog Sold(int n, Func<int, Piece> piece, Workshop? workshop = null) => new()
    {
        Date = Today,
        Workshop = workshop ?? new(),
        Pieces = [.. Enumerable.Range(0, n).Select(piece)],
    };

    private static Piece Ordinary(int i) => new()
    {
        Id = Name(i),
        Type = new[] { "dresser", "nightstand", "desk" }[i % 3],
        Count = 1 + i % 2,
        Width = 20 + 7 * i,
        Depth = 18,
        Height = 30 - i,
        Condition = (Condition)(i % 3),
        Colour = i % 2 == 0 ? "sage" : "white",
        Finish = "satin",
        BoughtOn = Today.AddDays(-100 + 9 * i),
        StickerPrice = 30,
        BoughtPrice = 25,
        ReadyOn = Today.AddDays(-90 + 9 * i),
        ListedOn = Today.AddDays(-88 + 9 * i),
        AskingPrice = 190 + 12 * i,
        SoldOn = Today.AddDays(-60 + 9 * i),
        SoldPrice = 160 + 11 * i,
        Hours = 6 + i,
        SuppliesCost = 20 + 2 * i,
    };

    private static string Name(int i) => string.Create(CultureInfo.InvariantCulture, $"P{i}");
}
