using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Whether the most to pay hangs on a row of the log that is worth a look.</summary>
public static class PurchaseDoubt
{
    /// <summary>The same answers with the line on that row, where they hang on one.</summary>
    /// <param name="report">The answers.</param>
    /// <param name="log">The log they rest on.</param>
    /// <param name="terms">What the owner asks of a purchase.</param>
    /// <param name="rows">The rows to try, as <see cref="RowsWorthALook.In"/> has them, where they were looked for meanwhile.</param>
    public static PurchaseReport WithWorthALook(
        this PurchaseReport report, SalesLog log, PurchaseTerms terms, Task<ImmutableArray<LogFinding>>? rows = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report with { WorthALook = Sentence(report, log, terms, rows) };
    }

    /// <summary>The line on that row; null where the answers are the same without it.</summary>
    /// <param name="report">The answers.</param>
    /// <param name="log">The log they rest on.</param>
    /// <param name="terms">What the owner asks of a purchase.</param>
    /// <param name="rows">The rows to try, as <see cref="RowsWorthALook.In"/> has them, where they were looked for meanwhile.</param>
    public static string? Sentence(
        PurchaseReport report, SalesLog log, PurchaseTerms terms, Task<ImmutableArray<LogFinding>>? rows = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(terms);
        // A verdict hangs least on a row where all types asked about have many sales.
        Lazy<int> soldOfRarest = new(() => report.Decisions.Select(decision => decision.Candidate.Type).Distinct()
            .Select(type => log.Pieces.Count(piece => piece.SoldPrice > 0 && piece.Type.Equals(type, StringComparison.OrdinalIgnoreCase)))
            .DefaultIfEmpty(0).Min());
        return RowsWorthALook.Sentence(log, without =>
        {
            // A word that only the row has is not to be asked about now.
            var other = PurchaseReport.Of(
                without, [.. report.Decisions.Select(decision => decision.Candidate)], terms with { NewWords = true });
            return report.Decisions.Zip(other.Decisions, (before, after) => Change(report, before, after)).MaxBy(change => change.Move);
        }, finding => FitReach.Of(log, finding, _ => soldOfRarest.Value), rows);
    }

    private static (double Move, string Then) Change(PurchaseReport report, PurchaseDecision before, PurchaseDecision after)
    {
        string piece = report.Decisions.Length > 1 ? $" for {before.Candidate.Id}" : "";
        return (before.Ceiling, after.Ceiling) switch
        {
            ({ } from, { } to) => (
                before.Verdict != after.Verdict ? 1 : from <= 0 && to <= 0 ? 0 : RowsWorthALook.Move(from, to),
                $"the most to pay{piece} would be {Text(to)} instead of {Text(from)}"),
            (null, null) => (0, ""),
            ({ }, null) => (1, $"nothing could be said{piece}"),
            (null, { } to) => (1, $"the most to pay{piece} would be {Text(to)}"),
        };

        string Text(decimal amount) => MoneyText.Whole(amount, report.Workshop);
    }
}
