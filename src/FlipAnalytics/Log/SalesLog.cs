using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The log as it was known at a date: checked, immutable, in file order. Everything that forecasts takes one of these
/// and nothing else, so nothing can look past <see cref="Date"/>.
/// </summary>
public sealed record SalesLog
{
    /// <summary>The date up to which facts are known.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The workshop's settings.</summary>
    public Workshop Workshop { get; init; } = new();

    /// <summary>Pieces, in file order.</summary>
    public ImmutableArray<Piece> Pieces { get; init; } = [];

    /// <summary>Changes of asking prices.</summary>
    public ImmutableArray<AskingPrice> AskingPrices { get; init; } = [];

    /// <summary>Hours worked.</summary>
    public ImmutableArray<HoursEntry> Hours { get; init; } = [];

    /// <summary>Purchases of supplies.</summary>
    public ImmutableArray<SupplyPurchase> Supplies { get; init; } = [];

    /// <summary>Uses of supplies, waste included.</summary>
    public ImmutableArray<SupplyUse> Uses { get; init; } = [];

    /// <summary>Stock counts of supplies.</summary>
    public ImmutableArray<StockCount> Counts { get; init; } = [];

    /// <summary>Outings.</summary>
    public ImmutableArray<Trip> Trips { get; init; } = [];

    /// <summary>Tools.</summary>
    public ImmutableArray<Tool> Tools { get; init; } = [];

    /// <summary>Overheads.</summary>
    public ImmutableArray<Overhead> Overheads { get; init; } = [];

    /// <summary>Parts and items that went from one piece to another.</summary>
    public ImmutableArray<CostMove> Moves { get; init; } = [];

    /// <summary>Money that no other table tells.</summary>
    public ImmutableArray<MoneyEntry> Money { get; init; } = [];

    /// <summary>Money given back to buyers, and sales undone, in file order.</summary>
    public ImmutableArray<SaleReturn> Returns { get; init; } = [];

    /// <summary>What the owner says of colours.</summary>
    public ImmutableArray<Colour> Colours { get; init; } = [];
}
