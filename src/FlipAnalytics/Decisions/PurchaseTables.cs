using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The answers as a table, for a spreadsheet: the owner's columns as they were written, then ours.</summary>
public static class PurchaseTables
{
    /// <summary>A row a candidate.</summary>
    /// <param name="report">The answers.</param>
    public static ReportTable Of(PurchaseReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var ours = ReportTable.Of(
            "candidates", "What to pay for each candidate, beside the owner's own columns", report.Decisions,
            ("id", "The owner's name for it, or its line.", d => d.Candidate.Id),
            ("type", "Kind of furniture, as the log writes it.", d => d.Candidate.Type),
            ("verdict", "buy, haggle, leave or cannot_say_yet; may be empty where no sticker price is given.",
                d => d.Verdict is { } verdict ? VerdictWords.Code(verdict) : null),
            ("ceiling", "The most to pay.", d => d.Ceiling),
            ("ceiling_low", "Once your market is known, the most to pay likely lies from this to the next (86 in 100).", d => d.CeilingLow),
            ("ceiling_high", "The upper end.", d => d.CeilingHigh),
            ("opening_offer", "What to offer first.", d => d.Offer?.Offer),
            ("walk_away", "The most to pay, rounded down to what one says aloud.", d => d.WalkAway),
            ("ceiling_cautious", "The careful limit.", d => d.CeilingCautious),
            ("ceiling_break_even", "The most to pay with hours unpaid.", d => d.CeilingBreakEven),
            ("chance_of_target_wage", "Chance of earning the wage at the sticker price.", d => d.ChanceOfTargetWage),
            ("wage_at_sticker", "Likely wage an hour at the sticker price.", d => d.WageAtSticker),
            ("sale_price_low", "8 in 10 sell between this and the next but one.", d => d.SalePrice?.Low),
            ("sale_price_median", "Half sell above it.", d => d.SalePrice?.Median),
            ("sale_price_high", "The upper end.", d => d.SalePrice?.High),
            ("hours_median", "Likely hours.", d => d.Hours?.Median),
            ("supplies_median", "Likely cost of supplies.", d => d.Supplies?.Median),
            ("days_on_market_median", "Likely days on sale.", d => d.DaysOnMarket?.Median));
        if (report.Decisions is not [{ Candidate.Written: { IsEmpty: false } written }, ..])
            return ours;
        if (written.Any(cell => cell.Column.Equals("id", StringComparison.OrdinalIgnoreCase)))
            ours = ours.Only([.. ours.Columns.Select(column => column.Name).Where(name => name != "id")]);
        return ours with
        {
            Columns = [.. written.Select(cell => new ReportColumn(cell.Column, "As in the file of candidates.")), .. ours.Columns.Select(Apart)],
            Rows = [.. ours.Rows.Select((row, i) => report.Decisions[i].Candidate.Written.Select(object? (cell) => cell.Text).Concat(row).ToImmutableArray())],
        };

        // Where both have a column of one name, ours says that it is the answer's.
        ReportColumn Apart(ReportColumn column) =>
            written.Any(cell => cell.Column.Equals(column.Name, StringComparison.OrdinalIgnoreCase))
                ? column with { Name = "answer_" + column.Name } : column;
    }
}
