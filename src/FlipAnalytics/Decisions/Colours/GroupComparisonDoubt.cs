using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Whether the advice on colors hangs on a row of the log that is worth a look.</summary>
public static class GroupComparisonDoubt
{
    /// <summary>The same comparison, with the line on such a row where the advice would be another without it.</summary>
    /// <param name="report">The comparison.</param>
    /// <param name="log">The log it was made of.</param>
    /// <param name="next">The type asked about, as it was asked; null where none was.</param>
    /// <param name="rows">The rows to try, as <see cref="RowsWorthALook.In"/> has them, where they were looked for meanwhile.</param>
    public static GroupComparisonReport WithWorthALook(
        this GroupComparisonReport report, SalesLog log, string? next, Task<ImmutableArray<LogFinding>>? rows = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report with
        {
            WorthALook = RowsWorthALook.Sentence(log, without =>
            {
                // Without a row its words may be new to the log.
                GroupComparisonReport other = GroupComparison.Of(without, report.By, next, newWords: true);
                bool isSame = other.Advice.Kind == report.Advice.Kind && other.Advice.Recommended.SequenceEqual(report.Advice.Recommended);
                return (isSame ? 0 : 1, $"the answer would be: {GroupComparisonText.Answer(other).TrimEnd('.')}");
            }, finding => FitReach.Of(log, finding, piece => Math.Min(
                Sold(other => report.By.LevelOf(other) == report.By.LevelOf(piece)),
                Sold(other => other.Type.Equals(piece.Type, StringComparison.OrdinalIgnoreCase)))), rows),
        };

        int Sold(Func<Piece, bool> isAlike) => log.Pieces.Count(piece => piece.IsSold && isAlike(piece));
    }
}
