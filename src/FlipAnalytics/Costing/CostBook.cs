using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Where the money of one kind went: spent and stated add up to pieces, left and unassigned.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Spent">What was bought or arose.</param>
/// <param name="OnPieces">What pieces carry.</param>
/// <param name="Left">What is still here: supplies in cans, book value of tools.</param>
/// <param name="Unassigned">
/// What no piece carries: overhead of months without work, wear of idle tools, supplies wasted or missing at a count.
/// </param>
/// <param name="Stated">What <c>pieces.csv</c> states for supplies beyond the ledger, below zero where it states less.</param>
public sealed record CostTotal(
    CostKind Kind, decimal Spent, decimal OnPieces, decimal Left, decimal Unassigned, decimal Stated)
{
    /// <summary>Spent and stated less all that it went into: always 0.</summary>
    public decimal Difference => Spent + Stated - OnPieces - Left - Unassigned;
}

/// <summary>
/// The books as of the log's date: what every piece cost with its trail, what is left in cans and tools, money in and
/// out, and what the log does not tell. Sums reconcile to the smallest unit of the currency.
/// </summary>
public sealed record CostBook
{
    private readonly Dictionary<string, PieceCost> byId = [];

    /// <summary>The date up to which facts are known.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The workshop's currency.</summary>
    public required Currency Currency { get; init; }

    /// <summary>Every piece, in the order of the log.</summary>
    public required ImmutableArray<PieceCost> Pieces
    {
        get;
        init
        {
            field = value;
            byId = new(value.Length, StringComparer.OrdinalIgnoreCase);
            foreach (PieceCost cost in value)
                byId.TryAdd(cost.Piece.Id, cost);
        }
    }

    /// <summary>
    /// Overheads before sharing: rows of <c>overheads.csv</c>, each over the days of its month, then fruitless trips; all of
    /// kind Overhead.
    /// </summary>
    public required ImmutableArray<CostLine> Overheads { get; init; }

    /// <summary>
    /// All wear of tools before sharing, by tool: over the days of a month, or on the day of a piece; all of kind Tools.
    /// </summary>
    public required ImmutableArray<CostLine> ToolWear { get; init; }

    /// <summary>
    /// Overheads of months in which no piece was worked on, and those of a channel of months in which none was for sale there:
    /// no piece carries them.
    /// </summary>
    public required ImmutableArray<CostLine> OverheadsUnshared { get; init; }

    /// <summary>Wear of tools in months in which no piece was worked on: no piece carries it.</summary>
    public required ImmutableArray<CostLine> ToolsIdle { get; init; }

    /// <summary>
    /// Supplies that no piece carries: waste, what a count found missing, and below zero what it found again; of kind Supplies.
    /// </summary>
    public required ImmutableArray<CostLine> SuppliesOnNoPiece { get; init; }

    /// <summary>What counts found missing that pieces state to have used beyond the cans.</summary>
    public required ImmutableArray<StatedByCount> StatedByCounts { get; init; }

    /// <summary>What is left of each supply, items in the order they were first bought.</summary>
    public required ImmutableArray<SupplyStock> SuppliesLeft { get; init; }

    /// <summary>Book value of each tool, in the order of the log.</summary>
    public required ImmutableArray<ToolValue> ToolsLeft { get; init; }

    /// <summary>Money in and out, by date, undated last.</summary>
    public required ImmutableArray<CashMovement> Cash { get; init; }

    /// <summary>Money held for others, and the owner's own put in and taken out: none of it is profit.</summary>
    public required ImmutableArray<MoneyOfOthers> Held { get; init; }

    /// <summary>What is unknown, assumed or contradictory: a sentence each.</summary>
    public required ImmutableArray<string> Notes { get; init; }

    /// <summary>Assumed coverage against measured uses, for items that allow it.</summary>
    public required ImmutableArray<CoverageCheck> Coverage { get; init; }

    /// <summary>Where the money went, a row for each kind.</summary>
    public required ImmutableArray<CostTotal> Totals { get; init; }

    /// <summary>The cans, with what left each of them on which day.</summary>
    internal SupplyShelf Shelf { get; init; } = new([]);

    /// <summary>Every purchase of supplies that was made by a day, and what became of it until the evening of that day.</summary>
    /// <param name="day">The day.</param>
    public ImmutableArray<SupplyCan> CansOn(DateOnly day) => Shelf.On(day);

    /// <summary>The cost of a piece.</summary>
    /// <param name="pieceId">Its id, in either case.</param>
    /// <exception cref="ArgumentException">The log has no such piece.</exception>
    public PieceCost this[string pieceId] => byId.TryGetValue(pieceId, out PieceCost? cost) ? cost
        : throw new ArgumentException($"The log has no piece '{pieceId}'.", nameof(pieceId));

    /// <summary>
    /// Overheads and wear of the month of <see cref="Date"/> that fall on its days to come: in the books, but in no span yet.
    /// </summary>
    public decimal StillToArise => Overheads.Concat(ToolWear).Sum(line => line.ArisesAfter(Date, Currency));

    /// <summary>The row of <see cref="Totals"/> for a kind.</summary>
    /// <param name="kind">The kind.</param>
    public CostTotal Total(CostKind kind) => Totals[(int)kind];

    /// <summary>All that was spent, in every kind.</summary>
    public decimal TotalSpent => Totals.Sum(total => total.Spent);

    /// <summary>The books of a log.</summary>
    /// <param name="log">The log, as of its date.</param>
    public static CostBook Of(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return Of(log, new WorkCalendar(log));
    }

    /// <summary>The books of a log whose calendar of work is at hand.</summary>
    internal static CostBook Of(SalesLog log, WorkCalendar calendar) => new CostBookWriter(log, calendar).Write();

    /// <summary>
    /// How the pieces in stock moved from the evening before a day to the evening of another. Opening, plus what was
    /// added, less what left, is closing, to the smallest unit.
    /// </summary>
    /// <remarks>
    /// Every cost of a piece arises on its own day, at the latest the day the piece left; one without a day arises when
    /// the piece was bought, or where that is unknown when it left, or before everything.
    /// </remarks>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day, not before the first.</param>
    /// <param name="kinds">Kinds that count as cost of stock; with none named: purchase, supplies and trip.</param>
    /// <exception cref="ArgumentOutOfRangeException">The last day is before the first.</exception>
    public StockMovement Stock(DateOnly from, DateOnly to, params ImmutableArray<CostKind> kinds) =>
        StockMovement.Of(this, from, to, kinds.IsDefaultOrEmpty ? StockMovement.UsualKinds : kinds);
}
