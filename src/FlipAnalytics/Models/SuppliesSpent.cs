namespace FlipAnalytics;

/// <summary>What was used up on each piece, where the log knows it in full.</summary>
/// <remarks>
/// What <c>pieces.csv</c> states counts. Without it, what the ledger charges counts where the ledger speaks of the piece:
/// it has uses of its own, and every use has a cost. Its share of what is spread, such as abrasives, is then part of the
/// cost. A piece without a use of its own is unknown, whatever share of abrasives it bears: its paint went unrecorded, and
/// taken as cheap it would teach the model that painting costs next to nothing. The same holds for a piece with a use
/// that has no cost, in whole or part. Totals of a piece that is still on the bench say nothing yet: they may be those of the
/// day it was ready, and by its hours it would bear a part of what is spread and take it from those that are done.
/// </remarks>
internal sealed class SuppliesSpent
{
    private readonly HashSet<string> used;
    private readonly Lazy<CostBook> book;

    public SuppliesSpent(SalesLog log)
    {
        used = log.Uses.Select(use => use.PieceId).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        // Trips, tools and overhead change nothing about supplies, so the book is written without them.
        book = new(() =>
        {
            SalesLog lean = WithoutOpenWork(log) with { Trips = [], Tools = [], Overheads = [] };
            return new CostBookWriter(lean, new(lean), itemizes: false).Write();
        });
    }

    private static SalesLog WithoutOpenWork(SalesLog log)
    {
        HashSet<string> done = log.Returns.Where(back => back.CameBack).Select(back => back.PieceId)
            .Concat(log.Pieces.Where(piece => piece.ReadyOn is not null || piece.State != PieceState.InTheWorkshop)
                .Select(piece => piece.Id))
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        bool IsTold(string? piece, DateOnly? day) => day is not null || piece is null || done.Contains(piece);
        return log with
        {
            Pieces = [.. log.Pieces.Select(piece => done.Contains(piece.Id) ? piece : piece with { Hours = null, SuppliesCost = null })],
            Hours = [.. log.Hours.Where(entry => IsTold(entry.PieceId, entry.Date))],
            Uses = [.. log.Uses.Where(use => IsTold(use.PieceId, use.Date))],
        };
    }

    /// <summary>What was used up on a piece of the log so far; null where it is not known in full.</summary>
    public decimal? On(Piece piece) =>
        piece.SuppliesCost ?? (used.Contains(piece.Id) ? book.Value[piece.Id].Known(CostKind.Supplies) : null);
}
