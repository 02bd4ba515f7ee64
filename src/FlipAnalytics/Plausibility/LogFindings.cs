using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// Every number and date of a log held against the rest of it: what is out of line beyond what luck explains, with the
/// likely mend. Nothing is measured by fixed limits: what is usual comes from the log's own rows, by medians, and a row is
/// reported where a known kind of slip explains it far better than what it says (log likelihoods under Student's t, Lange,
/// Little and Taylor, 1989, JASA 84, 881–896, from memory).
/// </summary>
public static class LogFindings
{
    /// <summary>Cells worth a look, the likeliest slips first.</summary>
    /// <param name="log">The log.</param>
    /// <param name="today">The last day that can be past; of the log where null.</param>
    public static ImmutableArray<LogFinding> In(SalesLog log, DateOnly? today = null) => In(log, [], today ?? log.Date);

    /// <summary>Cells worth a look, those of pieces that are set aside for dates that contradict each other among them.</summary>
    internal static ImmutableArray<LogFinding> In(SalesLog log, IEnumerable<Piece> contradicting, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(log);
        IEnumerable<LogFinding> all =
        [
            .. PieceAmounts.Of(log), .. OtherAmounts.Of(log), .. PieceDates.Of(log, contradicting, today),
            .. OtherDates.Of(log, today), .. Disagreements.Of(log),
        ];
        int unread = 0;
        return
        [
            // Rows that were not read from a file have no line to tell them by.
            .. all.GroupBy(f => (f.File, f.Row > 0 ? f.Row : --unread, f.Column)).Select(cell => cell.MaxBy(f => f.Gain)!)
                .OrderByDescending(f => f.Gain).ThenBy(f => f.File, StringComparer.Ordinal).ThenBy(f => f.Row),
        ];
    }
}
