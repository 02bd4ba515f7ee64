using System.Globalization;

namespace FlipAnalytics.Notebooks;

/// <summary>Which colors, types or finishes sell fast and well, as tables of a notebook.</summary>
public static class ColorsHtml
{
    private const string Unknown = "unknown";

    /// <summary>Whether they can be told apart, and how sure that is.</summary>
    /// <param name="report">The comparison.</param>
    public static HtmlPart Answer(GroupComparisonReport report)
    {
        var sentences = new GroupComparisonSentences(report);
        var html = new Html();
        foreach (string note in report.WordNotes)
            html.Paragraph(note);
        html.Lead(sentences.Headline());
        if (report.WorthALook is { } doubt)
            html.Paragraph(doubt);
        foreach (string sentence in sentences.Evidence().Concat(sentences.Pairs()))
            html.Paragraph(sentence);
        return html.Content();
    }

    /// <summary>Each of them: sold, on sale, days, effects, chances and money.</summary>
    /// <param name="report">The comparison.</param>
    public static HtmlPart Levels(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Levels.IsEmpty)
            return new Html().Paragraph("There is nothing to list yet.").Content();
        return new Html().Table(
            "How each sells; in brackets: holds in 8 of 10 cases",
            [
                Html.Words(report.By.ToString().ToLowerInvariant()), Html.Number("sold"), Html.Number("on sale"),
                Html.Number("% days against the average, last year"), Html.Number("% days, all years"),
                Html.Number("half sold in days"), Html.Number("% price against the average"),
                Html.Number("money a week on sale"),
            ],
            report.Levels.Select(level => new[]
            {
                level.Level, Whole(level.Sold), Whole(level.OnSale),
                Percent(level.DaysLately), Percent(level.Days),
                level.MedianDays is { } median ? GroupFigures.Median(median) : Unknown, Percent(level.Price),
                level.Money.PerWeek is { } money ? MoneyText.PlainWhole(money) : Unknown,
            })).Items(new GroupComparisonSentences(report).HowToRead()).Content();
    }

    /// <summary>The last year against before.</summary>
    /// <param name="report">The comparison.</param>
    public static HtmlPart Trends(GroupComparisonReport report) => new Html()
        .Paragraph(new GroupComparisonSentences(report).Trends() ?? "There are no sales yet to compare with earlier ones.")
        .Content();

    /// <summary>What to give the next piece, against the alternatives.</summary>
    /// <param name="report">The comparison.</param>
    public static HtmlPart Next(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var sentences = new GroupComparisonSentences(report);
        if (sentences.Next() is not { } next)
            return new Html().Paragraph("Nothing can be said about the next piece yet.").Content();
        Html html = new Html().Paragraph(next).Table(
            $"The next {report.Next!.Type}",
            [
                Html.Words("choice"), Html.Number("left to buy it"), Html.Number("likely days on sale"),
                Html.Number("chance that it leaves most"),
            ],
            report.Choices.Select(choice => new[]
            {
                choice.Level, MoneyText.PlainWhole(choice.Money), Html.Invariant($"{choice.Days:0}"), Chance(choice.ChanceBest),
            }));
        return (sentences.Surer() is { } surer ? html.Paragraph(surer) : html).Content();
    }

    /// <summary>What was left out of which number, and words that may mean the same.</summary>
    /// <param name="report">The comparison.</param>
    public static HtmlPart Notes(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Notes.IsEmpty
            ? new Html().Paragraph("Nothing was left out.").Content()
            : new Html().Items(report.Notes).Content();
    }

    private static string Percent(RelativeDifference? difference) =>
        difference is { } known ? GroupFigures.Range(known) : Unknown;

    private static string Chance(double? chance) => chance is { } known ? GroupFigures.Chance(known) : "not compared";

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);
}
