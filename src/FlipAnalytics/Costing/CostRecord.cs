namespace FlipAnalytics;

/// <summary>Which costs a log tells anything of at all.</summary>
internal static class CostRecord
{
    /// <summary>Whether the log has any record of a kind of cost that has a table of its own.</summary>
    /// <param name="log">The log.</param>
    /// <param name="kind">Supplies, tools, outings or overheads; the others stand in <c>pieces.csv</c> and count as recorded.</param>
    public static bool Has(SalesLog log, CostKind kind) => kind switch
    {
        CostKind.Supplies => !log.Supplies.IsEmpty || log.Pieces.Any(piece => piece.SuppliesCost is not null),
        CostKind.Tools => !log.Tools.IsEmpty,
        CostKind.Trip => !log.Trips.IsEmpty,
        CostKind.Overhead => !log.Overheads.IsEmpty,
        _ => true,
    };
}
