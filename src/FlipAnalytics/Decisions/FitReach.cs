namespace FlipAnalytics;

/// <summary>
/// How far an answer that rests on fits can move where a row is left out, without fitting again: a row that is one of many of its
/// kind moves none by much.
/// </summary>
internal static class FitReach
{
    // A wild row counts for less in a fit, and none is further off than three spreads, which is about 1 on the scale of logarithms:
    // of n alike it moves their mean by 1/n. What is left to pay is a fraction of the price, and moves by several times as much.
    private const double OfOne = 25;

    /// <summary>The most that an answer can move, as a share of it.</summary>
    /// <param name="log">The log.</param>
    /// <param name="finding">The row.</param>
    /// <param name="alike">Sold pieces that tell as much of the answer as the piece does that the row is of.</param>
    public static double Of(SalesLog log, LogFinding finding, Func<Piece, int> alike)
    {
        // No fit knows of outings, tools and overheads.
        if (finding.File == Columns.Trips.File || finding.File == Columns.Tools.File || finding.File == Columns.Overheads.File)
            return 0;
        // A can is part of many pieces, or of none.
        return finding.PlaceIn(log) is { } place ? OfOne / Math.Max(1, alike(log.Pieces[place])) : double.PositiveInfinity;
    }
}
