namespace FlipAnalytics.Notebooks;

/// <summary>What flips paid by the hour, as tables of a notebook.</summary>
public static class WagesHtml
{
    /// <summary>Flips shown of those that lost money.</summary>
    public const int LosersShown = 3;

    /// <summary>The answer, how sure it is, and what is not in it.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Answer(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        Html html = new Html().Lead(WagesSentences.Answer(report));
        if (report.WorthALook is { } doubt)
            html.Paragraph(doubt);
        foreach (string sentence in WagesSentences.Around(report))
            html.Paragraph(sentence);
        html.Items(WagesSentences.Missing(report));
        return (report.Bridge is null ? html : html.Then(ReportFrame.Table(
            WageBridgeText.Table(report.Bridge, report.Period, report.Workshop).Only("what", "profit", "hours", "an_hour")))).Content();
    }

    /// <summary>Wages of each group, as ratios of sums.</summary>
    /// <param name="report">The report.</param>
    /// <param name="by">What to group by.</param>
    public static HtmlPart Groups(WagesReport report, WageGroupBy by)
    {
        ArgumentNullException.ThrowIfNull(report);
        ReportTable table = WagesTables.Groups(report, by);
        return ReportFrame.Table(table.Only(
            table.Columns[0].Name, "flips", "counted", "all_hours", "full_profit", "cash_wage", "full_wage", "low", "high"));
    }

    /// <summary>The flips that lost most, and why.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Losers(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Losers.IsEmpty
            ? new Html().Paragraph("No flip with a known profit lost money.").Content()
            : ReportFrame.Table(WagesTables.Losers(report with { Losers = [.. report.Losers.Take(LosersShown)] }).Only(
                "id", "type", "full_profit", "item", "actual", "usual", "difference", "reason"));
    }

    /// <summary>What all hours went into.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Hours(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return WagesSentences.Hours(report) is not { } sentence
            ? new Html().Paragraph("No hours are written down yet.").Content()
            : new Html().Paragraph(sentence).Then(ReportFrame.Table(
                WagesTables.HoursByTask(report).Only("task", "hours", "share", "at_the_bench", "on_pieces"))).Content();
    }

    /// <summary>What the target wage would have refused to buy, with hindsight.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Hindsight(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return WagesSentences.Hindsight(report) is not { } sentence
            ? new Html().Paragraph("Set target_wage in workshop.toml, and note hours and prices: then this page can look back.").Content()
            : new Html().Paragraph(sentence).Then(ReportFrame.Table(WagesTables.Hindsight(report))).Content();
    }

    /// <summary>Every line of the money and the hours of a piece, with its place in the log.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="report">The report of the same log.</param>
    /// <param name="id">The piece; null for the one that paid worst.</param>
    public static HtmlPart Trail(SalesLog log, WagesReport report, string? id)
    {
        ArgumentNullException.ThrowIfNull(report);
        id ??= report.Flips.Where(flip => flip.FullWage is not null).MinBy(flip => flip.FullWage)?.Id;
        if (id is null)
            return new Html().Paragraph("No piece has a wage yet; name one by its id.").Content();
        if (WageTrail.Refusal(log, id) is { } refusal)
            return new Html().Paragraph(refusal).Content();
        var trail = WageTrail.Of(log, id);
        return new Html()
            .Then(Lines(Html.Invariant($"Money of {trail.Id}, {trail.Type}"), "amount", trail.Money))
            .Then(Lines(Html.Invariant($"Hours on {trail.Id}"), "hours", trail.Hours))
            .Items(trail.Unknown).Content();
    }

    /// <summary>The sums that agree.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Sums(WagesReport report) => ReportFrame.Table(WagesTables.Reconciliation(report));

    private static HtmlPart Lines(string caption, string unit, IReadOnlyCollection<WageTrailLine> lines) => lines.Count == 0
        ? new Html().Paragraph($"{caption}: nothing is written down.").Content()
        : new Html().Table(
            caption,
            [
                Html.Words("what"), Html.Words("day"), Html.Number(unit), Html.Words("file"), Html.Number("line"),
                Html.Words("how it follows"),
            ],
            lines.Select(line => new[]
            {
                line.What, ReportTable.TextOf(line.Date), ReportTable.TextOf(line.Amount), line.File, ReportTable.TextOf(line.Row),
                line.Rule,
            })).Content();
}
