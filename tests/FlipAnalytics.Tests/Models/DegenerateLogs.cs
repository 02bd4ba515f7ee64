using System.Collections.Immutable;

namespace FlipAnalytics.Tests;

/// <summary>
/// Logs without a fault in which something does not vary, is not there, or follows from something else: a market seller who
/// sells everything on the day, one who works by the clock, one who only has sets.
/// </summary>
internal static class DegenerateLogs
{
    private static readonly string[] Types = ["dresser", "nightstand", "side chair", "coffee table"];
    private static readonly string[] Colours = ["sage", "navy", "white"];

    /// <summary>What makes a log degenerate, by its name: what is done to each piece, told its place in the log.</summary>
    public static ImmutableArray<(string Name, Func<int, Piece, Piece> Change)> Changes { get; } =
    [
        ("all sold on the day they were listed", (_, p) => p with { SoldOn = p.ListedOn }),
        ("all sold after a week", (_, p) => p with { SoldOn = p.ListedOn?.AddDays(7) }),
        ("all sold on the day, at the price asked", (_, p) => p with { SoldOn = p.ListedOn, AskingPrice = p.SoldPrice }),
        ("all but one sold on the day", (i, p) => p with { SoldOn = p.ListedOn?.AddDays(i == 0 ? 40 : 0) }),
        ("days, hours and price follow from the type", (_, p) => p with
        {
            SoldOn = p.ListedOn?.AddDays((int)Of(p.Type)),
            SoldPrice = 20 * Of(p.Type),
            AskingPrice = 20 * Of(p.Type),
            Hours = Of(p.Type),
        }),
        ("all sold for the same price", (_, p) => p with { SoldPrice = 100, AskingPrice = 110 }),
        ("all sold for a cent", (_, p) => p with { SoldPrice = 0.01m, AskingPrice = 0.01m, Fees = 0 }),
        ("all took the same hours", (_, p) => p with { Hours = 5 }),
        ("no hours at all", (_, p) => p with { Hours = 0 }),
        ("hours unknown", (_, p) => p with { Hours = null }),
        ("all took the same supplies", (_, p) => p with { SuppliesCost = 10 }),
        ("no supplies at all", (_, p) => p with { SuppliesCost = 0 }),
        ("one type", (_, p) => p with { Type = "dresser" }),
        ("one color", (_, p) => p with { Colour = "sage" }),
        ("one size", (_, p) => p with { Width = 40, Depth = 20, Height = 30 }),
        ("no size", (_, p) => p with { Width = null, Depth = null, Height = null }),
        ("price follows from the width", (_, p) => p with { SoldPrice = 4 * p.Width, AskingPrice = 4 * p.Width }),
        ("color, finish and condition follow from the type", (_, p) => p with
        {
            Colour = Colours[(1 + Array.IndexOf(Types, p.Type)) % 3],
            Finish = p.Type == "dresser" ? "satin" : "matte",
            Material = p.Type == "dresser" ? "oak" : "pine",
            Condition = p.Type == "dresser" ? Condition.Worn : Condition.Sound,
        }),
        ("only sets", (_, p) => p with { Count = 2 }),
        ("nothing sold, all listed", (_, p) => Unsold(p)),
        ("one sold, the others listed", (i, p) => i == 0 ? p : Unsold(p)),
        ("nothing sold, all listed today", (_, p) => Unsold(p) with { BoughtOn = Last, ReadyOn = Last, ListedOn = Last }),
        ("nothing sold, all given away", (_, p) => Unsold(p) with { LeftOn = p.SoldOn, LeftAs = LeftAs.Given }),
        ("no dates", (_, p) => p with { BoughtOn = null, ReadyOn = null, ListedOn = null, SoldOn = null }),
        ("no listing dates", (_, p) => p with { ReadyOn = null, ListedOn = null }),
        ("all on one day", (_, p) => p with { BoughtOn = Last, ReadyOn = Last, ListedOn = Last, SoldOn = Last }),
        ("only type and prices", (_, p) => new() { Id = p.Id, Type = p.Type, BoughtPrice = p.BoughtPrice, SoldPrice = p.SoldPrice }),
        ("each of another type and color", (i, p) => p with { Type = $"kind {i}", Colour = $"hue {i}", Finish = $"sheen {i}", Material = $"wood {i}" }),
        ("days from none to decades", (i, p) => p with { BoughtOn = First, ReadyOn = First, ListedOn = First, SoldOn = i % 2 == 0 ? First : Last }),
        ("prices from a cent to a fortune", (i, p) => p with { SoldPrice = i % 2 == 0 ? 0.01m : 999_999_999m, AskingPrice = null }),
        ("hours from a minute to months", (i, p) => p with { Hours = i % 2 == 0 ? 0.01m : 2_000 }),
    ];

    private static readonly DateOnly First = new(1995, 1, 2);

    /// <summary>The day of the log.</summary>
    public static readonly DateOnly Last = new(2025, 6, 28);

    /// <summary>A log with so many pieces that vary in everything, each changed.</summary>
    public static SalesLog Of(int pieces, params IEnumerable<Func<int, Piece, Piece>> changes) => new()
    {
        Date = Last,
        Workshop = new() { TargetWage = 15 },
        Pieces = [.. Enumerable.Range(0, pieces).Select(i => changes.Aggregate(Ordinary(i), (piece, change) => change(i, piece)))],
    };

    // Nothing drawn: multipliers that share no factor with the moduli spread each fact over its range.
    private static Piece Ordinary(int i)
    {
        DateOnly bought = Last.AddDays(-700 + 600 * i / (i < 120 ? 120 : i + 1));
        decimal price = 15 * Of(Types[i * 7 % 4]) + 5 * (i * 29 % 17);
        return new()
        {
            Id = $"P{i:000}",
            Type = Types[i * 7 % 4],
            Width = 18 + i * 13 % 41,
            Depth = 15 + i * 5 % 9,
            Height = 20 + i * 17 % 31,
            Material = i % 3 == 0 ? "oak" : "pine",
            Condition = (Condition)(i * 5 % 3),
            Colour = Colours[i * 11 % 3],
            Finish = i % 2 == 0 ? "satin" : "matte",
            BoughtOn = bought,
            BoughtPrice = 5 + i * 19 % 37,
            ReadyOn = bought.AddDays(3 + i % 9),
            ListedOn = bought.AddDays(4 + i % 9),
            AskingPrice = price + 15,
            SoldOn = bought.AddDays(5 + i % 9 + i * 31 % 53),
            SoldPrice = price,
            Channel = "market",
            Fees = 5,
            Hours = 2 + i * 23 % 19 / 2m,
            SuppliesCost = 5 + i * 37 % 29,
        };
    }

    // The days and hours that a type takes where both follow from it.
    private static decimal Of(string type) => type switch
    {
        "dresser" => 10,
        "nightstand" => 4,
        "side chair" => 2,
        _ => 6,
    };

    private static Piece Unsold(Piece piece) => piece with { SoldOn = null, SoldPrice = null, Fees = null, Channel = null };
}
