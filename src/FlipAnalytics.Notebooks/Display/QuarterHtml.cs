using System.Collections.Immutable;

namespace FlipAnalytics.Notebooks;

/// <summary>A quarter as tables of a notebook.</summary>
public static class QuarterHtml
{
    /// <summary>What was made, for how many hours, and what the log lacks to be sure.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Answer(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        Html html = new Html().Lead(QuarterSentences.Headline(report));
        if (report.WorthALook is { } doubt)
            html.Paragraph(doubt);
        foreach (string sentence in QuarterSentences.Beneath(report).Concat(report.Lacking))
            html.Paragraph(sentence);
        return (report.Hours.Bridge is null ? html : html.Then(ReportFrame.Table(
            WageBridgeText.Table(report.Hours.Bridge, report.Period, report.Workshop).Only("what", "profit", "hours", "an_hour")))).Content();
    }

    /// <summary>Profit and loss beside the spans it is compared with.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart ProfitAndLoss(QuarterReport report)
    {
        ReportTable table = QuarterTables.ProfitAndLoss(report);
        // A count among amounts would be read as one.
        return ReportFrame.Table((table with { Rows = [.. table.Rows.Where(row => row[0] is not "pieces_sold")] })
            .Only("meaning", "amount", "before", "year_earlier"));
    }

    /// <summary>Money in and out, and why it differs from the profit.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Money(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        Html html = new Html().Then(ReportFrame.Table(QuarterTables.Cash(report)));
        return (QuarterSentences.ProfitToCash(report) is { } why ? html.Paragraph(why) : html).Content();
    }

    /// <summary>What was tied up at the start and at the end.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Stock(QuarterReport report) => ReportFrame.Table(
        QuarterTables.Stock(report).Only("group", "evening", "by", "pieces", "cost", "floor", "floor_unknown"));

    /// <summary>How well stock and hours were used, each measure with its definition.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Ratios(QuarterReport report)
    {
        ImmutableArray<string> sentences = QuarterSentences.Ratios(report);
        return sentences.IsEmpty
            ? new Html().Paragraph("There was no stock and no sale to measure.").Content()
            : new Html().Items(sentences).Content();
    }

    /// <summary>What drove the change against the span before and a year ago.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Changes(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        string[] sentences =
        [
            .. new[] { report.AgainstBefore, report.AgainstYearEarlier }
                .Select(change => QuarterSentences.Change(report, change)).OfType<string>(),
        ];
        return sentences.Length == 0
            ? new Html().Paragraph("There is no earlier span in the log to compare with.").Content()
            : new Html().Items(sentences).Content();
    }

    /// <summary>What to do next, as far as it follows from the numbers.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart NextSteps(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Steps.IsEmpty
            ? new Html().Paragraph("Nothing stands out.").Content()
            : new Html().Items(report.Steps.Select(step => step.Text)).Content();
    }

    /// <summary>Questions for a tax professional, each with its source.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Prompts(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Prompts.IsEmpty
            ? new Html().Paragraph("No prompt is known here for the currency of this log; ask a tax professional all the same.").Content()
            : new Html().Items(report.Prompts.Select(prompt =>
                ($"If you are in {prompt.Place}", prompt.Text, $"{prompt.Source}; {prompt.Status}"))).Content();
    }

    /// <summary>The sums that were checked, and by how much they are off.</summary>
    /// <param name="report">The report.</param>
    public static HtmlPart Sums(QuarterReport report) => ReportFrame.Table(QuarterTables.Sums(report));
}
