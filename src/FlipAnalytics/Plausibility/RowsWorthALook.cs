using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// Whether an answer hangs on a row that is worth a look: it is worked out again without the row. A log without such a row
/// costs one look at it.
/// </summary>
public static class RowsWorthALook
{
    /// <summary>How far an answer must move to be worth a line, as a share of it.</summary>
    public const double Material = 0.05;

    // The likeliest slips do the most harm; each costs the answer once more.
    private const int RowsTried = 5;

    /// <summary>The rows to try, the likeliest slips first; to be looked for while an answer is worked out.</summary>
    /// <param name="log">The log.</param>
    public static ImmutableArray<LogFinding> In(SalesLog log) => [.. LogFindings.In(log).Where(finding => finding.Row > 0).Take(RowsTried)];

    /// <summary>The line for a number; null where it hangs on no such row.</summary>
    /// <param name="log">The log.</param>
    /// <param name="answer">The number; nothing hangs on an unknown one.</param>
    /// <param name="again">Works it out from another log.</param>
    /// <param name="name">What it is, such as "the full wage".</param>
    /// <param name="text">Writes it.</param>
    /// <param name="reach">
    /// How far a row can move it at most, as a share of it, where that is known without working it out again; null for any distance.
    /// </param>
    /// <param name="rows">The rows to try, as <see cref="In"/> has them, where they were looked for meanwhile.</param>
    public static string? Sentence(
        SalesLog log, decimal? answer, Func<SalesLog, decimal?> again, string name, Func<decimal, string> text,
        Func<LogFinding, double>? reach = null, Task<ImmutableArray<LogFinding>>? rows = null)
    {
        ArgumentNullException.ThrowIfNull(again);
        ArgumentNullException.ThrowIfNull(text);
        return answer is not { } number ? null : Sentence(log, without => again(without) switch
        {
            null => (1, $"{name} would be unknown"),
            { } other => (Move(number, other), $"{name} would be {text(other)} instead of {text(number)}"),
        }, reach, rows);
    }

    /// <summary>The line for any answer; null where it hangs on no such row.</summary>
    /// <param name="log">The log.</param>
    /// <param name="without">
    /// How far the answer moves with another log, as a share of it, and what it then would be, to be read after "Without that row".
    /// </param>
    /// <param name="reach">How far a row can move it at most; null for any distance.</param>
    /// <param name="rows">The rows to try, as <see cref="In"/> has them, where they were looked for meanwhile.</param>
    public static string? Sentence(
        SalesLog log, Func<SalesLog, (double Move, string Then)> without, Func<LogFinding, double>? reach = null,
        Task<ImmutableArray<LogFinding>>? rows = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(without);
        var worst = (rows?.GetAwaiter().GetResult() ?? In(log))
            .Where(finding => !(reach?.Invoke(finding) <= Material))
            .Select(finding => (Finding: finding, Answer: without(Without(log, finding))))
            .Where(tried => tried.Answer.Move > Material)
            .OrderByDescending(tried => tried.Answer.Move).FirstOrDefault();
        if (worst.Finding is not { } found)
            return null;
        string said = found.Found.Length == 0 ? "nothing" : $"'{found.Found}'";
        return $"Worth a look: {found.File} line {LogFinding.Text(found.Row)}, {found.Column}, says {said}; expected {found.Usual}. "
            + $"Without that row {worst.Answer.Then}. flip check says more.";
    }

    /// <summary>How far a number moves, as a share of the larger of the two.</summary>
    internal static double Move(decimal from, decimal to) =>
        from == to ? 0 : (double)(Math.Abs(to - from) / Math.Max(Math.Abs(from), Math.Abs(to)));

    /// <summary>The log without a row, and without what belongs to its piece.</summary>
    internal static SalesLog Without(SalesLog log, LogFinding finding)
    {
        int row = finding.Row;
        if (finding.File != Columns.Pieces.File)
        {
            return LogRecords.All.FirstOrDefault(of => of.Table.File == finding.File) is { } rows
                ? rows.With(log, rows.In(log).Where(record => rows.Row(record) != row)) : log;
        }

        string? id = log.Pieces.FirstOrDefault(piece => piece.Row == row)?.Id;
        return log with
        {
            Pieces = [.. log.Pieces.Where(piece => piece.Row != row)],
            AskingPrices = [.. log.AskingPrices.Where(change => !IsOf(change.PieceId))],
            Hours = [.. log.Hours.Where(entry => !IsOf(entry.PieceId))],
            Uses = [.. log.Uses.Where(use => use.PieceId is null || !IsOf(use.PieceId))],
        };

        bool IsOf(string? piece) => string.Equals(piece, id, StringComparison.OrdinalIgnoreCase);
    }
}
