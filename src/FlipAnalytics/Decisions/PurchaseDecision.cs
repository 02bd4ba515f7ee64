using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What to do at the sticker price.</summary>
public enum Verdict
{
    /// <summary>The sticker price is at or below the most to pay.</summary>
    Buy,

    /// <summary>Above it, but within the discount this person usually gets.</summary>
    Haggle,

    /// <summary>Too dear.</summary>
    Leave,

    /// <summary>The owner's sales and guesses leave open which of these it is.</summary>
    CannotSayYet,
}

/// <summary>A forecast amount in a few numbers.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="Median">Median.</param>
/// <param name="Low">Lower end of the range.</param>
/// <param name="High">Upper end of the range.</param>
/// <param name="Level">Chance that the range holds, 0 to 1.</param>
public sealed record ForecastRange(decimal Mean, decimal Median, decimal Low, decimal High, decimal Level);

/// <summary>A step from the sale price down to the most to pay.</summary>
/// <param name="Item">What it is.</param>
/// <param name="Amount">Its amount; costs are negative. The steps add up to the last, the most to pay.</param>
public sealed record WaterfallStep(string Item, decimal Amount);

/// <summary>A past sale that resembles the candidate.</summary>
/// <param name="Id">The piece.</param>
/// <param name="Type">Its type.</param>
/// <param name="Colour">Its colour.</param>
/// <param name="Condition">Its condition.</param>
/// <param name="Width">Its width.</param>
/// <param name="SoldOn">Day of the sale.</param>
/// <param name="SalePrice">Sale price.</param>
/// <param name="DaysOnMarket">Days on market; null where unknown.</param>
/// <param name="Distance">How far it is from the candidate; 0 is alike in everything known.</param>
public sealed record ComparableSale(
    string Id, string Type, string? Colour, Condition? Condition, decimal? Width, DateOnly? SoldOn, decimal SalePrice,
    int? DaysOnMarket, decimal Distance);

/// <summary>How the most to pay would change if one thing turned out at either end of its range.</summary>
/// <param name="Item">What it is: hours, sale price or supplies.</param>
/// <param name="Low">Low end of its range.</param>
/// <param name="CeilingAtLow">Most to pay there.</param>
/// <param name="High">High end of its range.</param>
/// <param name="CeilingAtHigh">Most to pay there.</param>
public sealed record Leverage(string Item, decimal Low, decimal CeilingAtLow, decimal High, decimal CeilingAtHigh);

/// <summary>The chance of earning the target wage when a price is paid.</summary>
/// <param name="Price">Purchase price.</param>
/// <param name="Chance">Chance, 0 to 1.</param>
public sealed record PriceChance(decimal Price, decimal Chance);

/// <summary>The sales an answer rests on.</summary>
/// <param name="OfType">Sales of the candidate's type.</param>
/// <param name="OfColour">Sales in the candidate's colour; null where no colour was given.</param>
/// <param name="Sales">All sales.</param>
public sealed record SalesBasis(int OfType, int? OfColour, int Sales);

/// <summary>
/// The most to pay for a candidate and what speaks for it. Money is in the workshop's currency. Where neither a sale nor a
/// guess tells a sale price, the amounts are null and a note says what would help.
/// </summary>
public sealed record PurchaseDecision
{
    /// <summary>The piece in the store.</summary>
    public required Candidate Candidate { get; init; }

    /// <summary>
    /// What to do at the sticker price; null where there is none, unless it cannot even be said whether to take the piece for
    /// nothing.
    /// </summary>
    public Verdict? Verdict { get; init; }

    /// <summary>The highest price at which the target wage is met on average over many such purchases.</summary>
    public decimal? Ceiling { get; init; }

    /// <summary>
    /// What the most to pay may turn out to be once the market is known: 86 in 100 chances that it lies from here to
    /// <see cref="CeilingHigh"/>.
    /// </summary>
    public decimal? CeilingLow { get; init; }

    /// <summary>The upper end of that range.</summary>
    public decimal? CeilingHigh { get; init; }

    /// <summary>What would decide it; null unless the verdict is that it cannot be said yet and something is known.</summary>
    public WhatDecides? WhatDecides { get; init; }

    /// <summary>The price that is affordable with the chosen chance.</summary>
    public decimal? CeilingCautious { get; init; }

    /// <summary>The highest price at which nothing is lost on average, hours unpaid.</summary>
    public decimal? CeilingBreakEven { get; init; }

    /// <summary>The chance that <see cref="CeilingCautious"/> holds, 0 to 1.</summary>
    public decimal CautiousChance { get; init; }

    /// <summary>The wage the ceiling pays for.</summary>
    public required decimal TargetWage { get; init; }

    /// <summary>Chance of earning at least the target wage at the sticker price, 0 to 1.</summary>
    public decimal? ChanceOfTargetWage { get; init; }

    /// <summary>
    /// That chance by purchase price, from nothing to a price at which hardly any chance is left; the limits and the sticker price are among
    /// the prices.
    /// </summary>
    public ImmutableArray<PriceChance> Chances { get; init; } = [];

    /// <summary>Money left after everything but hours, over the hours, at the sticker price; a ratio of means.</summary>
    public decimal? WageAtSticker { get; init; }

    /// <summary>The sticker price that haggling would have to reach; null unless the verdict is to haggle.</summary>
    public decimal? HaggleTo { get; init; }

    /// <summary>What to offer first; null unless the verdict is to buy or to haggle.</summary>
    public OpeningOffer? Offer { get; init; }

    /// <summary>The most to pay as a price that one says aloud; null where nothing above zero is to be paid.</summary>
    public decimal? WalkAway { get; init; }

    /// <summary>How it travels, in sentences; none where neither a size nor a car is known.</summary>
    public ImmutableArray<string> Load { get; init; } = [];

    /// <summary>Sale price.</summary>
    public ForecastRange? SalePrice { get; init; }

    /// <summary>Hands-on hours.</summary>
    public ForecastRange? Hours { get; init; }

    /// <summary>Cost of supplies.</summary>
    public ForecastRange? Supplies { get; init; }

    /// <summary>Days on market.</summary>
    public ForecastRange? DaysOnMarket { get; init; }

    /// <summary>From the sale price to the most to pay.</summary>
    public ImmutableArray<WaterfallStep> Waterfall { get; init; } = [];

    /// <summary>The nearest past sales, nearest first.</summary>
    public ImmutableArray<ComparableSale> Comparables { get; init; } = [];

    /// <summary>What would change the answer, strongest first.</summary>
    public ImmutableArray<Leverage> Leverages { get; init; } = [];

    /// <summary>The sales the answer rests on.</summary>
    public required SalesBasis Basis { get; init; }

    /// <summary>Share of the answer that rests on guesses instead of the log, weighted by money, 0 to 1.</summary>
    public decimal GuessShare { get; init; }

    /// <summary>Cautions that fit the piece.</summary>
    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>What was made of things stated that the log cannot follow; their sentences are among the notes.</summary>
    public ImmutableArray<InputNote> Inputs { get; init; } = [];

    /// <summary>What else the owner should know about this answer.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}
