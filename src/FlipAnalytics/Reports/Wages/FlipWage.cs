using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>One flip with all its figures in a row. What is unknown is null; costs are those on record.</summary>
public sealed record FlipWage
{
    /// <summary>The piece's id.</summary>
    public required string Id { get; init; }

    /// <summary>Kind of furniture.</summary>
    public required string Type { get; init; }

    /// <summary>Colour it was given.</summary>
    [JsonPropertyName("color")]
    public string? Colour { get; init; }

    /// <summary>Where it was found.</summary>
    public string? Source { get; init; }

    /// <summary>Day it was sold.</summary>
    public DateOnly? SoldOn { get; init; }

    /// <summary>The owner's guess of the sale price when buying.</summary>
    public decimal? ExpectedPrice { get; init; }

    /// <summary>What the buyer paid for the piece.</summary>
    public decimal? SoldPrice { get; init; }

    /// <summary>Sale price and delivery charge.</summary>
    public decimal? Takings { get; init; }

    /// <summary>Price paid for the piece.</summary>
    public decimal? Purchase { get; init; }

    /// <summary>As much of it as is known: where the price is not, parts that were moved to or from the piece.</summary>
    internal decimal PurchaseKnown { get; init; }

    /// <summary>Supplies used up on it.</summary>
    public decimal Supplies { get; init; }

    /// <summary>What the channel kept.</summary>
    public decimal Fees { get; init; }

    /// <summary>What delivery cost.</summary>
    public decimal Delivery { get; init; }

    /// <summary>Its share of the outing that brought it home.</summary>
    public decimal Outings { get; init; }

    /// <summary>Its share of the wear of tools.</summary>
    public decimal Tools { get; init; }

    /// <summary>Its share of costs of no single piece.</summary>
    public decimal Overhead { get; init; }

    /// <summary>Profit after the costs of this piece alone.</summary>
    public decimal? CashProfit { get; init; }

    /// <summary>Profit after its share of outings, tools and overhead as well.</summary>
    public decimal? FullProfit { get; init; }

    /// <summary>Hands-on hours.</summary>
    public decimal? BenchHours { get; init; }

    /// <summary>Its share of outings and of work for no single piece, in hours.</summary>
    public decimal OutsideHours { get; init; }

    /// <summary>Hands-on hours and its share of the others.</summary>
    public decimal? AllHours { get; init; }

    /// <summary>Cash profit for a hands-on hour.</summary>
    public decimal? CashWage { get; init; }

    /// <summary>Full profit for an hour of all work.</summary>
    public decimal? FullWage { get; init; }

    /// <summary>Costs that the log does not tell in full; the profits leave them out.</summary>
    public ImmutableArray<CostKind> Missing { get; init; } = [];

    /// <summary>Whether a cost of the piece itself is missing, so that cash profit and cash wage are at most these.</summary>
    public bool CashIsAtMost { get; init; }

    /// <summary>Whether any cost is missing, so that full profit and full wage are at most these.</summary>
    public bool FullIsAtMost { get; init; }

    /// <summary>Whether profit and hours are known, so that the flip counts in wages.</summary>
    public bool Counts => FullProfit is not null && BenchHours is not null;

    /// <summary>The cost of a kind on record.</summary>
    /// <param name="kind">The kind.</param>
    public decimal Cost(CostKind kind) => kind switch
    {
        CostKind.Purchase => PurchaseKnown,
        CostKind.Supplies => Supplies,
        CostKind.Tools => Tools,
        CostKind.Trip => Outings,
        CostKind.Overhead => Overhead,
        CostKind.Delivery => Delivery,
        _ => Fees,
    };

    /// <summary>The same flip with other hands-on hours.</summary>
    /// <param name="benchHours">Hands-on hours, 0 or more.</param>
    public FlipWage WithBenchHours(decimal benchHours)
    {
        decimal all = benchHours + OutsideHours;
        return this with
        {
            BenchHours = benchHours,
            AllHours = all,
            CashWage = benchHours > 0 ? CashProfit / benchHours : null,
            FullWage = benchHours > 0 ? FullProfit / all : null,
        };
    }

    /// <summary>The row of a flip.</summary>
    /// <param name="flip">What it earned.</param>
    public static FlipWage Of(FlipResult flip)
    {
        ArgumentNullException.ThrowIfNull(flip);
        decimal[] costs = new decimal[(int)CostKind.Fees + 1];
        foreach (CostLine line in flip.Cost.Lines)
            costs[(int)line.Kind] += line.Amount;
        return new()
        {
            Id = flip.Piece.Id,
            Type = flip.Piece.Type,
            Colour = flip.Piece.Colour,
            Source = flip.Piece.Source,
            SoldOn = flip.Piece.SoldOn,
            ExpectedPrice = flip.Piece.ExpectedPrice,
            SoldPrice = flip.Piece.SoldPrice,
            Takings = flip.Takings,
            PurchaseKnown = costs[(int)CostKind.Purchase],
            Purchase = flip.Cost.PurchaseKnown ? costs[(int)CostKind.Purchase] : null,
            Supplies = costs[(int)CostKind.Supplies],
            Fees = costs[(int)CostKind.Fees],
            Delivery = costs[(int)CostKind.Delivery],
            Outings = costs[(int)CostKind.Trip],
            Tools = costs[(int)CostKind.Tools],
            Overhead = costs[(int)CostKind.Overhead],
            CashProfit = flip.CashProfit,
            FullProfit = flip.FullProfit,
            BenchHours = flip.Hours.Bench,
            OutsideHours = flip.Hours.Outside,
            AllHours = flip.Hours.All,
            CashWage = flip.CashWage,
            FullWage = flip.FullWage,
            Missing = flip.Missing,
            CashIsAtMost = flip.CashIsAtMost,
            FullIsAtMost = flip.FullIsAtMost,
        };
    }
}
