namespace FlipAnalytics;

/// <summary>What was used up on each piece, where the log knows it in full.</summary>
/// <remarks>
/// What <c>pieces.csv</c> states counts. Without it, what the ledger charges counts where the ledger speaks of the piece:
/// it has uses of its own, and every use has a cost. Its share of what is spread, such as abrasives, is then part of the
/// cost. A piece without a use of its own is unknown, whatever share of abrasives it bears: its paint went unrecorded, and
/// taken as cheap it would teach the model that painting costs next to nothing. The same holds for a piece with a use
/// that has no cost, in whole or part.
/// </remarks>
internal sealed class SuppliesSpent
{
    private readonly HashSet<string> used;
    private readonly Lazy<CostBook> book;

    public SuppliesSpent(SalesLog log)
    {
        used = log.Uses.Select(use => use.PieceId).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        // Trips, tools and overhead change nothing about supplies, so the book is written without them.
        SalesLog lean = log with { Trips = [], Tools = [], Overheads = [] };
        book = new(() => new CostBookWriter(lean, new(lean), itemizes: false).Write());
    }

    /// <summary>What was used up on a piece of the log so far; null where it is not known in full.</summary>
    public decimal? On(Piece piece) =>
        piece.SuppliesCost ?? (used.Contains(piece.Id) ? book.Value[piece.Id].Known(CostKind.Supplies) : null);
}
